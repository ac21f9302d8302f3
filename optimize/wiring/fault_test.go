package wiring_test

import (
	"fmt"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/energy"
	"cartwright/optimize/wiring"
)

func TestShortCircuitA(t *testing.T) {
	stated := &catalog.Battery{ShortCircuitA: 1500, MaxV: 14.4, ResistanceOhm: 0.004}
	if got := wiring.ShortCircuitA(stated); got != 1500 {
		t.Errorf("stated: %v A, want 1500", got)
	}
}

// TestStringFaultA: a fault on one string's side draws all the others, a fault on the bars only that
// string (circuit theory).
func TestStringFaultA(t *testing.T) {
	for _, c := range []struct {
		name             string
		own, total, want float64
	}{
		{"alone", 1000, 1000, 1000},
		{"two equal", 1000, 2000, 1000},
		{"three equal", 1000, 3000, 2000},
		{"strong beside weak", 3000, 4000, 3000},
		{"weak beside strong", 1000, 4000, 3000},
	} {
		if got := wiring.StringFaultA(c.own, c.total); got != c.want {
			t.Errorf("%s: %v A, want %v", c.name, got, c.want)
		}
	}
}

func TestBusFaultA(t *testing.T) {
	a, b := &catalog.Battery{ShortCircuitA: 1000}, &catalog.Battery{ShortCircuitA: 250}
	if got := wiring.BusFaultA([]*catalog.Battery{a, b}, []int{3, 2}); got != 3500 {
		t.Errorf("three of 1000 A and two of 250 A: %v A, want 3500", got)
	}
	if got := wiring.BusFaultA(nil, nil); got != 0 {
		t.Errorf("no string: %v A, want 0", got)
	}
}

func TestInterruptingA(t *testing.T) {
	dev := &catalog.Device{InterruptingDCA: 20000, InterruptingACA: 200000}
	if got := wiring.InterruptingA(wiring.Duty{}, dev); got != 20000 {
		t.Errorf("dc: %v A, want 20000", got)
	}
	if got := wiring.InterruptingA(wiring.Duty{AC: true}, dev); got != 200000 {
		t.Errorf("ac: %v A, want 200000", got)
	}
}

// Electrical fundamentals, I = E / R: 12 V over 5 milliohm are 2400 A. Two independent texts for the
// formula; the figure computed.
func ExampleShortCircuitA() {
	fmt.Printf("%.0f A\n", wiring.ShortCircuitA(&catalog.Battery{MaxV: 12, ResistanceOhm: 0.005}))
	// Output: 2400 A
}

// By analogy with NFPA 70 215.3, common practice, no source: 160 A of inverters and 8 A of dc loads ask for
// 210 A; three strings, two inverters and one circuit on the bus for six studs.
func ExampleBusbarA() {
	fmt.Printf("%.0f A, %d studs\n", wiring.BusbarA(160+8), wiring.BusbarStuds(3, 2, 1))
	// Output: 210 A, 6 studs
}

// NCERT, Physics for class XII, chapter 3, exercise 3.1: the storage battery of a car of 12 V and 0.4 ohm
// gives 30 A at the most. Three independent texts.
func ExampleShortCircuitA_carBattery() {
	fmt.Printf("%.0f A\n", wiring.ShortCircuitA(&catalog.Battery{MaxV: 12, ResistanceOhm: 0.4}))
	// Output: 30 A
}

// A text on ABYC E-11: six 6 V batteries of 2,400 A each, as a bank of 12 V, give 7,200 A: two in series give what one
// does, three strings of them add up.
func ExampleBusFaultA() {
	golf := &catalog.Battery{NominalV: 6, ShortCircuitA: 2400}
	strings := 6 / energy.Series(12, golf.NominalV)
	fmt.Printf("%.0f A\n", wiring.BusFaultA([]*catalog.Battery{golf}, []int{strings}))
	// Output: 7200 A
}
