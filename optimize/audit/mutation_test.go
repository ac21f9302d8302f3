package audit

import (
	"slices"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/plan"
)

// mutation breaks a good plan in one way, and names every check that must find it: no more, no less. It
// breaks what the cart is made of or what is asked of it, and what the plan states follows; or it breaks
// only what the plan states.
type mutation struct {
	name   string
	fresh  func() *cart
	do     func(k *cart)
	want   []string
	stated bool // only what the plan states is broken
}

// The ways to find a part of a cart that a mutation changes.

func (k *cart) line(part, kind string) *plan.Line {
	for i := range k.p.Bill {
		if l := &k.p.Bill[i]; l.Part == part && l.Kind == kind {
			return l
		}
	}
	panic("no line " + part)
}

func (k *cart) run(kind, of string) *plan.Run {
	for i := range k.p.Runs {
		if r := &k.p.Runs[i]; r.Run == kind && (r.Battery == of || r.Name == of) {
			return r
		}
	}
	panic("no run " + kind)
}

func (k *cart) battery(id string) *catalog.Battery { return stockOf(k.c).batteries[id] }

func (k *cart) inverter(id string) *catalog.Inverter { return stockOf(k.c).inverters[id] }

func (k *cart) cable(id string) *catalog.Cable { return stockOf(k.c).cables[id] }

func (k *cart) device(id string) *catalog.Device { return stockOf(k.c).devices[id] }

func (k *cart) part(id string) *catalog.Part { return stockOf(k.c).parts[id] }

// drop takes a part off the bill.
func (k *cart) drop(part string) {
	k.p.Bill = slices.DeleteFunc(k.p.Bill, func(l plan.Line) bool { return l.Part == part })
}

// mutations is every way to break a plan that is tried.
var mutations = slices.Concat(onceMutations, pathMutations(), twins(onceMutations), loneMutations)

// onceMutations are those written for one cart; its twin is broken in the same way.
var onceMutations = slices.Concat(coreMutations, circuitMutations, supplyMutations, sunMutations, yearMutations, oddPathMutations,
	cartMutations, needMutations, billMutations, moneyMutations, budgetMutations)

func TestMutations(t *testing.T) {
	for _, m := range slices.Concat(mutations, harmless, harmlessCircuits, harmlessSun, harmlessMoney, twins(harmless), twins(harmlessCircuits), twins(harmlessSun), twins(harmlessMoney)) {
		t.Run(m.name, func(t *testing.T) {
			k := m.fresh()
			m.do(k)
			if !m.stated {
				k.restate()
			}
			got := failed(k.auditor().Plan(k.p))
			want := slices.Clone(m.want)
			slices.SortFunc(want, func(a, b string) int { return placeOf(a) - placeOf(b) })
			if !slices.Equal(got, want) {
				t.Errorf("failed checks\n got %q\nwant %q", got, want)
			}
		})
	}
}

// Every check there is has a mutation that it must find.
func TestEveryRuleHasAMutation(t *testing.T) {
	found := map[string]bool{}
	for _, m := range mutations {
		for _, name := range m.want {
			found[name] = true
		}
	}
	for _, r := range Rules() {
		if !found[r.Name] {
			t.Errorf("no mutation makes %q fail", r.Name)
		}
		delete(found, r.Name)
	}
	for name := range found {
		t.Errorf("a mutation wants %q, which is no rule", name)
	}
}
