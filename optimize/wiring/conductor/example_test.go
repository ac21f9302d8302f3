package conductor_test

import (
	"fmt"

	"cartwright/catalog"
	"cartwright/optimize/wiring/conductor"
)

// ASTM B258-02: gauge 36 is 0.0050 in, 4/0 is 0.4600 in; gauge 10 is 0.1019 in. One text, recomputed.
func ExampleDiameterM() {
	for _, size := range []catalog.Size{"36 AWG", "10 AWG", "4/0 AWG"} {
		d := conductor.DiameterM(size)
		fmt.Printf("%s %.4f in %.3f mm\n", size, d/metrePerInch, d*1000)
	}
	// Output:
	// 36 AWG 0.0050 in 0.127 mm
	// 10 AWG 0.1019 in 2.588 mm
	// 4/0 AWG 0.4600 in 11.684 mm
}

// FAA AC 43.13-1B CHG 1 (2001), table 11-7, p. 11-22: 20 A over one wire, the airframe being the return.
// Printed: .942, .504, 3.60 and 6.12 V; the third is a misprint, the arithmetic gives 3.555. Two independent
// texts.
func ExampleDropV_faaTable117() {
	for _, row := range []struct{ runFt, ohmPerFt float64 }{
		{107, 0.00044}, // No. 6, limit 1 V
		{90, 0.00028},  // No. 4, limit .5 V
		{88, 0.00202},  // No. 12, limit 4 V
		{100, 0.00306}, // No. 14, limit 7 V
	} {
		fmt.Printf("%.3f V\n", conductor.DropV(20, row.runFt, row.ohmPerFt))
	}
	// Output:
	// 0.942 V
	// 0.504 V
	// 3.555 V
	// 6.120 V
}

// FAA AC 43.13-1B CHG 1 (2001), table 11-8, p. 11-22: the longest run of No. 10 that keeps 20 A within a
// limit, in feet rounded down, and the check of it. Printed: 39, 19.5, 156 and 273 ft; .98, .366, 3.93 and
// 6.88 V; the second volts are a misprint, the arithmetic gives .491. Two independent texts. The book
// rounds long runs down by more than a foot.
func ExampleDropV_faaTable118() {
	const no10 = 0.00126 // ohm per foot
	for _, row := range []struct{ runFt, limitV float64 }{{39, 1}, {19.5, 0.5}, {156, 4}, {273, 7}} {
		v := conductor.DropV(20, row.runFt, no10)
		fmt.Printf("%v ft: %.3f V of %v V, exactly %.1f ft\n", row.runFt, v, row.limitV, row.runFt*row.limitV/v)
	}
	// Output:
	// 39 ft: 0.983 V of 1 V, exactly 39.7 ft
	// 19.5 ft: 0.491 V of 0.5 V, exactly 19.8 ft
	// 156 ft: 3.931 V of 4 V, exactly 158.7 ft
	// 273 ft: 6.880 V of 7 V, exactly 277.8 ft
}

// FAA AC 43.13-1B CHG 1 (2001), p. 11-26, example 1: 20 A without end over 50 ft at 28 V, where 1 V may be
// lost, take No. 8. One text. The book reads it off a chart; here No. 10 has the 0.00126 ohm/ft of its table
// 11-8, and No. 8 as much less as it has more area (ASTM B258).
func ExampleDropV_faaExample1() {
	const no10 = 0.00126 // ohm per foot
	for _, size := range []catalog.Size{"10 AWG", "8 AWG"} {
		v := conductor.DropV(20, 50, no10*catalog.Size("10 AWG").AreaMM2()/size.AreaMM2())
		fmt.Printf("%s: %.2f V %v\n", size, v, v <= 1)
	}
	// Output:
	// 10 AWG: 1.26 V false
	// 8 AWG: 0.79 V true
}

// Electrical Wiring Residential, 19th edition, chapter 4, problem 35: the smallest wire that keeps 10 A at
// 120 V over 140 ft within 3 %, with 12.9 ohm·cmil/ft. Answer: 10 AWG. One text.
func ExampleDropV_wiringResidential35() {
	const k = 12.9 // ohm·cmil/ft, copper at 75 °C
	for _, wire := range []struct {
		size string
		cmil float64
	}{{"14 AWG", 4110}, {"12 AWG", 6530}, {"10 AWG", 10380}} {
		v := conductor.DropV(10, 2*140, k/wire.cmil)
		fmt.Printf("%s %.2f V %v\n", wire.size, v, v <= 0.03*120)
	}
	// Output:
	// 14 AWG 8.79 V false
	// 12 AWG 5.53 V false
	// 10 AWG 3.48 V true
}

// Electrical Wiring Residential, 19th edition, chapter 4, problem 36: the same run in 8 AWG drops 2.19 V.
// One text.
func ExampleDropV_wiringResidential36() {
	fmt.Printf("%.2f V\n", conductor.DropV(10, 2*140, 12.9/16510))
	// Output: 2.19 V
}

// Electrical Power Systems Technology, p. 276: 12 A through 20 ft there and back of 14 AWG at 2.57 ohm per
// 1000 ft (some 25 °C) drop 0.6168 V and leave 119.383 V of 120 V. One text.
func ExampleDropV_powerSystemsTechnology() {
	v := conductor.DropV(12, 20, 2.57/1000)
	fmt.Printf("%.4f V, %.3f V left\n", v, 120-v)
	// Output: 0.6168 V, 119.383 V left
}

// An electrical training text (web lesson on chapter 9 table 8): 4 A over 100 ft, two wires of 16 AWG at
// 4.99 ohm per 1000 ft, drop 4.0 V. One text. It goes on with the rounded 4.0 V to 16.7 % of 24 V.
func ExampleDropV_trainingText() {
	fmt.Printf("%.1f V\n", conductor.DropV(4, 2*100, 4.99/1000))
	// Output: 4.0 V
}

// Boat wiring texts on the formula CM = K · I · L / E of ABYC E-11, with 10.75 ohm·cmil/ft: a bilge pump of
// 10 A at 12 V, 11 ft out and 10 ft back, takes 12 AWG where 3 % may be lost and 16 AWG where 10 % may. Both
// answers in one text each, the formula in one; areas of NEC chapter 9 table 8, of 18 AWG by ASTM B258.
func ExampleDropV_bilgePump() {
	const k = 10.75 // ohm·cmil/ft, copper at some 25 °C
	for _, limit := range []float64{0.03, 0.10} {
		fmt.Printf("%.0f %% of 12 V:", 100*limit)
		for _, wire := range []struct {
			size string
			cmil float64
		}{{"18 AWG", 1620}, {"16 AWG", 2580}, {"14 AWG", 4110}, {"12 AWG", 6530}} {
			if v := conductor.DropV(10, 11+10, k/wire.cmil); v <= limit*12 {
				fmt.Printf(" %s, %.2f V\n", wire.size, v)
				break
			}
		}
	}
	// Output:
	// 3 % of 12 V: 12 AWG, 0.35 V
	// 10 % of 12 V: 16 AWG, 0.88 V
}
