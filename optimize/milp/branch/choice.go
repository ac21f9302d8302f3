package branch

import "math"

// choice decides what to split at. It learns by how much the relaxation rises for each column that is pushed up or
// down (pseudo-costs); a column that it knows little of is tried out first (reliability branching: Achterberg,
// Koch and Martin 2005).
type choice struct {
	s       *search
	columns []int        // the integers
	rise    [2][]float64 // by side (0 down, 1 up) and column: sum of rises a unit
	seen    [2][]int
	total   [2]float64 // over all columns
	all     [2]int
	count   int
	saved   snapshot
}

// How much is tried out.
const (
	reliable  = 2 // rises of a column that are enough to go by
	mostTried = 8 // columns at a node
	fewGain   = 4 // columns tried in vain one after the other, then the best so far is taken
	tryPivots = 8 // for each side
)

func newChoice(s *search) *choice {
	c := &choice{s: s}
	for j, is := range s.p.Integer {
		if is {
			c.columns = append(c.columns, j)
		}
	}
	for side := range 2 {
		c.rise[side], c.seen[side] = make([]float64, s.t.n), make([]int, s.t.n)
	}
	return c
}

// whole reports whether all integers are whole at a point, but for rounding.
func (c *choice) whole(x []float64) bool {
	for _, j := range c.columns {
		if math.Abs(x[j]-math.Round(x[j])) > whole {
			return false
		}
	}
	return true
}

// cut is where to split: a column at x <= at and x >= at+1.
type cut struct {
	column     int
	at, value  float64
	up         bool // go up first
	score      float64
	down, rise float64
}

// choose returns where to split at x, where the relaxation costs so much.
func (c *choice) choose(x []float64, cost float64) (cut, bool) {
	if x != nil {
		if best, ok := c.fraction(x, cost); ok {
			return best, true
		}
	}
	// Nothing is between whole numbers, for all that is known: anything that is not fixed will do.
	for _, j := range c.columns {
		lo, hi := c.s.lo[j], c.s.hi[j]
		if lo >= hi {
			continue
		}
		at := max(lo, min(0, hi-1))
		if x != nil {
			at = min(max(math.Round(x[j]), lo), hi-1)
		} else if !math.IsInf(lo, 0) && !math.IsInf(hi, 0) {
			at = math.Floor((lo + hi - 1) / 2)
		}
		if math.Abs(at) > 1<<53 {
			continue
		}
		return cut{column: j, at: at, value: at + 0.5}, true
	}
	return cut{}, false
}

// fraction chooses among the integers that are between whole numbers.
func (c *choice) fraction(x []float64, cost float64) (best cut, ok bool) {
	var list []cut
	for _, j := range c.columns {
		f := x[j] - math.Floor(x[j])
		if f <= whole || f >= 1-whole || math.Abs(x[j]) > 1<<52 {
			continue
		}
		k := cut{column: j, at: math.Floor(x[j]), value: x[j], up: f > 0.5}
		k.down, k.rise = f*c.expect(0, j), (1-f)*c.expect(1, j)
		k.score = product(k.down, k.rise)
		list = append(list, k)
	}
	if len(list) == 0 {
		return best, false
	}
	if len(list) > 1 {
		c.sort(list)
		list = c.explore(list, cost)
	}
	best = list[0]
	for _, k := range list[1:] {
		if k.score > best.score {
			best = k
		}
	}
	return best, true
}

// sort puts the best score first; of equal ones the column that was added first.
func (c *choice) sort(list []cut) {
	for i := 1; i < len(list); i++ {
		for k := i; k > 0 && list[k].score > list[k-1].score; k-- {
			list[k], list[k-1] = list[k-1], list[k]
		}
	}
}

// expect returns by how much the relaxation rises for a unit of a column, as far as is known.
func (c *choice) expect(side, j int) float64 {
	if n := c.seen[side][j]; n > 0 {
		return c.rise[side][j] / float64(n)
	}
	if c.all[side] > 0 {
		return c.total[side] / float64(c.all[side])
	}
	return 1
}

// product is the score of two rises.
func product(down, up float64) float64 {
	const least = 1e-6
	return max(down, least) * max(up, least)
}

// explore tries out the columns that little is known of, and gives them the score they earn.
func (c *choice) explore(list []cut, cost float64) []cut {
	s := c.s
	saved, tried, idle := false, 0, 0
	best := 0.0
	for i := range list {
		k := &list[i]
		if min(c.seen[0][k.column], c.seen[1][k.column]) < reliable && tried < mostTried && idle < fewGain {
			if !saved {
				saved = true
				c.saved.save(s.t)
			}
			tried++
			var shut bool
			k.down, shut = c.test(k.column, s.lo[k.column], k.at, cost)
			if !shut {
				k.rise, shut = c.test(k.column, k.at+1, s.hi[k.column], cost)
			}
			k.score = product(k.down, k.rise)
			if shut { // one half is proved: no column can be better
				k.score = math.Inf(1)
				return list[i : i+1]
			}
		}
		if idle++; k.score > best {
			best, idle = k.score, 0
		}
	}
	return list
}

// test returns by how much the relaxation rises between two bounds of a column, and whether it proves them.
func (c *choice) test(j int, lo, hi float64, cost float64) (rise float64, shut bool) {
	s := c.s
	oldLo, oldHi := s.t.lo[j], s.t.hi[j]
	s.t.lo[j], s.t.hi[j] = lo, hi
	s.t.settle()
	end, _ := s.t.dual(s.ceiling(), tryPivots)
	at := s.t.cost() / s.t.p.money
	s.t.lo[j], s.t.hi[j] = oldLo, oldHi
	c.saved.restore(s.t)
	switch end {
	case empty, exceeded:
		return max(at-cost, 0), true
	}
	return max(at-cost, 0), false
}

// learn notes what a node's relaxation came to.
func (c *choice) learn(n *node, cost float64) {
	if n.column < 0 || n.distance <= whole || math.IsInf(n.from, 0) {
		return
	}
	if math.IsInf(cost, 1) {
		return
	}
	side := 0
	if n.up {
		side = 1
	}
	rise := max(cost-n.from, 0) / n.distance
	c.rise[side][n.column] += rise
	c.seen[side][n.column]++
	c.total[side] += rise
	c.all[side]++
}

// snapshot is a copy of a table.
type snapshot struct {
	a, d, prices, x, weight []float64
	basic, others, place    []int
	pivots                  int
	shifted                 bool
}

func (s *snapshot) save(t *tableau) {
	s.a, s.d, s.prices = append(s.a[:0], t.a...), append(s.d[:0], t.d...), append(s.prices[:0], t.prices...)
	s.x, s.weight = append(s.x[:0], t.x...), append(s.weight[:0], t.weight...)
	s.basic, s.others, s.place = append(s.basic[:0], t.basic...), append(s.others[:0], t.others...), append(s.place[:0], t.place...)
	s.pivots, s.shifted = t.pivots, t.shifted
	t.work += int64(len(t.a)) / 4
}

func (s *snapshot) restore(t *tableau) {
	copy(t.a, s.a)
	copy(t.d, s.d)
	copy(t.prices, s.prices)
	copy(t.x, s.x)
	copy(t.weight, s.weight)
	copy(t.basic, s.basic)
	copy(t.others, s.others)
	copy(t.place, s.place)
	t.pivots, t.shifted = s.pivots, s.shifted
	t.work += int64(len(t.a)) / 4
}
