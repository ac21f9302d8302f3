package optimize_test

import (
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// TestTradeOutlets has a whole cart planned with the outlets an electrician wires without reckoning: 20 A in
// 12 AWG, 50 A of 240 V in 8 AWG at 75 °C terminals and 6 AWG at 60 °C. Common practice, no source. Every
// plan of the ranking must choose just these, since a larger wire is dearer and a smaller one not allowed.
func TestTradeOutlets(t *testing.T) {
	s, err := scenarios.Demo("cider-shed")
	if err != nil {
		t.Fatal(err)
	}
	outlet := func(name string, volts, amps, terminalC float64) scenarios.Circuit {
		return scenarios.Circuit{Name: name, Volts: volts, DeviceA: amps, LengthM: 3, Neutral: true,
			TerminalC: terminalC, AmbientC: 30, Bundled: 2, Drop: 0.03}
	}
	for i := range s.Loads {
		s.Loads[i].Circuit = ""
		s.Loads[i].Watts /= 10 // so that a few circuits hold them
	}
	want := map[string]catalog.Size{"outlet": "12 AWG", "stove at 75 C": "8 AWG", "stove at 60 C": "6 AWG"}
	s.Circuits = []scenarios.Circuit{
		outlet("outlet", 120, 20, 0), outlet("stove at 75 C", 240, 50, 75), outlet("stove at 60 C", 240, 50, 60),
	}
	p := question.Problem{Scenario: s, Catalog: catalog.Embedded()}
	r := rank(t, p, question.Options{Plans: 3})
	if len(r.Plans) == 0 {
		t.Fatal("no plan")
	}
	for i := range r.Plans {
		if !r.Plans[i].Audit.Passed {
			t.Errorf("plan %d fails its audit", i+1)
		}
		chosen := map[string]catalog.Size{}
		for _, run := range r.Plans[i].Runs {
			if run.Run == string(scenarios.RunBranch) {
				chosen[run.Name] = cableOf(p.Catalog, run.Cable).Size
			}
		}
		for name, size := range want {
			if chosen[name] != size {
				t.Errorf("plan %d: %s in %s, want %s", i+1, name, chosen[name], size)
			}
		}
	}
}

// TestTradeModule has a whole cart planned with no battery but a lithium iron phosphate module of 5 kWh and
// 48 V that weighs 45 kg (common practice, no source): it is accepted, and each of the modules bought counts
// as 45 kg on its shelf, on the casters and in the mass of the plan.
func TestTradeModule(t *testing.T) {
	plan := func(kg float64) (massKg, shelvesKg, wheelKg float64, modules int) {
		s, err := scenarios.Demo("cider-shed")
		if err != nil {
			t.Fatal(err)
		}
		s.Have, s.Limits.SharedProtocols = nil, false
		c := catalog.Embedded().Clone()
		c.Batteries = []catalog.Battery{{
			Part:      catalog.Part{ID: "module-5", Name: "Module 5 kWh, invented", Price: catalog.CentsFrom(1100), MassKg: kg},
			Chemistry: "LFP", NominalV: 48, MinV: 42, MaxV: 54.75, CapacityWh: 5000, UsableFraction: 0.9, RoundTrip: 0.95,
			MaxDischargeA: 100, PeakDischargeA: 150, MaxChargeA: 50, ResistanceOhm: 0.02, ShortCircuitA: 54.75 / 0.02,
			MaxSeries: 1, LengthM: 0.442, WidthM: 0.42, HeightM: 0.133,
		}}
		s.Limits.Budget = catalog.CentsFrom(20000)
		r := rank(t, question.Problem{Scenario: s, Catalog: c}, question.Options{Plans: 1})
		if len(r.Plans) != 1 || !r.Plans[0].Audit.Passed {
			t.Fatalf("a module of %g kg: %d plans, or one that fails its audit; %+v %q", kg, len(r.Plans), r.Changes, r.Reasons)
		}
		p := &r.Plans[0]
		for _, sh := range p.Shelves {
			shelvesKg += sh.MassKg
			for _, b := range sh.Batteries {
				modules += b.Modules
			}
		}
		return p.MassKg, shelvesKg, p.Casters.LoadEachKg, modules
	}
	mass, shelves, wheel, n := plan(45)
	if n == 0 || math.Abs(shelves-45*float64(n)) > 1e-9 {
		t.Errorf("%d modules stand on the shelves with %g kg, want 45 kg each", n, shelves)
	}
	// The same cart with modules a hundredth of a kilogram heavier.
	more, _, moreWheel, m := plan(45.01)
	const factor, wheels = 1.33, 4 // of the scenario
	if m != n || math.Abs(more-mass-0.01*float64(n)) > 1e-9 || math.Abs(moreWheel-wheel-factor*0.01*float64(n)/(wheels-1)) > 1e-9 {
		t.Errorf("%d modules of 45.01 kg: plan %g kg, %g kg a wheel; %d of 45 kg: %g kg, %g kg", m, more, moreWheel, n, mass, wheel)
	}
}
