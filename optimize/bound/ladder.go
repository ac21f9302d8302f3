package bound

import (
	"math"
	"sort"

	"cartwright/optimize/market"
	"cartwright/optimize/plan"
)

// ladder answers quickly what the options that have at least so much of something cost and weigh at the least.
type ladder struct {
	have      []float64 // rising
	cents, kg []float64 // least of the options from each on
}

// ladderOf orders options, with their floors in cents, by what they have.
func ladderOf(options []market.Option, floors []float64, has func(*market.Option) float64) ladder {
	at := make([]int, len(options))
	for i := range at {
		at[i] = i
	}
	sort.SliceStable(at, func(a, b int) bool { return has(&options[at[a]]) < has(&options[at[b]]) })
	n := len(at)
	l := ladder{make([]float64, n), make([]float64, n), make([]float64, n)}
	cents, kg := math.Inf(1), math.Inf(1)
	for k := n - 1; k >= 0; k-- {
		x := &options[at[k]]
		cents, kg = math.Min(cents, floors[at[k]]), math.Min(kg, x.Kg)
		l.have[k], l.cents[k], l.kg[k] = has(x), cents, kg
	}
	return l
}

// least returns the least cents and mass of what has at least need; +Inf where nothing has.
func (l *ladder) least(need float64) (cents, kg float64) {
	low, high := 0, len(l.have)
	for low < high {
		if mid := (low + high) / 2; plan.AtLeast(l.have[mid], need) {
			high = mid
		} else {
			low = mid + 1
		}
	}
	if low == len(l.have) {
		return math.Inf(1), math.Inf(1)
	}
	return l.cents[low], l.kg[low]
}

// interrupting and carries are what devices and casters are ordered by.
func interrupting(x *market.Option) float64 { return x.InterruptingA }
func carries(x *market.Option) float64      { return x.CarriesKg }
