// Package next finds what to buy in which month from what is saved.
package next

import (
	"context"
	"errors"
	"fmt"
	"math"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/optimize/rank"
)

// Purchase is one thing bought or sold in a month.
type Purchase struct {
	Part      string
	Kind      string
	Quantity  float64
	Unit      string
	Vendor    string
	UnitPrice float64
	Line      plan.Money
}

// Month is what happens in a month and what is on the cart after it.
type Month struct {
	Month    int        // 0 is now
	Cash     plan.Money // in hand before
	Buy      []Purchase
	Sell     []Purchase
	Shipping plan.Money
	Tax      plan.Money
	Left     plan.Money
	Outlay   plan.Money // all that was spent so far, less what was sold
	// Cart is the complete and safe cart after the month's purchases; nil: none yet.
	Cart *plan.Plan
	// CostPerUsableKWh is the outlay so far over the cart's usable energy; 0 without a cart.
	CostPerUsableKWh float64
	// CostPerExtraKWh is the outlay so far over what the cart has beyond the batteries owned today; 0 where that is
	// nothing.
	CostPerExtraKWh float64
}

// Sequence is a purchase sequence: month by month until the target is reached.
type Sequence struct {
	Months []Month
	// Target is the plan that is reached, in month Reached; Within says whether that is within the horizon.
	Target  *plan.Plan // nil: no plan is possible at all
	Reached int
	Never   bool // the target is never reached: the cash is not enough, and nothing or too little is saved
	Horizon int
	Within  bool
	// Complete says that the target is proved to be of its rank, and that no other order of purchases has more energy on
	// the way. Else the search was stopped before that; Months is empty where no order was found.
	Complete bool
	// EnergyOnTheWay is the sum over the months before the target of the usable kWh on the cart.
	EnergyOnTheWay float64
	// Bar says why nothing stands on the cart in the first months; nil where something does, or Complete is false.
	Bar      *Bar
	Cautions []string
}

// Options says how far to look.
type Options struct {
	Months int // the horizon; 0 stands for DefaultMonths
	Plan   int // rank of the plan to reach; 0 stands for the first
}

// DefaultMonths is how many months Next looks ahead.
const DefaultMonths = 24

// longestMonths is the longest sequence that is worked out, whatever the horizon: fifty years.
const longestMonths = 600

// ErrNoSavings is returned where the scenario states no savings.
var ErrNoSavings = errors.New("the scenario has no savings; add savings: {now: 500, per_month: 200}")

// NoRankError is returned where there are fewer plans than the rank to reach.
type NoRankError struct{ Asked, Plans int }

// Error says how many there are.
func (e *NoRankError) Error() string {
	return fmt.Sprintf("there is no plan %d: there are %d", e.Asked, e.Plans)
}

// Find finds the purchase sequence that reaches the target in the earliest month, among those one with the
// least total outlay, and among those the one with the most usable energy on the cart on the way.
//
// What is bought is not sold again, so every sequence that reaches the target buys the whole of it and costs at least
// what it costs. The earliest month is therefore the first whose cash is enough for the target, the least outlay is its
// cost, and every month before can only buy parts of it: a thin cable now and a thick one later never wins where the
// final cable serves. What is left to decide, and decided exactly, is which parts to buy in which month, so that the cart
// is safe on the way and has the most usable energy. The cash takes the place of the scenario's budget.
//
// Where the context ends, or the solver gives up, once a plan of that rank is known, the sequence has what is known by
// then, and Complete is false: of a target that is not proved, Cost and Reached are upper bounds.
func Find(ctx context.Context, p question.Problem, o Options) (*Sequence, error) {
	if p.Scenario.Savings == nil {
		return nil, ErrNoSavings
	}
	out := &Sequence{Horizon: o.Months}
	if out.Horizon <= 0 {
		out.Horizon = DefaultMonths
	}
	s := *p.Scenario
	s.Limits.Budget = math.MaxInt64
	p = question.Problem{Scenario: &s, Catalog: p.Catalog}
	if err := out.aim(ctx, p, max(1, o.Plan)); err != nil {
		return nil, err
	}
	if out.Target == nil {
		return out, nil
	}
	money := saving{cash: s.Savings.Now + s.Sold, perMonth: s.Savings.PerMonth}
	month, ok := money.firstMonth(catalog.Cents(out.Target.Cost))
	if !ok || month > longestMonths {
		out.Never = true
		return out, nil
	}
	out.Reached, out.Within = month, month <= out.Horizon
	if err := out.order(ctx, newWay(p, out.Target, money), month); err != nil {
		return nil, err
	}
	return out, nil
}

// aim finds the plan of a rank, which is the target; there is none where no plan is possible.
func (q *Sequence) aim(ctx context.Context, p question.Problem, at int) error {
	r, err := rank.Plans(ctx, p, question.Options{Plans: at})
	if err != nil {
		return err
	}
	q.Cautions = r.Cautions
	switch {
	case at <= len(r.Plans):
		q.Target = &r.Plans[at-1]
		q.Complete = q.Target.Proven
	case r.Solver.Status == question.Infeasible:
		q.Complete = true
	case r.Solver.Status != question.Optimal:
		return question.ErrUnknown
	default:
		return &NoRankError{at, len(r.Plans)}
	}
	return nil
}

// order finds in which month to buy what, until all of the target is bought in the given one.
func (q *Sequence) order(ctx context.Context, w *way, month int) error {
	if month > 0 { // else all is bought now
		whole, err := w.findCarts(ctx)
		if err != nil {
			return err
		}
		q.Complete = q.Complete && whole
	}
	steps, whole := w.schedule(ctx, month)
	if q.Complete = q.Complete && whole; !q.Complete && month > 0 && !stands(steps) {
		return nil // to buy all in the last month is always an order, but nobody has looked for a better one
	}
	if err := w.tell(q, steps); err != nil {
		return err
	}
	if q.Complete {
		q.Bar = w.bar(q.Months)
	}
	return nil
}
