package iec_test

import (
	"fmt"

	"cartwright/optimize/wiring/iec"
)

// Basic Electrical Installation Work, p. 301: a cooker of 26.09 A behind a 32 A breaker at 35 °C asks for a
// cable of 32 / 0.94 = 34.04 A. One text. Clipped direct, 4 mm2 of PVC (36 A) is the first to have it;
// the book goes on with a method this room does not have.
func ExampleAmbientFactor_cooker() {
	factor, _ := iec.AmbientFactor(35, iec.PVC)
	amps, _ := iec.Ampacity("4 mm2", iec.PVC, iec.MethodC)
	fmt.Printf("%.2f A; 4 mm2: %.0f A\n", 32/factor, amps)
	// Output: 34.04 A; 4 mm2: 36 A
}

// Texts on IEC 60364-4-43: a gG fuse of 16 A and more asks for a cable of 1.1 times its rating, so 63 A for
// 70 A. The factor in two independent texts; the 63 A computed.
func ExampleFuseFactor() {
	const fuseA = 63
	fmt.Printf("%.1f A\n", iec.FuseFactor(fuseA)*fuseA/iec.OverloadA(1))
	// Output: 69.5 A
}
