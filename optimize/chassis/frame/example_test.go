package frame_test

import (
	"fmt"

	"cartwright/catalog"
	"cartwright/optimize/chassis/frame"
)

// EN 10219-2 gives 40 x 40 x 3 as 3.30 kg/m and 9.32 cm4, 50 x 50 x 3 as 4.25 kg/m and 19.5 cm4: it rounds the
// corners. With sharp corners they are 3.49 kg/m and 10.2 cm4, 4.43 and 20.8: 4 to 10 % above.
func ExampleBendingOf() {
	for _, side := range []float64{0.040, 0.050} {
		b, _ := frame.BendingOf(&catalog.Section{Shape: catalog.SquareTube, WidthM: side, WallM: 0.003})
		fmt.Printf("%.0f mm: %.2f kg/m, %.1f cm4\n", 1000*side, frame.TubeKgPerM(side, 0.003), 1e8*b.InertiaM4)
	}
	// Output:
	// 40 mm: 3.49 kg/m, 10.2 cm4
	// 50 mm: 4.43 kg/m, 20.8 cm4
}

// A beam of 1 m of two flats 50 x 5 on edge, yield 235 MPa: Z = b h^2 / 6 = 2083 mm3, so 0.6 * 235 * 8 * 2083 / 1000
// = 2350 N a rail; I = b h^3 / 12 = 52083 mm4, so 384 * 210000 * 52083 / (5 * 240 * 1000^2) = 3500 N.
func ExampleRailsCarryKg() {
	flat := &catalog.Section{Shape: catalog.Flat, WidthM: 0.005, HeightM: 0.050, YieldPa: 235e6}
	fmt.Printf("%.0f kg on two rails\n", frame.RailsCarryKg(flat, 1, 2))
	// Output: 479 kg on two rails
}
