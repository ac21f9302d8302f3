package audit

import (
	"encoding/json"
	"slices"
	"sync"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// cart is a scenario, its catalogue and a plan that passes.
type cart struct {
	s *scenarios.Scenario
	c *catalog.Catalog
	p *plan.Plan
}

// auditor returns an auditor of the cart. What is broken of a cart is seldom its sun, and its light takes most
// of an audit's time.
func (k *cart) auditor() *Auditor {
	x := For(k.s, k.c)
	if k.s.Sun != nil && *k.s.Sun == fairSun {
		x.light = fairLight
	}
	return x
}

var (
	fairSun   = *fairScenario().Sun
	fairLight = sync.OnceValue(func() *light { return lightOf(&fairSun) })
)

func newBarn() *cart { s, c, p := barn(); return &cart{s, c, p} }

func newFair() *cart { s, c, p := fair(); return &cart{s, c, p} }

// failed returns the names of the checks that failed.
func failed(a plan.Audit) (names []string) {
	for _, c := range a.Checks {
		if !c.Passed {
			names = append(names, c.Name)
		}
	}
	return names
}

func TestGoodPlansPass(t *testing.T) {
	for name, fresh := range carts {
		t.Run(name, func(t *testing.T) {
			k := fresh()
			a := k.auditor().Plan(k.p)
			for _, c := range a.Checks {
				if !c.Passed {
					t.Errorf("%s: value %v, limit %v %s: %s", c.Name, c.Value, c.Limit, c.Unit, c.Detail)
				}
				if c.Source == "" {
					t.Errorf("%s names no source", c.Name)
				}
			}
			if a.Passed != (len(failed(a)) == 0) {
				t.Errorf("passed is %t with %d failed checks", a.Passed, len(failed(a)))
			}
		})
	}
}

// Figures may be rounded to six significant digits on the way through JSON, money never.
func TestRoundedPlanPasses(t *testing.T) {
	for name, k := range map[string]*cart{"nec": newBarn(), "iec": newFair()} {
		t.Run(name, func(t *testing.T) {
			text, err := json.Marshal(k.p)
			if err != nil {
				t.Fatal(err)
			}
			var back plan.Plan
			if err := json.Unmarshal(text, &back); err != nil {
				t.Fatal(err)
			}
			eachNumber(&back, func(path string, n number) {
				if n.float() {
					n.set(sixSignificant(n.get()))
				}
			})
			if a := k.auditor().Plan(&back); !a.Passed {
				t.Errorf("failed: %q", failed(a))
			}
		})
	}
}

func TestRulesAreDistinctAndComplete(t *testing.T) {
	var names []string
	for _, r := range Rules() {
		if slices.Contains(names, r.Name) {
			t.Errorf("two rules are named %q", r.Name)
		}
		if r.Holds == "" {
			t.Errorf("rule %q does not say what must hold", r.Name)
		}
		names = append(names, r.Name)
	}
	for _, k := range []*cart{newBarn(), newFair()} {
		at := -1
		for _, c := range k.auditor().Plan(k.p).Checks {
			i := slices.Index(names, c.Name)
			if i <= at {
				t.Errorf("check %q is told out of the order of Rules, or is none of them", c.Name)
			}
			at = i
		}
	}
}

// No module stands in a string where even one is above the bus: a string of none is not right either.
func TestNoModuleInSeries(t *testing.T) {
	k := newFair()
	k.battery("block").NominalV = 50
	k.p.Core.Batteries[0].Series = 0
	if got := failed(k.auditor().Plan(k.p)); !slices.Contains(got, ruleSeries) || !slices.Contains(got, ruleBusCurrent) {
		t.Errorf("failed checks %q lack %q or %q", got, ruleSeries, ruleBusCurrent)
	}
}
