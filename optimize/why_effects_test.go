package optimize_test

import (
	"context"
	"maps"
	"math"
	"slices"
	"testing"

	"cartwright/optimize/question"
	"cartwright/optimize/why"
)

// The random cases of what changes do, and of limits that contradict each other.
const (
	casesOfEffects   = 40
	casesOfConflicts = 40
)

// steps are what was asked for: one more hour, ten more kilograms, a hundred more of budget.
var steps = map[string]float64{"autonomy": 1, "mass": 10, "budget": 100}

// What a change of one limit is said to do to the cheapest plan is what an enumeration of all plans finds
// with that limit.
func TestEffects(t *testing.T) {
	told := map[string]int{}
	for cases, seed := 0, uint64(9e6); cases < casesOfEffects; seed++ {
		got, err := why.Explain(context.Background(), randomProblem(seed))
		if err != nil {
			t.Errorf("seed %d: %v", seed, err)
			continue
		}
		if got.Best == nil {
			continue
		}
		cases++
		for _, e := range got.Effects {
			if step := steps[e.Limit]; step != 0 && math.Abs(math.Abs(e.To-e.From)-step) > near {
				t.Errorf("seed %d, %s %g to %g: want a step of %g", seed, e.Limit, e.From, e.To, step)
			}
			p := randomProblem(seed)
			k := knobs(p.Scenario)[e.Limit]
			k.set(p.Scenario, e.To+k.rounding)
			want := math.Inf(1)
			for _, c := range enumerate(t, p, question.ByCost) {
				want = min(want, c.cost)
			}
			switch {
			case e.Plan == nil:
				if told[e.Limit]++; !math.IsInf(want, 1) {
					t.Errorf("seed %d, %s %g to %g: no plan; the enumeration has one for %g cents", seed, e.Limit, e.From, e.To, want)
				}
			case math.Abs(float64(e.Plan.Cost)-want) > roundingCents(e.Plan):
				t.Errorf("seed %d, %s %g to %g: costs %s; in the enumeration %g cents", seed, e.Limit, e.From, e.To, e.Plan.Cost, want)
			case math.Abs(e.Saves-(got.Best.Cost-e.Plan.Cost).Units()) > hair:
				t.Errorf("seed %d, %s %g to %g: saves %g, from %s to %s", seed, e.Limit, e.From, e.To, e.Saves, got.Best.Cost, e.Plan.Cost)
			case e.Looser && e.Saves < 0 || !e.Looser && e.Saves > 0:
				t.Errorf("seed %d, %s %g to %g: saves %g, looser %v", seed, e.Limit, e.From, e.To, e.Saves, e.Looser)
			case e.Saves != 0:
				told[e.Limit]++
			}
		}
	}
	t.Logf("changes that change something: %v", told)
	if len(told) < 4 {
		t.Errorf("only %v change something: too few to tell much", slices.Sorted(maps.Keys(told)))
	}
}

// Where no plan is possible, the limits that are said to contradict each other do so without any other, do
// not if any one of them is left out, and are as few as can be; and each way out leads to a plan of the cost
// that is told.
func TestConflicts(t *testing.T) {
	sizes := map[int]int{}
	for cases, seed := 0, uint64(9.5e6); cases < casesOfConflicts; seed++ {
		problem := func() question.Problem { p, _ := tightened(seed); return p }
		if seed%2 == 0 {
			problem = func() question.Problem { return randomProblem(seed) }
		}
		got, err := why.Explain(context.Background(), problem())
		if err != nil {
			t.Errorf("seed %d: %v", seed, err)
			continue
		}
		if got.Best != nil || len(got.Conflict) == 0 {
			continue
		}
		cases++
		sizes[len(got.Conflict)]++
		c := conflict{t, problem}
		var names []string
		for _, l := range got.Conflict {
			names = append(names, l.Name)
		}
		if c.possible(names) {
			t.Errorf("seed %d: %q can be kept together", seed, names)
		}
		for i := range names {
			if fewer := slices.Delete(slices.Clone(names), i, i+1); !c.possible(fewer) {
				t.Errorf("seed %d: of %q, %q cannot be kept either", seed, names, fewer)
			}
		}
		if len(names) > 1 {
			for _, name := range slices.Sorted(maps.Keys(knobs(problem().Scenario))) {
				if !c.possible([]string{name}) {
					t.Errorf("seed %d: %q contradict each other, but %q alone cannot be kept", seed, names, name)
				}
			}
		}
		for _, out := range got.WaysOut {
			p := problem()
			for _, l := range out.Change.Limits {
				k := knobs(p.Scenario)[l.Name]
				k.set(p.Scenario, l.To+k.rounding)
			}
			want := math.Inf(1)
			for _, one := range enumerate(t, p, question.ByCost) {
				want = min(want, one.cost)
			}
			if math.Abs(float64(out.Plan.Cost)-want) > roundingCents(out.Plan) {
				t.Errorf("seed %d, way out %v: costs %s; in the enumeration %g cents", seed, out.Change.Limits, out.Plan.Cost, want)
			}
		}
	}
	t.Logf("conflicts by how many limits: %v", sizes)
	if len(sizes) < 2 {
		t.Error("all conflicts are of one size: too few to tell much")
	}
}

// conflict is a problem of which some limits are kept and all others left open.
type conflict struct {
	t       *testing.T
	problem func() question.Problem
}

// possible reports whether there is a plan where only some limits are kept.
func (c conflict) possible(kept []string) bool {
	c.t.Helper()
	p := c.problem()
	for name, k := range knobs(p.Scenario) {
		if !slices.Contains(kept, name) {
			k.set(p.Scenario, k.open)
		}
	}
	return len(enumerate(c.t, p, question.ByCost)) > 0
}
