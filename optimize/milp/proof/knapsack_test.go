package proof

import (
	"math"
	"math/rand/v2"
	"slices"
)

// bag is a knapsack, to be filled for the most: each kind up to most times, weights at most limit together. Its
// certificates come about without any engine: branch and bound with the bound of G. Dantzig, "Discrete-variable
// extremum problems", Operations Research 5 (1957): fill by value for weight, and the last kind in part.
type bag struct {
	value, weight, most []float64
	limit               float64
}

func randomBag(r *rand.Rand) *bag {
	b := new(bag)
	for range 2 + r.IntN(3) {
		b.value = append(b.value, float64(5+r.IntN(30)))
		b.weight = append(b.weight, float64(3+r.IntN(15))+0.25*float64(r.IntN(4)))
		b.most = append(b.most, float64(1+r.IntN(3)))
	}
	b.limit = float64(10 + r.IntN(40))
	return b
}

func (b *bag) program() *Program {
	p := &Program{Lower: make([]float64, len(b.value)), Upper: slices.Clone(b.most)}
	row := Row{Coefs: slices.Clone(b.weight), Lower: math.Inf(-1), Upper: b.limit}
	for j, v := range b.value {
		p.Cost, p.Integer, row.Cols = append(p.Cost, -v), append(p.Integer, true), append(row.Cols, j)
	}
	p.Rows = []Row{row}
	return p
}

// best tries every filling; nil where the least one is too heavy already.
func (b *bag) best(lower, upper []float64) (point []float64, value float64) {
	x := slices.Clone(lower)
	value = math.Inf(-1)
	for {
		weight, sum := 0.0, 0.0
		for j, n := range x {
			weight, sum = weight+n*b.weight[j], sum+n*b.value[j]
		}
		if weight <= b.limit && sum > value {
			point, value = slices.Clone(x), sum
		}
		j := 0
		for j < len(x) && x[j] == upper[j] {
			x[j] = lower[j]
			j++
		}
		if j == len(x) {
			return point, value
		}
		x[j]++
	}
}

// prove returns a tree that shows that nothing above limit can be had within bounds.
func (b *bag) prove(lower, upper []float64, limit float64) *Tree {
	order := make([]int, len(b.value))
	room, bound := b.limit, 0.0
	for j := range order {
		order[j] = j
		room, bound = room-lower[j]*b.weight[j], bound+lower[j]*b.value[j]
	}
	if room < 0 {
		return &Tree{Impossible: true, Multipliers: []Multiplier{{0, -1}}}
	}
	slices.SortFunc(order, func(i, j int) int { return int(1e6 * (b.value[j]/b.weight[j] - b.value[i]/b.weight[i])) })
	for _, j := range order {
		n := math.Min(upper[j]-lower[j], room/b.weight[j])
		room, bound = room-n*b.weight[j], bound+n*b.value[j]
		if n == upper[j]-lower[j] {
			continue
		}
		if bound < limit {
			return &Tree{Multipliers: []Multiplier{{0, -b.value[j] / b.weight[j]}}}
		}
		at := math.Min(upper[j]-1, lower[j]+math.Floor(n))
		below, above := slices.Clone(upper), slices.Clone(lower)
		below[j], above[j] = at, at+1
		return &Tree{Column: j, At: int64(at), Below: b.prove(lower, below, limit), Above: b.prove(above, upper, limit)}
	}
	return &Tree{} // all fits: nothing is worth more than everything
}
