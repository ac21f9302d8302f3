package next

import (
	"context"
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// patience is a context that is over once it was asked so often whether it is.
type patience struct {
	context.Context
	left int
}

func (p *patience) Err() error {
	if p.left--; p.left < 0 {
		return context.DeadlineExceeded
	}
	return nil
}

// Wherever the schedule is stopped, it goes on to an order that can be paid for, whose carts are audited and hold no more
// energy on the way than those of the best order.
func TestScheduleStopped(t *testing.T) {
	s, err := scenarios.Demo("star-party")
	if err != nil {
		t.Fatal(err)
	}
	s.Limits.Budget = math.MaxInt64 // as in Find
	p := question.Problem{Scenario: s, Catalog: catalog.Embedded()}
	q, err := Find(t.Context(), p, Options{})
	if err != nil {
		t.Fatal(err)
	}
	w := newWay(p, q.Target, saving{cash: s.Savings.Now + s.Sold, perMonth: s.Savings.PerMonth})
	if whole, err := w.findCarts(t.Context()); err != nil || !whole {
		t.Fatal(whole, err)
	}
	for asked := 0; ; asked++ {
		steps, whole := w.schedule(&patience{t.Context(), asked}, q.Reached)
		var got Sequence
		got.Target = q.Target
		if err := w.tell(&got, steps); err != nil {
			t.Fatalf("stopped after %d: %v", asked, err)
		}
		if whole {
			if got.EnergyOnTheWay != q.EnergyOnTheWay || asked < q.Reached {
				t.Errorf("whole after %d: %g kWh on the way, want %g", asked, got.EnergyOnTheWay, q.EnergyOnTheWay)
			}
			return
		}
		if len(got.Months) != q.Reached+1 || got.EnergyOnTheWay <= 0 || got.EnergyOnTheWay > q.EnergyOnTheWay+1e-9 {
			t.Errorf("stopped after %d: %d months, %g kWh on the way, of %g", asked, len(got.Months), got.EnergyOnTheWay, q.EnergyOnTheWay)
		}
		for _, m := range got.Months {
			if m.Left < 0 || m.Outlay != plan.Money(w.money.at(m.Month))-m.Left || m.Cart != nil && len(m.Cart.Audit.Checks) == 0 {
				t.Errorf("stopped after %d, month %d: %s left, outlay %s, cart %v", asked, m.Month, m.Left, m.Outlay, m.Cart)
			}
		}
	}
}
