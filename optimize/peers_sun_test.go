package optimize_test

import (
	"context"
	"math"
	"slices"
	"testing"
	"time"

	"cartwright/catalog"
	"cartwright/optimize"
	"cartwright/optimize/energy/sun"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// fourWeeks returns the goat dairy's question for four weeks of a month, with twelve batteries, arrays of up to twelve
// modules and a share to be served in those weeks.
func fourWeeks(t testing.TB, month int, served float64) question.Problem {
	t.Helper()
	p := demo(t, "goat-dairy")
	p.Catalog = p.Catalog.Clone()
	const batteries, most, days = 12, 12, 28
	bus := p.Scenario.Bus
	var some []catalog.Battery
	for _, b := range p.Catalog.Batteries {
		if series := math.Round(bus.NominalV / b.NominalV); len(some) < batteries && int(series) <= b.MaxSeries &&
			series*b.NominalV >= bus.LowV && series*b.MaxV <= bus.HighV {
			some = append(some, b)
		}
	}
	p.Catalog.Batteries = some
	if len(some) != batteries {
		t.Fatalf("%d batteries fit", len(some))
	}
	s := *p.Scenario.Sun
	year := sun.Of(&s)
	first := 24 * 31 * month
	s.Hours = &scenarios.Weather{POA: year.Plane[first : first+24*days], TempC: year.AirC[first : first+24*days]}
	s.Most = most
	p.Scenario.Sun, p.Scenario.Limits.Served = &s, served
	thin(t, &p)
	return p
}

// thin leaves of cables, devices and all else that is support what some of the first plans have, of inverters and
// modules what they have most of: the year is what is to be compared.
func thin(t testing.TB, p *question.Problem) {
	t.Helper()
	keep := func(id string) bool { return id == "inv-230-3-48" || id == "inv-230-5-48" || id == "sun-300-used" }
	p.Catalog.Inverters = slices.DeleteFunc(p.Catalog.Inverters, func(x catalog.Inverter) bool { return !keep(x.ID) })
	for i := range p.Catalog.Inverters {
		p.Catalog.Inverters[i].MaxUnits = 1
	}
	p.Catalog.Solar = slices.DeleteFunc(p.Catalog.Solar, func(x catalog.Solar) bool { return !keep(x.ID) })
	r, err := optimize.Rank(context.Background(), *p, question.Options{Plans: 10})
	if err != nil {
		t.Fatal(err)
	}
	used := map[string]bool{}
	for i := range r.Plans {
		for _, l := range r.Plans[i].Bill {
			used[l.Part] = true
		}
	}
	c := p.Catalog
	c.Cables = slices.DeleteFunc(c.Cables, func(x catalog.Cable) bool { return !used[x.ID] })
	c.Devices = slices.DeleteFunc(c.Devices, func(x catalog.Device) bool { return !used[x.ID] })
	c.Busbars = slices.DeleteFunc(c.Busbars, func(x catalog.Busbar) bool { return !used[x.ID] })
	c.Casters = slices.DeleteFunc(c.Casters, func(x catalog.Casters) bool { return !used[x.ID] })
	c.Sundries = slices.DeleteFunc(c.Sundries, func(x catalog.Sundry) bool { return !used[x.ID] })
	c.Offers = nil
}

// The whole choice for four weeks as one program: what is charged, stored, given and short in each hour beside all that
// can be bought. Two other solvers find what the engine finds, which is at least 100 times as fast as cbc.
func TestFourWeeksAgainstOtherSolvers(t *testing.T) {
	var ours, cbc time.Duration
	for _, x := range []struct {
		month  int // from 0
		served float64
	}{{2, 0.95}, {5, 0.99}, {10, 0.7}} {
		p := fourWeeks(t, x.month, x.served)
		var best *plan.Plan
		least := time.Hour
		for range 15 { // the machine may be busy with something else
			began := time.Now()
			got, err := optimize.Rank(context.Background(), p, question.Options{Plans: 1})
			if err != nil || len(got.Plans) != 1 || got.Solver.Status != question.Optimal {
				t.Fatalf("%v, %+v", err, got)
			}
			least, best = min(least, time.Since(began)), &got.Plans[0]
		}
		ours += least
		model := writeModel(t, p, question.ByCost)
		for i := range peers {
			began := time.Now()
			want := peers[i].solve(t, model)
			took := time.Since(began)
			if peers[i].program == "cbc" {
				cbc += took
			}
			t.Logf("month %d, %.0f %%: %s in %v; %s has %.4f in %v", x.month+1, 100*x.served, best.Cost, least, peers[i].program, want, took)
			if math.Abs(best.Cost.Units()-want) > roundingCents(best)/100 {
				t.Errorf("month %d: %s finds %.4f, the engine %s", x.month+1, peers[i].program, want, best.Cost)
			}
		}
		if len(best.Core.Solar) == 0 || best.Year.Served > 1-1e-9 {
			t.Errorf("month %d: %s serves %g: the year decides nothing", x.month+1, core(best), best.Year.Served)
		}
	}
	if cbc < leastTimes*ours {
		t.Errorf("cbc takes %v, the engine %v: %.0f times as long, %d at the least", cbc, ours, float64(cbc)/float64(ours), leastTimes)
	}
	t.Logf("cbc takes %.0f times as long", float64(cbc)/float64(ours))
}

// Random problems with a week of sun, given to the other solvers in one piece: batteries of several round trips and
// charging limits on one bus, arrays, and a share to be served.
func TestSunnyWeeksAgainstOtherSolvers(t *testing.T) {
	const cases, days = 16, 7
	agreed, none := 0, 0
	for seed := uint64(17e6); seed < 17e6+cases; seed++ {
		p := sunnyProblem(t, seed)
		w := p.Scenario.Sun.Hours
		w.POA, w.TempC = w.POA[24*150:24*(150+days)], w.TempC[24*150:24*(150+days)]
		p.Scenario.Limits.Served = max(0.1, p.Scenario.Limits.Served)
		got, err := optimize.Rank(context.Background(), p, question.Options{Plans: 1})
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		if len(got.Plans) == 0 {
			none++
		}
		for i := range peers {
			want, possible, err := peers[i].ask(t, p, question.ByCost)
			switch {
			case err != nil:
				t.Errorf("seed %d: %v", seed, err)
			case possible != (len(got.Plans) > 0):
				t.Errorf("seed %d: %s says possible: %t; the engine has %d plans", seed, peers[i].program, possible, len(got.Plans))
			case possible:
				if best := &got.Plans[0]; math.Abs(best.Cost.Units()-want) > roundingCents(best)/100 {
					t.Errorf("seed %d: %s finds %.4f, the engine %s: %s", seed, peers[i].program, want, best.Cost, core(best))
				} else {
					agreed++
				}
			}
		}
	}
	t.Logf("%d optima agree; %d problems have no plan", agreed, none)
	if agreed < cases/2 || none == 0 {
		t.Error("not all kinds of answers occur")
	}
}
