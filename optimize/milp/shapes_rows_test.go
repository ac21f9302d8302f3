package milp

import "math"

func equalityKnapsack(d dice, size int) *Model {
	m := New("equality knapsack")
	var weight, value Expr
	total := 0.0
	for j := range d(2, 5) + 2*(size-1) {
		hi := d(1, 5)
		v := m.Integer(name("x", j), 0, float64(hi))
		w := d.num(3, 40)
		total += w * d.num(0, hi)
		weight.Add(w, v)
		value.Add(d.num(1, 60), v)
	}
	if d.oneIn(4) {
		total++ // may leave no way to fill it
	}
	m.Row("weight", weight, Equal, total)
	m.Maximize(value)
	return m
}

// anyRows has every relation, negative bounds and coefficients, a constant, both senses. Most are made
// around a point, so that there is a solution.
func anyRows(d dice, size int, real bool) *Model {
	m := New("any rows")
	n := d(2, 5) + 3*(size-1)
	vars, at := make([]Var, n), make([]float64, n)
	var cost Expr
	for j := range vars {
		lo := d.num(-6, 2)
		width := d(0, 5)
		if real && d.oneIn(3) {
			vars[j] = m.Continuous(name("x", j), lo, lo+float64(width))
		} else {
			vars[j] = m.Integer(name("x", j), lo, lo+float64(width))
		}
		at[j] = lo + d.num(0, width)
		cost.Add(d.num(-30, 30), vars[j])
	}
	cost.Const(d.num(-50, 50))
	if d.oneIn(2) {
		m.Maximize(cost)
	} else {
		m.Minimize(cost)
	}
	for i := range d(1, 3) + 2*size {
		var e Expr
		lhs := 0.0
		for j, v := range vars {
			if !d.oneIn(3) {
				c := d.num(-15, 15)
				lhs += c * at[j]
				e.Add(c, v)
			}
		}
		if e.Len() == 0 {
			continue
		}
		if d.oneIn(20) {
			lhs += d.num(-9, 9)
		}
		switch d(1, 5) {
		case 1, 2:
			m.Row(name("r", i), e, AtMost, lhs+d.num(0, 4))
		case 3, 4:
			m.Row(name("r", i), e, AtLeast, lhs-d.num(0, 4))
		default:
			m.Row(name("r", i), e, Equal, lhs)
		}
	}
	return m
}

// noBounds may be without limit or impossible.
func noBounds(d dice, size int) *Model {
	m := New("no bounds")
	var vars []Var
	var cost Expr
	for j := range d(1, 4) + size {
		lo := math.Inf(-1)
		if d.oneIn(2) {
			lo = d.num(-5, 5)
		}
		if d.oneIn(2) {
			vars = append(vars, m.Continuous(name("x", j), lo, math.Inf(1)))
		} else {
			vars = append(vars, m.Integer(name("x", j), math.Max(lo, -20), 20))
		}
		cost.Add(d.num(-9, 9), vars[j])
	}
	m.Minimize(cost)
	for i := range d(1, 4) + size {
		var e Expr
		for _, v := range vars {
			e.Add(d.num(-5, 9), v)
		}
		m.Row(name("r", i), e, Rel(d(1, 2)), d.num(-20, 40))
	}
	return m
}
