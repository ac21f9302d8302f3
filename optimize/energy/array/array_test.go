package array_test

import (
	"fmt"
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/energy/array"
	"cartwright/scenarios"
)

// Three inputs on two units: the fuller one has two of them, and with that one full a third of what the array gives is
// on the other. 6 kW of modules, 1.5 kW a unit: 2.25 kW are taken in all, and 1.5 kW flow at the fuller unit.
func ExampleArray_TakenW() {
	a := array.Array{Module: &catalog.Solar{Watts: 400}, Series: 5, Parallel: 1, Inputs: 3}
	inv := &catalog.Inverter{SolarMaxW: 1500}
	fmt.Println(a.Modules(), a.TakenW(inv, 2), a.UnitW(inv, 2))
	// Output: 15 2250 1500
}

// What one unit takes is the least that any cut-off can be: an array below that is cut off nowhere, and every unit that
// has inputs is as full as the array is wide.
func TestTakenAndUnit(t *testing.T) {
	for units := 1; units <= 4; units++ {
		for inputs := 1; inputs <= 3*units; inputs++ {
			inv := &catalog.Inverter{SolarMaxW: 1000}
			a := array.Array{Module: &catalog.Solar{Watts: 100}, Series: 2, Parallel: 3, Inputs: inputs}
			perInput := 600.0
			// By hand: put the inputs on the units one after another, and raise the sun until one unit is full.
			on := make([]int, units)
			for i := range inputs {
				on[i%units]++
			}
			taken := float64(inputs) * (inv.SolarMaxW / float64(on[0])) // each input gives the same when the first is full
			if got := a.TakenW(inv, units); math.Abs(got-taken) > 1e-9*taken {
				t.Errorf("%d inputs on %d units: %g W are taken, want %g", inputs, units, got, taken)
			}
			if got, want := a.UnitW(inv, units), min(inv.SolarMaxW, perInput*float64(on[0])); math.Abs(got-want) > 1e-9*want {
				t.Errorf("%d inputs on %d units: %g W at the fuller one, want %g", inputs, units, got, want)
			}
		}
	}
}

// A room of 3 by 2 m takes modules of 1.7 by 1.1 m: one by one lying, one by one standing: 1 x 1 or 2 x 1.
func TestRoom(t *testing.T) {
	room := &scenarios.Sun{Room: &scenarios.Room{LengthM: 3, WidthM: 2}}
	for _, c := range []struct {
		sun           *scenarios.Sun
		length, width float64
		want          int
	}{
		{room, 1.7, 1.1, 2},
		{room, 1, 0.5, 12},
		{room, 0.6, 0.5, 20}, // five by four, to the millimetre
		{room, 3.1, 0.2, 0},
		{room, 0, 1, 0}, // no size, no room
		{&scenarios.Sun{Most: 7}, 0, 0, 7},
	} {
		if got := array.Room(c.sun, &catalog.Solar{LengthM: c.length, WidthM: c.width}); got != c.want {
			t.Errorf("%g by %g m: room for %d, want %d", c.length, c.width, got, c.want)
		}
	}
}

// An inverter that leaves any of its inputs' figures empty takes no array.
func TestInputs(t *testing.T) {
	whole := catalog.Inverter{SolarMaxW: 1, SolarMaxVocV: 1, MPPTMinV: 1, MPPTMaxV: 1, MPPTMaxA: 1, MPPTInputs: 1}
	if !array.Inputs(&whole) {
		t.Error("an inverter that states all takes none")
	}
	for name, empty := range map[string]func(*catalog.Inverter){
		"solar_max_w": func(i *catalog.Inverter) { i.SolarMaxW = 0 }, "solar_max_voc_v": func(i *catalog.Inverter) { i.SolarMaxVocV = 0 },
		"mppt_min_v": func(i *catalog.Inverter) { i.MPPTMinV = 0 }, "mppt_max_v": func(i *catalog.Inverter) { i.MPPTMaxV = 0 },
		"mppt_max_a": func(i *catalog.Inverter) { i.MPPTMaxA = 0 }, "mppt_inputs": func(i *catalog.Inverter) { i.MPPTInputs = 0 },
	} {
		inv := whole
		if empty(&inv); array.Inputs(&inv) {
			t.Errorf("an inverter without %s takes modules", name)
		}
	}
}
