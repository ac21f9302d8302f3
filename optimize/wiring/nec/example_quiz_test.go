package nec_test

import (
	"fmt"

	"cartwright/optimize/wiring/nec"
	"cartwright/scenarios/ratings"
)

// EC&M magazine, Code Quiz ("What is the allowable ampacity of any one of the current-carrying 12 AWG THHN"):
// 30 conductors of 12 AWG copper for 90 °C in one raceway carry 13.5 A each. One text.
func ExampleBundlingFactor_thirtyConductors() {
	amps, _ := nec.Ampacity("copper", "12 AWG", nec.Col90)
	fmt.Printf("%.0f A * %.2f = %.1f A\n", amps, nec.BundlingFactor(30), amps*nec.BundlingFactor(30))
	// Output: 30 A * 0.45 = 13.5 A
}

// EC&M magazine, Stallcup's Code quiz on article 310: six 14 AWG copper conductors for 90 °C at 105 °F carry
// 17.4 A each. One text.
func ExampleAmbientFactor_sixConductors() {
	amps, _ := nec.Ampacity("copper", "14 AWG", nec.Col90)
	ambient, _ := nec.AmbientFactor(celsius(105), nec.Col90)
	fmt.Printf("%.0f A * %.2f * %.2f = %.1f A\n", amps, nec.BundlingFactor(6), ambient, amps*nec.BundlingFactor(6)*ambient)
	// Output: 25 A * 0.80 * 0.87 = 17.4 A
}

// A question of the International Code Council's test for inspectors, as discussed in an inspectors' forum:
// 12 AWG copper for 90 °C in an attic of 110 °F may carry 26 A. Terminals of 60 °C and 240.4(D) let no more
// than 20 A protect it. One text for both.
func ExampleAmbientFactor_attic() {
	amps, _ := nec.Ampacity("copper", "12 AWG", nec.Col90)
	ambient, _ := nec.AmbientFactor(celsius(110), nec.Col90)
	terminal, _ := nec.Ampacity("copper", "12 AWG", nec.Col60)
	small, _ := nec.SmallConductorA("copper", "12 AWG")
	fmt.Printf("%.0f A; at the terminals %.0f A, device %.0f A\n", amps*ambient, terminal, small)
	// Output: 26 A; at the terminals 20 A, device 20 A
}

// EC&M magazine, Code Quiz on 384.22 and 310.15: twelve conductors of 12 AWG copper for 90 °C carry 15 A
// each and are protected by 15 A. One text.
func ExampleLargestDeviceA_twelveConductors() {
	amps, _ := nec.Ampacity("copper", "12 AWG", nec.Col90)
	adjusted := amps * nec.BundlingFactor(12)
	fmt.Printf("%.0f A on %.0f A\n", nec.LargestDeviceA(ratings.Standard("nec", "breaker"), adjusted), adjusted)
	// Output: 15 A on 15 A
}

// celsius returns a temperature in °F in °C.
func celsius(fahrenheit float64) float64 { return (fahrenheit - 32) / 1.8 }
