package optimize_test

import (
	"bytes"
	"context"
	"encoding/json"
	"math"
	"runtime"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/doubt"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// doubted returns what becomes of a problem's plans.
func doubted(t *testing.T, p question.Problem, o doubt.Options) *doubt.Doubted {
	t.Helper()
	d, err := doubt.Run(context.Background(), p, o, nil)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// uncertain returns an embedded scenario with a catalogue of its own, of which the ranges may be changed.
func uncertain(t *testing.T, name string) question.Problem {
	t.Helper()
	s, err := scenarios.Demo(name)
	if err != nil {
		t.Fatal(err)
	}
	return question.Problem{Scenario: s, Catalog: catalog.Embedded().Clone()}
}

// certain takes the ranges of prices out of a catalogue.
func certain(c *catalog.Catalog) {
	for _, e := range c.All() {
		e.PriceLow, e.PriceHigh = 0, 0
	}
	for i := range c.Cables {
		c.Cables[i].LowCentsPerM, c.Cables[i].HighCentsPerM = 0, 0
	}
}

// Without any doubt the first plan is always the cheapest, none fails, and every cost is the ranked one.
func TestNoDoubt(t *testing.T) {
	for _, name := range scenarios.DemoNames() {
		t.Run(name, func(t *testing.T) {
			p := uncertain(t, name)
			certain(p.Catalog)
			d := doubted(t, p, doubt.Options{Plans: 5, Draws: 20, Seed: 1})
			if len(d.Plans) != 5 || d.Robust != 1 || d.FirstFails != 0 || d.NoneServes != 0 {
				t.Errorf("%d plans, robust is %d, first fails in %g, none serves in %g; want 5, 1, 0, 0", len(d.Plans), d.Robust, d.FirstFails, d.NoneServes)
			}
			if want := (doubt.Regret{Draws: 20}); d.Regret == nil || *d.Regret != want {
				t.Errorf("regret %+v, want %+v", d.Regret, want)
			}
			for i, one := range d.Plans {
				if one.Feasible != 1 || len(one.Breaks) != 0 || (one.Cheapest == 1) != (i == 0) {
					t.Errorf("plan %d: feasible in %g, cheapest in %g, breaks %v", one.Rank, one.Feasible, one.Cheapest, one.Breaks)
				}
				if one.MeanCost != one.Cost.Units() || one.Cost95 != one.Cost || one.Greatest != one.Cost {
					t.Errorf("plan %d: costs %g, %s, %s; want %s always", one.Rank, one.MeanCost, one.Cost95, one.Greatest, one.Cost)
				}
			}
		})
	}
}

// twoPlans is the small problem with a second battery that costs 20 more, whatever happens, while the price
// of the first is off by up to 100. Tax is 10 %. One string of either runs the 100 W lamp for an autonomy at
// which the loads may grow by 5 %.
func twoPlans() question.Problem {
	p := small()
	b := &p.Catalog.Batteries[0]
	second := *b
	b.PriceLow, b.PriceHigh = 90000, 110000
	second.ID, second.Price = "slate", 102000
	p.Catalog.Batteries = append(p.Catalog.Batteries, second)
	// Of the bus's 100 W * 1.05 / 0.9 + 10 W the 4050 Wh of one string last so long.
	p.Scenario.AutonomyH = 4050 / (100*1.05/0.9 + 10)
	return p
}

// The shares and amounts of two plans can be worked out. With x the part by which the first battery's price
// is off, triangular on -0.1..0.1, the density is 100 (0.1 - x) for x > 0:
//
//	the first is cheapest             P(x <= 0.02)  = 1 - 0.08^2 / 0.02             = 0.68
//	mean regret, tax included         1100 * integral from 0.02 to 0.1 of (x - 0.02) 100 (0.1 - x) dx
//	                                                = 1100 * 100 * 0.08^3 / 6       = 9.3867
//	95 % of it is not above r where   (0.08 - r/1100)^2 / 0.02 = 0.05               = 53.215
//	at the most                       1100 * 0.08                                   = 88
//
// With y the part by which the load is off, triangular on -0.15..0.15:
//
//	both stay feasible                P(y <= 0.05)  = 1 - 0.1^2 / (0.3 * 0.15)      = 0.77778
func TestDoubtConverges(t *testing.T) {
	const draws = 20000
	d := doubted(t, twoPlans(), doubt.Options{Plans: 2, Draws: draws, Seed: 7, Loads: 0.15})
	first, second := d.Plans[0], d.Plans[1]
	// Five standard errors of a share at its largest, sqrt(0.25 / draws).
	share := 5 * math.Sqrt(0.25/draws)
	for _, f := range []struct {
		name            string
		got, want, room float64
	}{
		{"first feasible", first.Feasible, 7.0 / 9, share},
		{"second feasible", second.Feasible, 7.0 / 9, share},
		{"first cheapest", first.Cheapest, 0.68 * 7 / 9, share},
		{"second cheapest", second.Cheapest, 0.32 * 7 / 9, share},
		{"none serves", d.NoneServes, 2.0 / 9, share},
		{"draws with a regret", float64(d.Regret.Draws), draws * 7.0 / 9, share * draws},
		// The regret's standard deviation is 17.7 (the integral with the square, 1100^2 * 100 * 0.08^4 / 12
		// = 413, less the mean's square), so five standard errors are 0.71.
		{"mean regret", d.Regret.Mean, 9.3867, 0.71},
		// Where 5 % are left the density is 100 (0.1 - x) / 1100 with x = 0.0684, so that a quantile off by
		// five standard errors of its share, 0.0087, is off by 3.
		{"regret not exceeded in 95 %", d.Regret.At95.Units(), 53.215, 3},
		// The largest of 15500 lies 1100 * sqrt(0.02 / 15500) = 1.2 below the end, give or take as much.
		{"most regret", d.Regret.Most.Units(), 88 - 3, 3},
		{"mean cost of the first", first.MeanCost, first.Cost.Units(), 5 * 1100 * 0.0408 / math.Sqrt(draws)},
		{"cost of the second", second.MeanCost, second.Cost.Units(), 1e-9 * second.MeanCost},
	} {
		if math.Abs(f.got-f.want) > f.room {
			t.Errorf("%s: got %g, want %g within %g", f.name, f.got, f.want, f.room)
		}
	}
	if want := (doubt.Break{Limit: plan.LimitAutonomy, Share: 1 - first.Feasible}); len(first.Breaks) != 1 || first.Breaks[0].Limit != want.Limit || math.Abs(first.Breaks[0].Share-want.Share) > 1e-12 {
		t.Errorf("breaks %+v, want %+v", first.Breaks, want)
	}
	if d.Robust != 2 {
		t.Errorf("robust is plan %d, want 2: equally often feasible, never dearer", d.Robust)
	}
}

// The same seed gives the same bytes on one processor and on several; another seed gives others; and a
// plan fares the same whatever other candidates there are.
func TestDoubtRepeats(t *testing.T) {
	o := doubt.Options{Plans: 4, Draws: 500, Seed: 3, Prices: 0.1, Loads: 0.15}
	text := func(o doubt.Options, processors int) []byte {
		defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(processors))
		d := *doubted(t, uncertain(t, "cider-shed"), o)
		d.Ranking = nil // its seconds are never the same
		out, err := json.Marshal(d)
		if err != nil {
			t.Fatal(err)
		}
		return out
	}
	one := text(o, 1)
	if two := text(o, 2); !bytes.Equal(one, two) {
		t.Errorf("one processor says\n%s\ntwo say\n%s", one, two)
	}
	other := o
	other.Seed = 4
	if bytes.Equal(one, text(other, 2)) {
		t.Error("another seed gives the same figures")
	}
	fewer := o
	fewer.Plans = 2
	many, few := doubted(t, uncertain(t, "cider-shed"), o), doubted(t, uncertain(t, "cider-shed"), fewer)
	for i := range few.Plans {
		a, b := many.Plans[i], few.Plans[i]
		if a.Feasible != b.Feasible || a.MeanCost != b.MeanCost || a.Greatest != b.Greatest {
			t.Errorf("plan %d among four: %+v; among two: %+v", i+1, a, b)
		}
	}
}

// A range that the catalogue states takes the place of the usual one, for offers, cables and ends too.
func TestStatedRanges(t *testing.T) {
	p := twoPlans()
	p.Scenario.AutonomyH = 4
	p.Catalog.Offers = []catalog.Offer{{PartID: "slab", Vendor: "a", Price: 95000, MinQty: 1}}
	for _, e := range p.Catalog.All() {
		if e.ID != "slab" {
			e.PriceLow, e.PriceHigh = e.Price, e.Price
		}
	}
	k := &p.Catalog.Cables[0]
	k.LowCentsPerM, k.HighCentsPerM = k.CentsPerM, 2*k.CentsPerM
	d := doubted(t, p, doubt.Options{Plans: 1, Draws: 4000, Seed: 1, Prices: 1})
	one := d.Plans[0]
	// The slab is 950 at the offer, off by a tenth either way; 2 m of rope and 4 ends are 28 and may be 56.
	most := one.Cost.Units() + 1.1*(95+28)
	if got := one.Greatest.Units(); got > most+0.02 || got < most-20 {
		t.Errorf("costs up to %g, want a little below %g", got, most)
	}
	// The means of triangles: 1 for the slab, (1 + 1 + 2) / 3 for the rope.
	if want := one.Cost.Units() + 1.1*28/3; math.Abs(one.MeanCost-want) > 4 {
		t.Errorf("costs %g in the mean, want %g", one.MeanCost, want)
	}
}

// Options that make no sense are refused before anything is ranked.
func TestDoubtOptions(t *testing.T) {
	for _, c := range []struct {
		name string
		o    doubt.Options
		want string
	}{
		{"no plans", doubt.Options{Draws: 1}, "0 plans; ask for 1 or more"},
		{"no draws", doubt.Options{Plans: 1}, "0 draws; ask for 1 to 1000000"},
		{"too many", doubt.Options{Plans: 1, Draws: 1000001}, "1000001 draws; ask for 1 to 1000000"},
		{"too many together", doubt.Options{Plans: 21, Draws: 1000000}, "1000000 draws of 21 plans; ask for at most 20000000 of all plans together"},
		{"prices beyond all", doubt.Options{Plans: 1, Draws: 1, Prices: 1.5}, "prices off by a share of 1.5; give 0 to 1"},
		{"loads not a number", doubt.Options{Plans: 1, Draws: 1, Loads: math.NaN()}, "loads off by a share of NaN; give 0 to 1"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if _, err := doubt.Run(context.Background(), small(), c.o, nil); err == nil || err.Error() != c.want {
				t.Errorf("error %v, want %s", err, c.want)
			}
		})
	}
}

// Where no plan is possible there is nothing to doubt, and the ranking says why.
func TestDoubtNothing(t *testing.T) {
	p := small()
	p.Scenario.AutonomyH = 700
	d := doubted(t, p, doubt.Default())
	if len(d.Plans) != 0 || d.Ranking.Solver.Status != question.Infeasible || len(d.Ranking.Changes) == 0 {
		t.Errorf("got %+v of a ranking that is %s", d, d.Ranking.Solver.Status)
	}
}
