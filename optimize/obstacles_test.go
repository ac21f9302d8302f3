package optimize_test

import (
	"context"
	"strings"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize"
	"cartwright/optimize/question"
	"cartwright/optimize/search"
	"cartwright/optimize/why"
	"cartwright/scenarios"
)

// Where no plan is possible for a reason that is no limit, the reason names the right thing, and only that.
func TestReasons(t *testing.T) {
	for _, c := range []struct {
		name  string
		spoil func(s *scenarios.Scenario, c *catalog.Catalog)
		want  []string // what each reason begins with
	}{
		{"no cables", func(_ *scenarios.Scenario, c *catalog.Catalog) { c.Cables = nil },
			[]string{"the catalogue has no cables: cables.csv is missing or empty"}},
		{"no devices", func(_ *scenarios.Scenario, c *catalog.Catalog) { c.Devices = nil },
			[]string{"the catalogue has no fuses or breakers: devices.csv is missing or empty"}},
		{"no inverters", func(_ *scenarios.Scenario, c *catalog.Catalog) { c.Inverters = nil },
			[]string{"the catalogue has no inverters: inverters.csv is missing or empty"}},
		{"no batteries", func(_ *scenarios.Scenario, c *catalog.Catalog) { c.Batteries = nil },
			[]string{"the catalogue has no batteries: batteries.csv is missing or empty"}},
		{"no bus bars", func(_ *scenarios.Scenario, c *catalog.Catalog) { c.Busbars = nil },
			[]string{"the catalogue has no bus bars: busbars.csv is missing or empty"}},
		{"no casters", func(_ *scenarios.Scenario, c *catalog.Catalog) { c.Casters = nil },
			[]string{"the catalogue has no casters: casters.csv is missing or empty"}},
		{"no sundries", func(_ *scenarios.Scenario, c *catalog.Catalog) { c.Sundries = nil },
			[]string{"the catalogue has no sundries: sundries.csv is missing or empty"}},
		{"five wheels", func(s *scenarios.Scenario, _ *catalog.Catalog) { s.Cart.Casters = 5 },
			[]string{"the catalogue has no set of 5 casters"}},
		{"only metric cables", func(s *scenarios.Scenario, c *catalog.Catalog) {
			for i := range c.Cables {
				c.Cables[i].Size = "16 mm2"
			}
			s.Circuits = s.Circuits[:1]
		}, []string{"no cable of the catalogue serves the main of", "no cable of the catalogue serves a string of", "no cable of the catalogue serves circuit \"north field\""}},
		{"high bus", func(s *scenarios.Scenario, _ *catalog.Catalog) {
			s.Bus = scenarios.Bus{NominalV: 96, LowV: 90, HighV: 120}
		},
			[]string{"no inverter of the catalogue takes the whole bus, from 90 to 120 V", "no battery of the catalogue, in the number in series its maker allows, makes up the bus of 96 V"}},
		{"volts no inverter has", func(s *scenarios.Scenario, _ *catalog.Catalog) { s.Circuits[0].Volts = 240 },
			[]string{"no inverter that takes the bus gives 240 V"}},
		{"heavy load", func(s *scenarios.Scenario, _ *catalog.Catalog) {
			s.Circuits = nil
			s.Loads[0].Watts, s.Loads[0].Circuit = 1e5, ""
			for i := range s.Loads {
				s.Loads[i].Circuit = ""
			}
		},
			[]string{"no inverter that fits, in the number its maker allows side by side, carries the loads"}},
		{"heavy start", func(s *scenarios.Scenario, _ *catalog.Catalog) { s.Loads[0].Start = 1e4 },
			[]string{"no inverter that fits, in the number its maker allows side by side, carries the largest start"}},
		{"no charger", func(s *scenarios.Scenario, c *catalog.Catalog) {
			s.Recharge = &scenarios.Recharge{WithinH: 8, From: "grid"}
			for i := range c.Inverters {
				c.Inverters[i].ChargerA = 0
			}
		}, []string{"no inverter that carries the loads has a charger"}},
		{"long main", func(s *scenarios.Scenario, _ *catalog.Catalog) { s.Runs[1].LengthM = 500 },
			[]string{"no cable of the catalogue serves the main of 1 x inv-120-1-24 (the smallest that serves) at"}},
		{"long string", func(s *scenarios.Scenario, _ *catalog.Catalog) { s.Runs[0].LengthM = 500 },
			[]string{"no cable of the catalogue serves a string of"}},
		{"small own breaker", func(s *scenarios.Scenario, _ *catalog.Catalog) { s.Runs[2].OwnBreakerA = 3 },
			[]string{"the own_breaker of 3 A is too small for the feeder of"}},
		{"fault behind the inverter", func(s *scenarios.Scenario, _ *catalog.Catalog) { s.ACFaultA = 5e5; s.Circuits = s.Circuits[:1] },
			[]string{"no fuse or breaker of the catalogue that suits circuit \"north field\" breaks the ac_fault of 500000 A"}},
		{"large circuit", func(s *scenarios.Scenario, _ *catalog.Catalog) { s.Circuits[0].DeviceA = 400 },
			[]string{"the catalogue has no fuse or breaker of exactly 400 A for 120 V of alternating current"}},
		{"large receptacle", func(s *scenarios.Scenario, _ *catalog.Catalog) { s.Circuits[0].Receptacle.RatingA = 300 },
			[]string{"the catalogue has no receptacle of 300 A, as circuit \"north field\" asks for"}},
		{"low shelves", func(s *scenarios.Scenario, _ *catalog.Catalog) {
			for i := range s.Cart.Shelves {
				s.Cart.Shelves[i].ClearHeightM = 0.01
			}
		}, []string{"the shelves have no room for a string"}},
		{"weak shelves", func(s *scenarios.Scenario, _ *catalog.Catalog) {
			for i := range s.Cart.Shelves {
				s.Cart.Shelves[i].MaxMassKg = 1
			}
		}, []string{"the shelves' max_mass is too little for a string"}},
		{"all in reserve", func(s *scenarios.Scenario, _ *catalog.Catalog) { s.Limits.Reserve = 1 },
			[]string{"a reserve of 100 % leaves nothing"}},
		{"backboard far out", func(s *scenarios.Scenario, _ *catalog.Catalog) { s.Cart.Backboard.OffsetM = 10 },
			[]string{"cart.backboard.offset is 10 m"}},
		{"deck item far out", func(s *scenarios.Scenario, _ *catalog.Catalog) {
			s.Cart.DeckItems = append(s.Cart.DeckItems, scenarios.Mass{Name: "anvil", MassKg: 400, HeightM: 0.5, OffsetM: -2})
		}, []string{"the deck item \"anvil\" of 400 kg is -2 m off the middle"}},
		{"heavy frame", func(s *scenarios.Scenario, _ *catalog.Catalog) { s.Cart.Frame.MassKg = 50e3 },
			[]string{"frame and deck items alone, "}},
		{"many of a need", func(s *scenarios.Scenario, _ *catalog.Catalog) { s.Needs[0].Count = 10000 },
			[]string{"10000 x shunt are needed"}},
		{"loads on the bus", func(s *scenarios.Scenario, _ *catalog.Catalog) {
			s.Loads = append(s.Loads, scenarios.Load{Name: "arc", Watts: 4e4, Count: 1, AllDay: true, Duty: 1, PowerFactor: 1, Start: 1, DC: true})
		}, []string{"the catalogue has no shunt of 2336.57 A, as the bus current of", "the catalogue has no disconnect of 2336.57 A, as the bus current of"}},
		{"weak fuses", func(_ *scenarios.Scenario, c *catalog.Catalog) {
			for i := range c.Devices {
				c.Devices[i].InterruptingDCA = 10
			}
		}, []string{"no fuse or breaker of the catalogue breaks the short-circuit current"}},
		{"few studs", func(_ *scenarios.Scenario, c *catalog.Catalog) {
			for i := range c.Busbars {
				c.Busbars[i].Studs = 1
			}
		}, []string{"no bus bars of the catalogue carry the current"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			s, err := scenarios.Demo("star-party")
			if err != nil {
				t.Fatal(err)
			}
			s.Have, s.Measured = nil, nil
			s.Loads = []scenarios.Load{{Name: "mounts", Watts: 300, Count: 1, Leg: scenarios.LegAuto, AllDay: true, Duty: 0.5, PowerFactor: 1, Start: 2}}
			p := question.Problem{Scenario: s, Catalog: catalog.Embedded().Clone()}
			c.spoil(s, p.Catalog)
			r, err := optimize.Rank(context.Background(), p, question.Options{})
			if err != nil {
				t.Fatal(err)
			}
			begins(t, r.Reasons, c.want)
			e, err := why.Explain(context.Background(), p)
			if err != nil {
				t.Fatal(err)
			}
			begins(t, e.Reasons, c.want)
		})
	}
}

// begins checks what each of some reasons begins with, and that there are no others.
func begins(t *testing.T, got, want []string) {
	t.Helper()
	ok := len(got) == len(want)
	for i := 0; ok && i < len(want); i++ {
		ok = strings.HasPrefix(got[i], want[i])
	}
	if !ok {
		t.Errorf("got reasons\n  %s\nwant such as begin with\n  %s", strings.Join(got, "\n  "), strings.Join(want, "\n  "))
	}
}

// Feasible, which looks at the balance first, finds a plan for just those carts with an uneven load for which
// there is one.
func TestFeasibleOfUnevenCarts(t *testing.T) {
	possible, none := 0, 0
	for seed := uint64(9e6); seed < 9e6+80*uint64(*times); seed++ {
		problem := func() question.Problem {
			p, d := randomProblem(seed), newDice(seed^77<<32)
			p.Scenario.Cart.Backboard.OffsetM = pick(d, 0.0, 0.2, -0.4, 0.7, -1.5, 4)
			p.Scenario.Cart.DeckItems = append(p.Scenario.Cart.DeckItems, scenarios.Mass{Name: "ballast", MassKg: pick(d, 5.0, 40, 120),
				HeightM: 0.4, OffsetM: pick(d, 0.0, 0.3, -0.5)})
			return p
		}
		found, err := search.Feasible(context.Background(), problem())
		if err != nil {
			t.Fatal(err)
		}
		best := enumerate(t, problem(), question.ByCost)
		if (found != nil) != (len(best) > 0) {
			t.Errorf("seed %d: found a plan: %v, by enumeration there are %d", seed, found != nil, len(best))
		}
		if found != nil {
			possible++
		} else {
			none++
		}
	}
	if possible < 5 || none < 5 {
		t.Errorf("only %d carts with a plan, %d without", possible, none)
	}
}
