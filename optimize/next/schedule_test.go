package next

import (
	"context"
	"math"
	"sync/atomic"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// patience is a context that is over once it was asked so often whether it is.
type patience struct {
	context.Context
	left atomic.Int64 // asked by several goroutines
}

func (p *patience) Err() error {
	if p.left.Add(-1) < 0 {
		return context.DeadlineExceeded
	}
	return nil
}

func patient(ctx context.Context, asked int) *patience {
	p := &patience{Context: ctx}
	p.left.Store(int64(asked))
	return p
}

// wayOf returns the way to the first plan of a demo, with the whole answer.
func wayOf(t *testing.T, demo string) (*way, *Sequence) {
	t.Helper()
	s, err := scenarios.Demo(demo)
	if err != nil {
		t.Fatal(err)
	}
	s.Limits.Budget = math.MaxInt64 // as in Find
	p := question.Problem{Scenario: s, Catalog: catalog.Embedded()}
	q, err := Find(t.Context(), p, Options{})
	if err != nil || !q.Complete {
		t.Fatal(q, err)
	}
	return newWay(p, q.Target, saving{cash: s.Savings.Now + s.Sold, perMonth: s.Savings.PerMonth}), q
}

// Wherever the schedule is stopped, it goes on to an order that can be paid for, whose carts are audited and hold no more
// energy on the way than those of the best order.
func TestScheduleStopped(t *testing.T) {
	for _, demo := range []string{"star-party", "lantern-market"} {
		w, q := wayOf(t, demo)
		if whole, err := w.findCarts(t.Context()); err != nil || !whole {
			t.Fatal(whole, err)
		}
		whole := false
		for asked := 0; !whole; asked += asked/4 + 1 {
			var steps []*owning
			steps, whole = w.schedule(patient(t.Context(), asked), q.Reached)
			got := Sequence{Target: q.Target}
			if err := w.tell(&got, steps); err != nil {
				t.Fatalf("%s, stopped after %d: %v", demo, asked, err)
			}
			switch {
			case whole && (got.EnergyOnTheWay != q.EnergyOnTheWay || asked < q.Reached):
				t.Errorf("%s, whole after %d: %g kWh on the way, want %g", demo, asked, got.EnergyOnTheWay, q.EnergyOnTheWay)
			case len(got.Months) != q.Reached+1 || got.EnergyOnTheWay <= 0 || got.EnergyOnTheWay > q.EnergyOnTheWay+1e-9:
				t.Errorf("%s, stopped after %d: %d months, %g kWh on the way, of %g", demo, asked, len(got.Months), got.EnergyOnTheWay, q.EnergyOnTheWay)
			}
			sold := plan.Money(0)
			for _, m := range got.Months {
				for _, x := range m.Sell {
					sold += x.Line
				}
				if m.Left < 0 || m.Cart != nil && len(m.Cart.Audit.Checks) == 0 {
					t.Errorf("%s, stopped after %d, month %d: %s left, cart %v", demo, asked, m.Month, m.Left, m.Cart)
				}
			}
			if sold != q.Target.Credit {
				t.Errorf("%s, stopped after %d: sold for %s, the target for %s", demo, asked, sold, q.Target.Credit)
			}
		}
	}
}

// Only where every cart on the way is found is that said, however late it is stopped.
func TestCartsStopped(t *testing.T) {
	for _, demo := range []string{"star-party", "lantern-market"} {
		w, _ := wayOf(t, demo)
		const enough = 1 << 40
		unhurried := patient(t.Context(), enough)
		if whole, err := w.findCarts(unhurried); err != nil || !whole {
			t.Fatal(whole, err)
		}
		all, asked, some := w.stages, enough-int(unhurried.left.Load()), 0
		for early := 0; early <= asked; early = 3*early + 1 {
			w.stages, w.barred = make([][]stage, len(all)), nil
			whole, err := w.findCarts(patient(t.Context(), asked-early))
			if err != nil {
				t.Fatal(err)
			}
			found, lack := 0, 0
			for sold := range all {
				found += len(w.stages[sold])
				lack += len(all[sold]) - len(w.stages[sold])
			}
			if whole != (early == 0) || whole && lack > 0 || lack < 0 {
				t.Errorf("%s, stopped %d before the end: whole %v, %d carts found, %d lack", demo, early, whole, found, lack)
			}
			if !whole && found > 0 {
				some++
			}
		}
		if some == 0 {
			t.Errorf("%s: never stopped with some carts found", demo)
		}
	}
}
