package optimize_test

import (
	"context"
	"errors"
	"reflect"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/bench"
	"cartwright/optimize/next"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// What next knows where it is stopped.
const (
	nothingKnown   = iota
	targetFound    // not proved
	targetKnown    // proved, without an order of purchases
	orderFound     // not proved
	orderKnown     // the whole answer
	kindsOfAnswers // how many there are
)

// Wherever next is stopped, it says no more than is so: the target is never cheaper than the cheapest, nor reached
// sooner, an order of purchases can be paid for and every cart on the way is audited, and only the whole answer calls
// itself so.
func TestNextStopped(t *testing.T) {
	var all [kindsOfAnswers]int
	for _, demo := range []string{"star-party", "cider-shed"} {
		s, err := scenarios.Demo(demo)
		if err != nil {
			t.Fatal(err)
		}
		p := question.Problem{Scenario: s, Catalog: catalog.Embedded()}
		whole, err := next.Find(context.Background(), p, next.Options{})
		if err != nil || !whole.Complete {
			t.Fatalf("%s, unhurried: complete %v, %v", demo, whole.Complete, err)
		}
		known := nothingKnown
		for asked := 0; asked < 1<<24 && known != orderKnown; asked += asked/6 + 1 {
			ctx := &patience{Context: context.Background()}
			ctx.left.Store(int64(asked))
			got, err := next.Find(ctx, p, next.Options{})
			if err != nil && !errors.Is(err, question.ErrUnknown) {
				t.Fatalf("%s, stopped after %d: %v", demo, asked, err)
			}
			known = nothingKnown
			if err == nil {
				known = knownOf(t, p, got, whole)
			}
			all[known]++
			if t.Failed() {
				t.Fatalf("%s, stopped after %d", demo, asked)
			}
		}
	}
	for known, n := range all {
		if n == 0 {
			t.Errorf("%d answers of kind %d, of %v", n, known, all)
		}
	}
}

// Also where all can be bought now, and where the money is never there, a target that is not proved is no whole answer.
func TestNextStoppedAtItsTarget(t *testing.T) {
	for name, savings := range map[string]scenarios.Savings{"now": {Now: 1e8}, "never": {}} {
		s, err := scenarios.Demo("star-party")
		if err != nil {
			t.Fatal(err)
		}
		s.Savings = &savings
		p := question.Problem{Scenario: s, Catalog: catalog.Embedded()}
		found, whole := 0, false
		for asked := 0; !whole; asked += asked/8 + 1 {
			ctx := &patience{Context: context.Background()}
			ctx.left.Store(int64(asked))
			got, err := next.Find(ctx, p, next.Options{})
			if errors.Is(err, question.ErrUnknown) {
				continue
			}
			if err != nil {
				t.Fatal(err)
			}
			if whole = got.Complete; whole != got.Target.Proven || got.Never != (name == "never") || len(got.Months) != map[string]int{"now": 1}[name] {
				t.Errorf("%s, stopped after %d: complete %v, target proved %v, never %v, %d months", name, asked, whole, got.Target.Proven, got.Never, len(got.Months))
			}
			if !got.Target.Proven {
				found++
			}
		}
		if found == 0 {
			t.Errorf("%s: never stopped at a target that is not proved", name)
		}
	}
}

// knownOf checks an answer against the whole one and returns what is known.
func knownOf(t *testing.T, p question.Problem, got, whole *next.Sequence) int {
	t.Helper()
	if got.Complete {
		if !reflect.DeepEqual(got, whole) {
			t.Errorf("called complete: %+v, want %+v", got, whole)
		}
		return orderKnown
	}
	switch {
	case got.Target == nil || !got.Target.Audit.Passed || got.Bar != nil:
		t.Errorf("not complete: target %v, bar %v", got.Target, got.Bar)
	case got.Target.Proven && (got.Target.Cost != whole.Target.Cost || got.Reached != whole.Reached):
		t.Errorf("proved: %s in month %d, want %s in %d", got.Target.Cost, got.Reached, whole.Target.Cost, whole.Reached)
	case got.Target.Cost < whole.Target.Cost || got.Reached < whole.Reached:
		t.Errorf("found: %s in month %d, but the least is %s in %d", got.Target.Cost, got.Reached, whole.Target.Cost, whole.Reached)
	}
	if len(got.Months) == 0 {
		if got.EnergyOnTheWay != 0 {
			t.Errorf("%g kWh on the way, and no order", got.EnergyOnTheWay)
		}
		if got.Target.Proven {
			return targetKnown
		}
		return targetFound
	}
	checkMonths(t, 0, p, got)
	energy := 0.0
	for _, m := range got.Months[:len(got.Months)-1] {
		if m.Cart == nil {
			continue
		}
		energy += m.Cart.UsableKWh
		if len(m.Cart.Audit.Checks) == 0 {
			t.Errorf("month %d: the cart is not audited", m.Month)
		}
		for _, c := range m.Cart.Audit.Checks {
			if !c.Passed && !bench.Short(c.Name) {
				t.Errorf("month %d: %s fails", m.Month, c.Name)
			}
		}
	}
	if last := got.Months[got.Reached]; len(got.Months) != got.Reached+1 || last.Cart != got.Target {
		t.Errorf("%d months to month %d, in which %v stands", len(got.Months), got.Reached, last.Cart)
	}
	if energy != got.EnergyOnTheWay || got.Target.Proven && (energy == 0 || energy > whole.EnergyOnTheWay+1e-9) {
		t.Errorf("%g kWh on the way, told %g; the most there is is %g", energy, got.EnergyOnTheWay, whole.EnergyOnTheWay)
	}
	return orderFound
}
