package nec_test

import (
	"fmt"

	"cartwright/catalog"
	"cartwright/optimize/wiring/nec"
	"cartwright/scenarios/ratings"
)

// A Code Q&A column of EC&M magazine on 310.15 adjustment: four 10 AWG copper conductors of 90 °C
// insulation carry 32 A each. One text.
func ExampleBundlingFactor_fourConductors() {
	amps, _ := nec.Ampacity("copper", "10 AWG", nec.Col90)
	fmt.Printf("%.0f A\n", amps*nec.BundlingFactor(4))
	// Output: 32 A
}

// An electrical training page on bundling: nine 12 AWG copper conductors of 90 °C insulation carry 21 A
// each. One text.
func ExampleBundlingFactor_nineConductors() {
	amps, _ := nec.Ampacity("copper", "12 AWG", nec.Col90)
	fmt.Printf("%.0f A\n", amps*nec.BundlingFactor(9))
	// Output: 21 A
}

// A discussion of 240.4(B): 2 AWG copper at 75 °C carries 115 A, between the standard 110 and 125 A; the
// next size up may protect it. One text.
func ExampleLargestDeviceA_nextSize() {
	amps, _ := nec.Ampacity("copper", "2 AWG", nec.Col75)
	fmt.Printf("%.0f A on %.0f A\n", nec.LargestDeviceA(ratings.Standard("nec", "breaker"), amps), amps)
	// Output: 125 A on 115 A
}

// Mike Holt code forum, thread 57221, "500 MCM current ratings": 500 kcmil copper of 380 A may be protected
// by 400 A, two in parallel by 800 A, but three, above 800 A, by no more than they carry (240.4(B) and
// (C)). One text.
func ExampleLargestDeviceA_parallel() {
	amps, _ := nec.Ampacity("copper", "500 kcmil", nec.Col75)
	breakers := ratings.Standard("nec", "breaker")
	for sets := 1.0; sets <= 3; sets++ {
		fmt.Printf("%.0f A: %.0f A\n", sets*amps, nec.LargestDeviceA(breakers, sets*amps))
	}
	// Output:
	// 380 A: 400 A
	// 760 A: 800 A
	// 1140 A: 1140 A
}

// Mike Holt code forum, thread 2570890, "Conductor sizing": 100 A continuous ask for a 125 A device and 1 AWG at 75 °C
// (130 A); derated by 0.728 its 145 A of the 90 °C column are 106 A, which 110 A still protects and 125 A
// does not. The 0.728 is 40 °C ambient and four to six conductors. One text.
func ExampleLargestDeviceA_derated() {
	at75, _ := nec.Ampacity("copper", "1 AWG", nec.Col75)
	at90, _ := nec.Ampacity("copper", "1 AWG", nec.Col90)
	ambient, _ := nec.AmbientFactor(40, nec.Col90)
	factor := ambient * nec.BundlingFactor(4)
	largest := nec.LargestDeviceA(ratings.Standard("nec", "breaker"), factor*at90)
	fmt.Printf("%.0f A asked, %.0f A at the terminals\n", nec.ContinuousA(100), at75)
	fmt.Printf("%.3f * %.0f A = %.0f A: %.0f A\n", factor, at90, factor*at90, largest)
	// Output:
	// 125 A asked, 130 A at the terminals
	// 0.728 * 145 A = 106 A: 110 A
}

// EC&M magazine on article 690, part 3, and a home-power magazine on PV circuit sizing: a source circuit
// of 8.8 A short-circuit current is reckoned with 11 A (690.8(A)), its conductors and device with 125 % of
// that (690.8(B)), 13.75 A. One text each for the example and the second factor.
func ExampleContinuousA_solar() {
	maximum := nec.ContinuousA(8.8)
	fmt.Printf("%.2f A, %.2f A\n", maximum, nec.ContinuousA(maximum))
	// Output: 11.00 A, 13.75 A
}

// Hughes Associates, Conductor Selection and Application (2012), "Three sizes: an example": a continuous
// load of 95 A needs 119 A, so a 125 A device and 1 AWG at its 75 °C terminals; 3 AWG would carry the load
// itself; at 60 °C terminals 95 A need 2 AWG. One text.
func ExampleAmpacity_threeSizes() {
	smallest := func(amps float64, column nec.Column) catalog.Size {
		for _, size := range []catalog.Size{"4 AWG", "3 AWG", "2 AWG", "1 AWG", "1/0 AWG"} {
			if a, _ := nec.Ampacity("copper", size, column); a >= amps {
				return size
			}
		}
		return ""
	}
	device, _ := nec.NextStandard(ratings.Standard("nec", "breaker"), nec.ContinuousA(95))
	fmt.Printf("%.0f A: %.0f A device, %s\n", nec.ContinuousA(95), device, smallest(nec.ContinuousA(95), nec.Col75))
	fmt.Printf("95 A: %s at 75 C, %s at 60 C\n", smallest(95, nec.Col75), smallest(95, nec.Col60))
	// Output:
	// 119 A: 125 A device, 1 AWG
	// 95 A: 3 AWG at 75 C, 2 AWG at 60 C
}

// NFPA 70 110.14(C)(1): 60 °C up to 100 A, 75 °C above, so 100 A take 1 AWG copper (3 AWG where both ends
// are marked 75 °C), 110 A take 2 AWG. Rule in three independent texts; sizes read off table 310.16.
func ExampleTerminalColumn() {
	for _, c := range []struct {
		statedC, deviceA float64
		size             catalog.Size
	}{{0, 100, "1 AWG"}, {75, 100, "3 AWG"}, {0, 110, "2 AWG"}} {
		column, _ := nec.TerminalColumn(c.statedC, c.deviceA, 75, 90)
		amps, _ := nec.Ampacity("copper", c.size, column)
		fmt.Printf("%.0f A at %d C: %s carries %.0f A\n", c.deviceA, column, c.size, amps)
	}
	// Output:
	// 100 A at 60 C: 1 AWG carries 110 A
	// 100 A at 75 C: 3 AWG carries 100 A
	// 110 A at 75 C: 2 AWG carries 115 A
}

// EC&M magazine, "Sizing up the equipment grounding conductor" (2022): 10 AWG suits a 40 A circuit, 6 AWG
// one of 125 A and of 200 A. Code Talk, notes to episode 32: 4 AWG suits 300 A. One text each.
func ExampleGroundSize() {
	for _, deviceA := range []float64{40, 125, 200, 300} {
		size, _ := nec.GroundSize(deviceA, "copper")
		fmt.Printf("%.0f A: %s\n", deviceA, size)
	}
	// Output:
	// 40 A: 10 AWG
	// 125 A: 6 AWG
	// 200 A: 6 AWG
	// 300 A: 4 AWG
}
