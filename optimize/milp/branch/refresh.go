package branch

import "math"

// refresh makes the table from the program again, at the same basis, which takes the rounding of all pivots
// out of it. A basis that turns out to depend on itself loses the columns it can do without.
func (t *tableau) refresh() {
	var columns []int
	keep := make([]bool, t.rows) // the row's own variable is basic
	for _, v := range t.basic {
		if v < t.n {
			columns = append(columns, v)
		} else {
			keep[v-t.n] = true
		}
	}
	weights := make(map[int]float64, t.rows)
	for i, v := range t.basic {
		weights[v] = t.weight[i]
	}
	t.fill()
	// Of what is left to enter, the one of the largest pivot goes first.
	for len(columns) > 0 {
		best, at, r := 0.0, -1, -1
		for k, v := range columns {
			q := -1 - t.place[v]
			largest, in := 0.0, -1
			for i := range t.rows {
				if own := t.basic[i]; own < t.n || keep[own-t.n] {
					continue
				}
				if size := math.Abs(t.a[i*t.n+q]); size > largest {
					largest, in = size, i
				}
			}
			if largest > best {
				best, at, r = largest, k, in
			}
			if best >= 0.5 { // good enough
				break
			}
		}
		if best < leastPivot {
			break
		}
		t.pivot(r, -1-t.place[columns[at]])
		columns = append(columns[:at], columns[at+1:]...)
	}
	for i, v := range t.basic {
		if w, ok := weights[v]; ok {
			t.weight[i] = w
		}
	}
	t.pivots = 0
	t.price()
}
