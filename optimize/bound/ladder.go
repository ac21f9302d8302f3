package bound

import (
	"math"
	"sort"

	"cartwright/optimize/market"
	"cartwright/optimize/plan"
)

// ladder has options sorted by the fault current that their devices can break, the most first: those that break a
// given current are a prefix.
type ladder struct {
	options []market.Option
	order   []int
	kg      []float64 // least mass of each prefix
}

func newLadder(options []market.Option) ladder {
	l := ladder{options: options, order: make([]int, len(options)), kg: make([]float64, len(options))}
	for i := range l.order {
		l.order[i] = i
	}
	sort.SliceStable(l.order, func(i, j int) bool {
		return options[l.order[i]].InterruptingA > options[l.order[j]].InterruptingA
	})
	least := math.Inf(1)
	for i, at := range l.order {
		least = min(least, options[at].Kg)
		l.kg[i] = least
	}
	return l
}

// serving returns how many options break a fault current.
func (l *ladder) serving(faultA float64) int {
	return sort.Search(len(l.order), func(i int) bool { return !plan.AtLeast(l.options[l.order[i]].InterruptingA, faultA) })
}

// leastKg returns the least mass among the options that break a fault current; +Inf where none does.
func (l *ladder) leastKg(faultA float64) float64 {
	if n := l.serving(faultA); n > 0 {
		return l.kg[n-1]
	}
	return math.Inf(1)
}

// climbed is a ladder with the cheapest option of each prefix, and its cost.
type climbed struct {
	*ladder
	cents []float64
	best  []int
}

// climb prices a ladder.
func (k *costs) climb(l ladder) *climbed {
	c := &climbed{ladder: &l, cents: make([]float64, len(l.order)), best: make([]int, len(l.order))}
	least, best := math.Inf(1), -1
	for i, at := range l.order {
		if cents := k.floor(&l.options[at]); cents < least {
			least, best = cents, at
		}
		c.cents[i], c.best[i] = least, best
	}
	return c
}

// least returns the least cost in cents among the options that break a fault current, and the option that has it; +Inf
// where none does.
func (c *climbed) least(faultA float64) (cents float64, best *market.Option) {
	n := c.serving(faultA)
	if n == 0 || c.best[n-1] < 0 {
		return math.Inf(1), nil
	}
	return c.cents[n-1], &c.options[c.best[n-1]]
}
