package optimize_test

import (
	"context"
	"encoding/json"
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/frontier"
	"cartwright/optimize/next"
	"cartwright/optimize/question"
	"cartwright/optimize/value"
	"cartwright/optimize/why"
	"cartwright/scenarios"
)

// smallest is a problem with exactly one part of each kind that a plan needs, under either rule set. The
// heater takes 100 W through an inverter of 0.9 that idles at 5 W; the module holds 1000 usable Wh.
func smallest(rules scenarios.Rules) question.Problem {
	part := func(id string, price catalog.Cents, kg float64) catalog.Part {
		return catalog.Part{ID: id, Name: id, Price: price, MassKg: kg}
	}
	size, volts := catalog.Size("6 AWG"), "120"
	if rules == scenarios.IEC {
		size, volts = "16 mm2", "230"
	}
	run := scenarios.Run{LengthM: 1, AmbientC: 30, Bundled: 2, TerminalC: 75, Drop: 0.03}
	strings, mains := run, run
	strings.Kind, mains.Kind = scenarios.RunString, scenarios.RunMain
	return question.Problem{
		Scenario: &scenarios.Scenario{
			Name: "smallest", Currency: "USD", Rules: rules, Bus: scenarios.Bus{NominalV: 48, LowV: 44, HighV: 60},
			Loads:     []scenarios.Load{{Name: "heater", Watts: 100, Count: 1, Leg: scenarios.LegAuto, AllDay: true, Duty: 1, PowerFactor: 1, Start: 1}},
			AutonomyH: 4,
			Cart: scenarios.Cart{
				Casters: 4, WheelbaseM: 1.5, TrackM: 1.2, CasterMassHeightM: 0.05, Rolling: 0.02, Grip: 0.5,
				Frame:   scenarios.Mass{Name: "frame", MassKg: 40, HeightM: 0.3},
				Shelves: []scenarios.Shelf{{Name: "shelf", ElevationM: 0.1, LengthM: 1.4, DepthM: 1.1, Stack: 1, ClearHeightM: 0.3, MaxMassKg: math.Inf(1)}},
			},
			Limits:  scenarios.Limits{MassKg: math.Inf(1), Budget: math.MaxInt64, TiltDeg: 10},
			UseDays: 365, CasterFactor: 1.25, ACFaultA: 5000, Runs: []scenarios.Run{strings, mains},
			Needs:  []scenarios.Need{{Role: "shunt", Count: 1}},
			Solver: scenarios.Solver{TimeLimitS: 60, Plans: 10},
		},
		Catalog: &catalog.Catalog{
			Batteries: []catalog.Battery{{Part: part("module", 20000, 10), NominalV: 51.2, MinV: 44, MaxV: 58.4, CapacityWh: 1000,
				UsableFraction: 1, RoundTrip: 1, MaxDischargeA: 40, PeakDischargeA: 40, MaxChargeA: 20, ResistanceOhm: 0.05,
				ShortCircuitA: 1000, CycleLife: 3000, MaxSeries: 1, LengthM: 0.2, WidthM: 0.2, HeightM: 0.2}},
			Inverters: []catalog.Inverter{{Part: part("inverter", 30000, 8), DCMinV: 40, DCMaxV: 62, ACV: volts, ChargerACV: volts, ContinuousW: 1000,
				SurgeW: 2000, LegW: 1000, LegSurgeW: 2000, Efficiency: 0.9, IdleW: 5, MaxUnits: 1}},
			Cables: []catalog.Cable{{Part: part("cable", 0, 0), CentsPerM: 500, KgPerM: 0.2, Size: size, Material: "copper",
				InsulationC: 90, EndPrice: 100}},
			Devices: []catalog.Device{{Part: part("fuse", 1000, 0.1), Type: "fuse", Class: "T", RatingA: 50, Poles: 1, MaxDCV: 80,
				InterruptingDCA: 20000, TerminalC: 75}},
			Busbars:  []catalog.Busbar{{Part: part("bars", 2000, 1), RatingA: 100, Studs: 20}},
			Casters:  []catalog.Casters{{Part: part("casters", 4000, 4), SetOf: 4, RatingKg: 400}},
			Sundries: []catalog.Sundry{{Part: part("shunt", 3000, 0.2), Role: "shunt", RatingA: 100}},
		},
	}
}

// priced gives every part of a catalogue one price, of a piece or a metre, and crimped ends the same.
func priced(c *catalog.Catalog, price catalog.Cents) {
	for _, e := range c.All() {
		e.Price = price
	}
	for i := range c.Cables {
		c.Cables[i].CentsPerM, c.Cables[i].EndPrice = float64(price), price
	}
	for i := range c.Conduits {
		c.Conduits[i].CentsPerM, c.Conduits[i].EndPrice = float64(price), price
	}
	for i := range c.Sections {
		c.Sections[i].CentsPerM = float64(price)
	}
}

// With s strings there are s + 1 runs of two conductors of 1 m, 4 (s + 1) crimped ends, s + 1 fuses, s modules
// and one of each of inverter, bars, casters and shunt.
func TestEdges(t *testing.T) {
	pieces := func(strings int) int64 { return int64(2*(strings+1) + 4*(strings+1) + strings + 1 + strings + 4) }
	const (
		alone = 20000 + 30000 + 2000 + 4000 + 3000 + 2*1000 + 4*500 + 8*100 // one string
		each  = 20000 + 1000 + 2*500 + 4*100                                // each further one
		most  = 1e9 * 100                                                   // the highest price that is read
	)
	for _, c := range []struct {
		name    string
		edge    func(p question.Problem)
		strings int // of the first plan; 0: there is no plan
		cents   int64
	}{
		// 4 h * (100/0.9 + 5) W = 464 Wh
		{"one part of each kind", func(question.Problem) {}, 1, alone},
		// 4 h * 5 W of idling
		{"zero load", func(p question.Problem) { p.Scenario.Loads[0].Watts = 0 }, 1, alone},
		{"zero duty", func(p question.Problem) { p.Scenario.Loads[0].Duty = 0 }, 1, alone},
		{"zero load and no idling", func(p question.Problem) {
			p.Scenario.Loads[0].Watts, p.Catalog.Inverters[0].IdleW = 0, 0
		}, 1, alone},
		// 720 h * (1/0.9 + 5) W = 4.4 kWh
		{"a month", func(p question.Problem) { p.Scenario.AutonomyH, p.Scenario.Loads[0].Watts = 720, 1 }, 5, alone + 4*each},
		// 720 h * 116.1 W = 83.6 kWh, where 20 studs have room for 19 modules
		{"a month of too much", func(p question.Problem) { p.Scenario.AutonomyH = 720 }, 0, 0},
		{"prices of nothing", func(p question.Problem) { priced(p.Catalog, 0) }, 1, 0},
		{"a month at prices of nothing", func(p question.Problem) {
			priced(p.Catalog, 0)
			p.Scenario.AutonomyH, p.Scenario.Loads[0].Watts = 720, 1
		}, 5, 0},
		{"nothing to spend, prices of nothing", func(p question.Problem) {
			priced(p.Catalog, 0)
			p.Scenario.Limits.Budget = 0
		}, 1, 0},
		{"nothing to spend", func(p question.Problem) { p.Scenario.Limits.Budget = 0 }, 0, 0},
		{"the highest prices", func(p question.Problem) { priced(p.Catalog, most) }, 1, pieces(1) * most},
		{"a month at the highest prices", func(p question.Problem) {
			priced(p.Catalog, most)
			p.Scenario.AutonomyH, p.Scenario.Loads[0].Watts = 720, 1
		}, 5, pieces(5) * most},
	} {
		for _, rules := range []scenarios.Rules{scenarios.NEC, scenarios.IEC} {
			t.Run(c.name+", "+string(rules), func(t *testing.T) {
				p := smallest(rules)
				c.edge(p)
				r := rank(t, p, question.Options{})
				if c.strings == 0 {
					if r.Solver.Status != question.Infeasible || len(r.Changes)+len(r.Reasons) == 0 {
						t.Errorf("%s with %d plans, changes %v, reasons %v", r.Solver.Status, len(r.Plans), r.Changes, r.Reasons)
					}
					return
				}
				if r.Solver.Status != question.Optimal {
					t.Fatalf("%s: changes %v, reasons %v", r.Solver.Status, r.Changes, r.Reasons)
				}
				checkRanking(t, p, question.ByCost)
				first := r.Plans[0]
				if got := first.Core.Batteries[0].Strings; got != c.strings || int64(first.Cost) != c.cents {
					t.Errorf("%d strings at %d cents, want %d at %d", got, first.Cost, c.strings, c.cents)
				}
				if first.AutonomyH < p.Scenario.AutonomyH || math.IsInf(first.AutonomyH, 0) {
					t.Errorf("runs for %g h, asked for %g h", first.AutonomyH, p.Scenario.AutonomyH)
				}
			})
		}
	}
}

// Every question is answered at the edges, with numbers that can be written.
func TestEdgesOfQuestions(t *testing.T) {
	ctx := context.Background()
	questions := map[string]func(p question.Problem) (any, error){
		"why":      func(p question.Problem) (any, error) { return why.Explain(ctx, p) },
		"why part": func(p question.Problem) (any, error) { return why.ExplainPart(ctx, p, "module") },
		"frontier": func(p question.Problem) (any, error) { return frontier.Find(ctx, p, frontier.AxisMass, nil) },
		"value":    func(p question.Problem) (any, error) { return value.Find(ctx, p) },
		"next":     func(p question.Problem) (any, error) { return next.Find(ctx, p, next.Options{Months: 12}) },
	}
	for edge, do := range map[string]func(p question.Problem){
		"as it is":           func(question.Problem) {},
		"zero load":          func(p question.Problem) { p.Scenario.Loads[0].Duty = 0 },
		"a month":            func(p question.Problem) { p.Scenario.AutonomyH, p.Scenario.Loads[0].Watts = 720, 1 },
		"a month too much":   func(p question.Problem) { p.Scenario.AutonomyH = 720 },
		"prices of nothing":  func(p question.Problem) { priced(p.Catalog, 0) },
		"the highest prices": func(p question.Problem) { priced(p.Catalog, 1e11) },
	} {
		for name, ask := range questions {
			t.Run(name+", "+edge, func(t *testing.T) {
				p := smallest(scenarios.NEC)
				p.Scenario.Savings = &scenarios.Savings{Now: 10000, PerMonth: 10000}
				do(p)
				answer, err := ask(p)
				if err != nil {
					t.Fatal(err)
				}
				if _, err := json.Marshal(answer); err != nil {
					t.Errorf("%+v: %v", answer, err)
				}
			})
		}
	}
}

// On random problems, too: prices of nothing make every plan cost nothing, the highest prices leave as many
// plans as there were, and loads of nothing never leave fewer.
func TestEdgesOfRandomProblems(t *testing.T) {
	law(t, 9, func(t *testing.T, _ dice, p func() question.Problem) {
		for name, edge := range map[string]func(p question.Problem){
			"prices of nothing":  func(q question.Problem) { priced(q.Catalog, 0) },
			"the highest prices": func(q question.Problem) { priced(q.Catalog, 1e11) },
		} {
			before, after := p(), p()
			for _, q := range []question.Problem{before, after} {
				q.Scenario.Limits.Budget, q.Scenario.Have, q.Catalog.Offers = math.MaxInt64, nil, nil
			}
			edge(after)
			was, is := rank(t, before, question.Options{}), rank(t, after, question.Options{})
			if len(is.Plans) != len(was.Plans) {
				t.Errorf("%s, %s: %d plans, were %d", after.Scenario.Name, name, len(is.Plans), len(was.Plans))
			}
			for i := range is.Plans {
				if got := &is.Plans[i]; !got.Audit.Passed || !got.Proven || name == "prices of nothing" && got.Cost != 0 {
					t.Errorf("%s, %s: plan %d costs %s; audit %v, proven %v", after.Scenario.Name, name, i+1, got.Cost, got.Audit.Passed, got.Proven)
				}
			}
		}
		idle := p()
		for i := range idle.Scenario.Loads {
			idle.Scenario.Loads[i].Duty = 0
		}
		notDearer(t, p(), idle, "loads of nothing")
	})
}
