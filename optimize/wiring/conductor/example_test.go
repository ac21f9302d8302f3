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

// FAA AC 43.13-1B CHG 1 (2001), table 11-7, p. 11-22, row 1: 20 A over 107 ft of No. 6 drop .942 V. Two
// independent texts.
func ExampleDropV_faa117() {
	fmt.Printf("%.3f V\n", conductor.DropV(20, 107, 0.00044)) // feet, ohm per foot
	// Output: 0.942 V
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
