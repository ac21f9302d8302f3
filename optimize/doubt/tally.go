package doubt

import (
	"slices"
	"sort"

	"gonum.org/v1/gonum/stat"

	"cartwright/optimize/plan"
)

// tally counts how candidates fare, draw by draw.
type tally struct {
	list     []*candidate
	draws    int
	cheapest []int
	feasible []int
	breaks   []map[string]int
	cost     [][]float64 // cents, by candidate and draw
	regret   []float64   // cents, of the first, where it is feasible

	firstFails, noneServes int
}

func newTally(list []*candidate, draws int) *tally {
	t := &tally{list: list, cheapest: make([]int, len(list)), feasible: make([]int, len(list)),
		cost: make([][]float64, len(list))}
	for i := range list {
		t.breaks = append(t.breaks, map[string]int{})
		t.cost[i] = make([]float64, 0, draws)
	}
	return t
}

// draw counts one draw; try returns what a candidate costs in it and the limits it does not meet.
func (t *tally) draw(try func(i int) (plan.Money, []string)) {
	t.draws++
	best, first := -1, -1
	costs := make([]plan.Money, len(t.list))
	for i := range t.list {
		cost, broken := try(i)
		costs[i] = cost
		t.cost[i] = append(t.cost[i], float64(cost))
		for _, limit := range broken {
			t.breaks[i][limit]++
		}
		if len(broken) > 0 {
			continue
		}
		t.feasible[i]++
		if i == 0 {
			first = i
		}
		if best < 0 || cost < costs[best] {
			best = i
		}
	}
	switch {
	case best < 0:
		t.noneServes++
		return
	case first < 0:
		t.firstFails++
	default:
		t.regret = append(t.regret, float64(costs[0]-costs[best]))
	}
	t.cheapest[best]++
}

// atMostIn is the share of the draws in which a figure "at 95" is not exceeded.
const atMostIn = 0.95

// report writes the counts as shares.
func (t *tally) report(d *Doubted) {
	share := func(n int) float64 { return float64(n) / float64(t.draws) }
	for i, c := range t.list {
		one := PlanDoubt{Rank: c.p.Rank, Core: c.p.Core, Cost: c.p.Cost, Cheapest: share(t.cheapest[i]),
			Feasible: share(t.feasible[i]), Breaks: []Break{}}
		for limit, n := range t.breaks[i] {
			one.Breaks = append(one.Breaks, Break{limit, share(n)})
		}
		sort.Slice(one.Breaks, func(a, b int) bool {
			x, y := one.Breaks[a], one.Breaks[b]
			return x.Share > y.Share || x.Share == y.Share && x.Limit < y.Limit
		})
		mean, at95, most := spreadOf(t.cost[i])
		one.MeanCost, one.Cost95, one.Greatest = mean, at95, most
		d.Plans = append(d.Plans, one)
	}
	if len(t.regret) > 0 {
		mean, at95, most := spreadOf(t.regret)
		d.Regret = &Regret{Draws: len(t.regret), Mean: mean, At95: at95, Most: most}
	}
	d.FirstFails, d.NoneServes = share(t.firstFails), share(t.noneServes)
	best := 0
	for i := range t.list {
		if t.feasible[i] > t.feasible[best] || t.feasible[i] == t.feasible[best] && d.Plans[i].Greatest < d.Plans[best].Greatest {
			best = i
		}
	}
	d.Robust = d.Plans[best].Rank
}

// spreadOf returns the mean of some cents in currency units, the least amount that at least 95 in 100 do
// not exceed, and the most.
func spreadOf(cents []float64) (mean float64, at95, most plan.Money) {
	sorted := slices.Sorted(slices.Values(cents))
	return stat.Mean(cents, nil) / 100, plan.Money(stat.Quantile(atMostIn, stat.Empirical, sorted, nil)),
		plan.Money(sorted[len(sorted)-1])
}
