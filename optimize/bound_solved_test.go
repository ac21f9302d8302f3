package optimize_test

import (
	"testing"

	"cartwright/optimize/bench"
	"cartwright/optimize/bound"
	"cartwright/optimize/milp"
	"cartwright/optimize/model"
	"cartwright/optimize/question"
)

// boundCases is how many random problems have their bounds held against solved programs; mostStrings how many strings
// their cores have at most.
const (
	boundCases  = 25
	mostStrings = 3
)

// What the ranking rests on besides certificates: no bound of a core is above what its program, solved and proved,
// costs or weighs; no bound of all cores with at least some strings is above that of a core with one string more; and
// what a bound calls hopeless has no plan.
func TestBoundsAgainstSolvedPrograms(t *testing.T) {
	solved, hopeless := 0, 0
	for seed := uint64(14e6); seed < 14e6+boundCases*uint64(*times); seed++ {
		b, err := bench.Lay(t.Context(), randomProblem(seed), "", &bench.Before{})
		if err != nil {
			t.Fatal(err)
		}
		if len(b.Reasons) > 0 {
			continue
		}
		h := held{t: t, seed: seed, b: b, o: bound.New(b)}
		for v := range b.Supplies {
			for g := range b.Groups {
				if b.MayServe(&b.Supplies[v]) {
					h.grow(bench.Core{Supply: v, Group: g}, 0)
				}
			}
		}
		solved, hopeless = solved+h.solved, hopeless+h.hopeless
	}
	t.Logf("%d programs solved, %d of them of cores called hopeless", solved, hopeless)
	if solved < 100 || hopeless < 10 {
		t.Error("too few to tell much")
	}
}

// held holds the bounds of one problem.
type held struct {
	t                *testing.T
	seed             uint64
	b                *bench.Bench
	o                *bound.Bounds
	solved, hopeless int
}

// grow looks at all cores of at least the strings of c, further ones only of the members from last on.
func (h *held) grow(c bench.Core, last int) {
	if c.Total() >= mostStrings {
		return
	}
	for j := last; j < len(h.b.Groups[c.Group]); j++ {
		if c.Count(j) >= h.b.Stacks[h.b.Groups[c.Group][j]].Most {
			continue
		}
		more := c.With(j)
		h.core(&c, &more)
		h.grow(more, j)
	}
}

// core holds the bounds of a core, and of those with at least the strings of less, against the solved program.
func (h *held) core(less, c *bench.Core) {
	f, wider := h.o.Of(c), h.o.Of(less)
	if !h.o.Serves(c, f) || !h.b.Keeps(c) {
		return
	}
	for by, bounds := range map[question.By][2]float64{
		question.ByCost: {f.Cents - h.b.RoundingCents, wider.OpenCents - h.b.RoundingCents},
		question.ByMass: {f.Kg, wider.Kg},
	} {
		a := model.Solve(h.t.Context(), h.b, c, model.Ask{By: by})
		if a.Err != nil || a.Status != milp.Proved && a.Status != milp.Infeasible {
			h.t.Fatalf("seed %d, %v: %v %v", h.seed, c, a.Status, a.Err)
		}
		h.solved++
		if h.o.Hopeless(f) {
			h.hopeless++
		}
		if !a.Status.HasPoint() {
			continue
		}
		if h.o.Hopeless(f) {
			h.t.Errorf("seed %d, %v: called hopeless, and there is a plan of %v by %s", h.seed, c, a.First, by)
		}
		at, slack := a.First, 1e-6
		if by == question.ByCost {
			at, slack = 100*a.First, 1e-4
		}
		for _, least := range bounds {
			if least > at+slack {
				h.t.Errorf("seed %d, %v by %s: a bound of %v above the %v of its program", h.seed, c, by, least, at)
			}
		}
	}
}
