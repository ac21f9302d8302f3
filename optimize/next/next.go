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
	"cartwright/scenarios"
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
	// EnergyOnTheWay is the sum over the months before the target of the usable kWh on the cart.
	EnergyOnTheWay float64
	// Bar says why nothing stands on the cart in the first months; nil where something does.
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
	r, err := rank.Plans(ctx, question.Problem{Scenario: &s, Catalog: p.Catalog}, question.Options{Plans: max(1, o.Plan)})
	if err != nil {
		return nil, err
	}
	out.Cautions = r.Cautions
	if len(r.Plans) == 0 {
		if r.Solver.Status != question.Infeasible {
			return nil, question.ErrUnknown
		}
		return out, nil
	}
	at := max(1, o.Plan)
	if at > len(r.Plans) {
		if r.Solver.Status != question.Optimal {
			return nil, question.ErrUnknown
		}
		return nil, &NoRankError{at, len(r.Plans)}
	}
	out.Target = &r.Plans[at-1]
	money := saving{cash: p.Scenario.Savings.Now + p.Scenario.Sold, perMonth: p.Scenario.Savings.PerMonth}
	month, ok := money.firstMonth(catalog.Cents(out.Target.Cost))
	if !ok || month > longestMonths {
		out.Never = true
		return out, nil
	}
	out.Reached, out.Within = month, month <= out.Horizon
	way, err := newWay(ctx, question.Problem{Scenario: &s, Catalog: p.Catalog}, out.Target, money)
	if err != nil {
		return nil, err
	}
	steps, err := way.schedule(ctx, month)
	if err != nil {
		return nil, err
	}
	if err := way.tell(out, steps); err != nil {
		return nil, err
	}
	out.Bar = way.bar(out.Months)
	return out, nil
}

// stage is a complete cart on the way to the target.
type stage struct {
	usable float64   // Wh
	needs  []float64 // by the way's lines: how much of each has to be bought
	plan   plan.Plan // of owned parts
}

// line is one line of the target's bill that is bought, and the order it belongs to.
type line struct {
	bill  plan.Line
	order int // lines of the same order are bought in the same month; -1: by the piece, in any month
}

// way is everything from which a sequence to a target is made.
type way struct {
	p      question.Problem
	target *plan.Plan
	money  saving
	lines  []line
	orders int
	ships  []plan.Money // by order
	sales  []sale
	early  []int     // indices of the sales that can wait
	stages [][]stage // by set of early sales made, a bit each
	barred []barred  // with none of them made
}

// newWay works out the carts that can be built on the way.
func newWay(ctx context.Context, p question.Problem, target *plan.Plan, money saving) (*way, error) {
	w := &way{p: p, target: target, money: money}
	w.collectLines()
	w.collectSales()
	w.stages = make([][]stage, 1<<len(w.early))
	for sold := range w.stages {
		if !w.inOrder(sold) {
			continue
		}
		list, err := w.findStages(ctx, sold)
		if err != nil {
			return nil, err
		}
		w.stages[sold] = list
	}
	return w, nil
}

// collectLines lists what the target buys. All lines of a vendor that are shipped for money are one order,
// since a second order would cost more than the target; so is each line bought at a quantity break. A line
// that is shipped for nothing can be bought in any month.
func (w *way) collectLines() {
	orderOf := map[string]int{}
	for _, l := range w.target.Bill {
		if l.Buy <= 0 {
			continue
		}
		at := -1
		if o := w.offer(&l); o != nil && (o.MinQty > 1 || o.Shipping > 0) {
			key, ships := l.Vendor, w.shipping(l.Vendor)
			if o.Shipping == 0 {
				key, ships = l.Part+"\x00"+l.Vendor, 0
			}
			i, seen := orderOf[key]
			if !seen {
				i = w.orders
				orderOf[key] = i
				w.orders++
				w.ships = append(w.ships, ships)
			}
			at = i
		}
		w.lines = append(w.lines, line{l, at})
	}
}

// offer returns the offer a line was bought at, nil for a part's own price.
func (w *way) offer(l *plan.Line) *catalog.Offer {
	for i := range w.p.Catalog.Offers {
		o := &w.p.Catalog.Offers[i]
		price := float64(o.Price)
		if l.Unit == "m" {
			price = o.CentsPerM
		}
		if !plan.IsEnd(l.Kind) && o.PartID == l.Part && o.Vendor == l.Vendor &&
			math.Abs(price/100-l.UnitPrice) < 1e-9 && l.Buy >= o.MinQty {
			return o
		}
	}
	return nil
}

// shipping returns what the target pays a vendor for shipping: the largest of the lines bought there.
func (w *way) shipping(vendor string) plan.Money {
	most := plan.Money(0)
	for _, l := range w.target.Bill {
		if l.Buy > 0 && l.Vendor == vendor {
			if o := w.offer(&l); o != nil {
				most = max(most, plan.Money(o.Shipping))
			}
		}
	}
	return most
}

// holdings returns what is owned once the given quantities of the lines are bought and a set of the early sales is
// made. The target's other sales are made in the first month.
func (w *way) holdings(bought []float64, sold int) []scenarios.Holding {
	count, ends := map[string]float64{}, map[string]int{}
	var order []string
	add := func(part string, n float64) {
		if _, seen := count[part]; !seen {
			order = append(order, part)
		}
		count[part] += n
	}
	for _, h := range w.p.Scenario.Have {
		add(h.PartID, h.Count)
		ends[h.PartID] += h.Ends
	}
	for i := range w.sales {
		if bit := w.earlyBit(i); bit < 0 || sold&(1<<bit) != 0 {
			add(w.sales[i].bill.Part, -w.sales[i].bill.Sell)
		}
	}
	for i, n := range bought {
		if !plan.IsEnd(w.lines[i].bill.Kind) {
			add(w.lines[i].bill.Part, n)
		}
	}
	var list []scenarios.Holding
	for _, part := range order {
		if count[part] > 0 || ends[part] > 0 {
			list = append(list, scenarios.Holding{PartID: part, Count: count[part], Ends: ends[part]})
		}
	}
	return list
}
