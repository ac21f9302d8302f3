package optimize_test

import (
	"context"
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/energy"
	"cartwright/optimize/frontier"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
)

// casesOfFrontier are the random cases of each axis that are compared with an enumeration.
const casesOfFrontier = 40

// Every step of the staircase of autonomy is that of an enumeration of all cores, and there is no other.
func TestBruteForceFrontierOfAutonomy(t *testing.T) {
	steps := 0
	for seed := uint64(5e6); seed < 5e6+casesOfFrontier; seed++ {
		p := randomProblem(seed)
		got, err := frontier.Find(context.Background(), p, frontier.AxisAutonomy, nil)
		if err != nil {
			t.Errorf("seed %d: %v", seed, err)
			continue
		}
		steps += len(got.Steps)
		points := servedPoints(t, p)
		// Beyond a step's own autonomy its plan no longer serves; at it, it does.
		const beyond, within = 3e-6, -1e-7 // hours: more and less than the engine's own step of 1e-6
		probes := []float64{1.0 / 60}
		for _, s := range got.Steps {
			probes = append(probes, s.At+within, s.At+beyond)
		}
		for _, q := range points {
			probes = append(probes, q.at+within, q.at+beyond)
		}
		for _, h := range probes {
			if h < 1.0/60 || h > 31*24 { // what the engine looks at
				continue
			}
			want := math.Inf(1)
			for _, q := range points {
				if q.at >= h {
					want = min(want, q.cost)
				}
			}
			have, by := math.Inf(1), &plan.Plan{}
			for i := range got.Steps {
				if s := &got.Steps[i]; s.At >= h {
					have, by = float64(s.Plan.Cost), &s.Plan
					break
				}
			}
			if have != want && !(math.Abs(have-want) <= roundingCents(by)) {
				t.Errorf("seed %d: %.7f h cost %g cents in the staircase, %g in the enumeration", seed, h, have, want)
				break
			}
		}
		checkStairs(t, seed, got)
	}
	if steps < 2*casesOfFrontier {
		t.Errorf("%d steps in %d cases are too few to tell much", steps, casesOfFrontier)
	}
}

// point is a value of an axis that some core or plan reaches, and the least cents for it.
type point struct{ at, cost float64 }

// servedPoints returns, for every core that can be built at all, the longest autonomy it serves and the
// least it costs.
func servedPoints(t *testing.T, p question.Problem) []point {
	t.Helper()
	s := *p.Scenario
	s.AutonomyH, s.Limits.Budget = 0, math.MaxInt64
	free := s
	if s.Recharge != nil {
		slow := *s.Recharge
		slow.WithinH = 1e9
		free.Recharge = &slow
	}
	e := &enumeration{s: &s, c: p.Catalog, house: newHouse(t, &s)}
	var points []point
	for _, core := range enumerate(t, question.Problem{Scenario: &free, Catalog: p.Catalog}, question.ByCost) {
		inv := &p.Catalog.Inverters[core.inverter]
		if s.Recharge != nil && inv.ChargerA == 0 {
			continue
		}
		points = append(points, point{servedHours(e, &core, inv), core.cost})
	}
	return points
}

// servedHours bisects for the longest autonomy whose energy the core holds, and for which charger and
// strings can put it back in time.
func servedHours(e *enumeration, core *total, inv *catalog.Inverter) float64 {
	usable := e.usableWh(core.batteries)
	serves := func(hours float64) bool {
		want := e.house.windowWh(inv.Efficiency, float64(core.units)*inv.IdleW, hours)
		if want > usable {
			return false
		}
		return e.recharges(core.batteries, inv, core.units, want)
	}
	low, high := 0.0, float64(energy.MaxAutonomyH)
	for high-low > 1e-9 {
		if middle := (low + high) / 2; serves(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}

// checkStairs checks what holds for every staircase.
func checkStairs(t *testing.T, seed uint64, f *frontier.Staircase) {
	t.Helper()
	if !f.Complete {
		t.Errorf("seed %d: the staircase is not complete", seed)
	}
	knees := 0
	for i := range f.Steps {
		s := &f.Steps[i]
		if s.Knee {
			knees++
		}
		if !s.Plan.Audit.Passed {
			t.Errorf("seed %d, step %d: the plan was not audited", seed, i+1)
		}
		if i == 0 {
			continue
		}
		before := &f.Steps[i-1]
		if s.Cost <= before.Cost || (s.At > before.At) != (f.Axis != frontier.AxisMass) {
			t.Errorf("seed %d: from step %d to %d: %g to %g costs %g and %g", seed, i, i+1, before.At, s.At, before.Cost, s.Cost)
		}
	}
	if knees > 1 {
		t.Errorf("seed %d: %d knees", seed, knees)
	}
}

// The knee is the step that lies farthest below the straight line from the first to the last.
func TestKneeOfDemo(t *testing.T) {
	got, err := frontier.Find(context.Background(), demo(t, "lantern-market"), frontier.AxisAutonomy, nil)
	if err != nil {
		t.Fatal(err)
	}
	knee, farthest := -1, 0.0
	first, last := got.Steps[0], got.Steps[len(got.Steps)-1]
	for i, s := range got.Steps {
		below := first.Cost + (last.Cost-first.Cost)*(s.At-first.At)/(last.At-first.At) - s.Cost
		if below > farthest {
			knee, farthest = i, below
		}
	}
	for i, s := range got.Steps {
		if s.Knee != (i == knee) {
			t.Errorf("step %d of %d at %g h: knee %v, want %v", i+1, len(got.Steps), s.At, s.Knee, i == knee)
		}
	}
}
