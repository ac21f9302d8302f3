package bound

import (
	"math"

	"cartwright/optimize/plan"
)

// cover answers what whole strings of the members of a group from a position on, that together have at least some Wh,
// cost or weigh at least, with no more strings of a kind than are allowed.
//
// It solves the knapsack covering problem by dynamic programming over whole steps of energy. Each energy is rounded up and
// the need rounded down, so the answer is never too high.
type cover struct {
	stepWh float64
	rows   [][]float32 // by position and steps, rounded down; positions beyond the last take the last
	each   []float64   // by position: least of one string from there on
	perWh  []float64   // by position: least for a Wh from there on
	alone  float64     // Wh of one string where there is only one member; else 0
}

// Sizes of the tables: steps of energy up to the largest need, and positions that have a row.
const (
	coverSteps = 2048
	coverRows  = 512
)

// coverOf makes the table for strings with an energy and a figure (cents or kg) each, so many of each kind at most, for
// needs up to mostWh.
func coverOf(wh, figure []float64, most []int, mostWh float64) cover {
	n := len(wh)
	c := cover{stepWh: mostWh / coverSteps, each: make([]float64, n), perWh: make([]float64, n)}
	each, perWh := math.Inf(1), math.Inf(1)
	for j := n - 1; j >= 0; j-- {
		each, perWh = min(each, figure[j]), min(perWh, figure[j]/wh[j])
		c.each[j], c.perWh[j] = each, perWh
	}
	if n == 1 {
		c.alone = wh[0]
		return c
	}
	row := make([]float32, coverSteps+1)
	for x := 1; x <= coverSteps; x++ {
		row[x] = float32(math.Inf(1))
	}
	c.rows = make([][]float32, min(n, coverRows))
	for j := n - 1; j >= 0; j-- {
		// In lots of 1, 2, 4 ... strings, each taken or not, which together make any number up to the most.
		for left, lot := most[j], 1; left > 0; left, lot = left-lot, 2*lot {
			strings := float64(min(lot, left))
			whole := int(min(coverSteps, math.Ceil(strings*wh[j]/c.stepWh)))
			cost := strings * figure[j]
			for x := coverSteps; x >= 1; x-- {
				if with := below(cost + float64(row[max(0, x-whole)])); with < row[x] {
					row[x] = with
				}
			}
			if whole == coverSteps {
				break // a larger lot adds nothing
			}
		}
		if j < len(c.rows) {
			c.rows[j] = append([]float32(nil), row...)
		}
	}
	return c
}

// below rounds down.
func below(x float64) float32 {
	y := float32(x)
	if float64(y) > x {
		y = math.Nextafter32(y, float32(math.Inf(-1)))
	}
	return y
}

// least returns the least figure of strings from a position on with at least wh; 0 where wh is not above 0.
func (c *cover) least(position int, wh float64) float64 {
	switch {
	case wh <= 0:
		return 0
	case position >= len(c.each):
		return math.Inf(1)
	case c.alone > 0:
		return c.each[0] * plan.Ceil(wh/c.alone)
	}
	least := max(c.each[position], wh*c.perWh[position])
	steps := int(min(coverSteps, wh/c.stepWh))
	return max(least, float64(c.rows[min(position, len(c.rows)-1)][steps]))
}
