package milp

import (
	"fmt"
	"math"
	"math/rand/v2"
)

// dice draws a whole number from lo to hi: from a seeded generator, or from rapid.
type dice func(lo, hi int) int

func (d dice) num(lo, hi int) float64   { return float64(d(lo, hi)) }
func (d dice) hundredth(hi int) float64 { return float64(d(0, 100*hi)) / 100 }
func (d dice) part(of float64) float64  { return math.Floor(of * (0.2 + 0.6*float64(d(0, 100))/100)) }
func (d dice) oneIn(n int) bool         { return d(1, n) == 1 }
func seeded(seed uint64) dice {
	r := rand.New(rand.NewPCG(seed, 0))
	return func(lo, hi int) int { return lo + r.IntN(hi-lo+1) }
}

// shape is a family of random models. At size 1 all variables together take at most some ten thousand
// values, unless they are real.
type shape struct {
	name  string
	build func(d dice, size int) *Model
	real  bool // has variables that are not integer
	open  bool // may be without limit
}

var shapes = []shape{
	{name: "covering", build: covering},
	{name: "covering by yes or no", build: binaryCovering},
	{name: "covering with real data", build: realCovering},
	{name: "covering at equal costs", build: equalCovering},
	{name: "assignment", build: assignment},
	{name: "one option a group and a count", build: oneOption},
	{name: "equality knapsack", build: equalityKnapsack},
	{name: "packing into bins", build: binPacking},
	{name: "whole numbers, any rows", build: func(d dice, size int) *Model { return anyRows(d, size, false) }},
	{name: "whole and real numbers, any rows", build: func(d dice, size int) *Model { return anyRows(d, size, true) }, real: true},
	{name: "charge for opening, big M", build: fixedCharge, real: true},
	{name: "no bounds", build: noBounds, real: true, open: true},
	{name: "cart", build: cart, real: true},
}

func name(what string, i int) string { return fmt.Sprintf("%s%d", what, i) }

// cover adds rows that ask for a part of what the variables can do together.
func cover(m *Model, d dice, vars []Var, rows int, coefficient func() float64) {
	for i := range rows {
		var e Expr
		most := 0.0
		for _, v := range vars {
			if !d.oneIn(3) {
				c := coefficient()
				_, hi := m.Bounds(v)
				most += c * hi
				e.Add(c, v)
			}
		}
		m.Row(name("r", i), e, AtLeast, d.part(most))
	}
}

func covering(d dice, size int) *Model {
	m := New("covering")
	var vars []Var
	var cost Expr
	for j := range d(2, 4) + 3*(size-1) {
		vars = append(vars, m.Integer(name("x", j), 0, d.num(1, 5)))
		cost.Add(d.num(1, 60), vars[j])
	}
	m.Minimize(cost)
	cover(m, d, vars, d(2, 4)+2*size, func() float64 { return d.num(1, 20) })
	return m
}

func binaryCovering(d dice, size int) *Model {
	m := New("binary covering")
	var vars []Var
	var cost Expr
	for j := range d(4, 10) + 8*(size-1) {
		vars = append(vars, m.Binary(name("x", j)))
		cost.Add(d.num(1, 60), vars[j])
	}
	m.Minimize(cost)
	cover(m, d, vars, d(2, 4)+2*size, func() float64 { return d.num(1, 20) })
	return m
}

func realCovering(d dice, size int) *Model {
	m := New("real covering")
	var vars []Var
	var cost Expr
	for j := range d(2, 4) + 4*(size-1) {
		vars = append(vars, m.Integer(name("x", j), 0, d.num(1, 6)))
		cost.Add(d.hundredth(1000), vars[j])
	}
	m.Minimize(cost)
	cover(m, d, vars, d(2, 4)+2*size, func() float64 { return d.hundredth(30) + d.hundredth(1)/97 })
	return m
}

func equalCovering(d dice, size int) *Model {
	m := New("equal covering")
	var cost Expr
	rows := make([]Expr, d(3, 6)*size)
	for j := range d(6, 11) + 8*(size-1) {
		v := m.Binary(name("x", j))
		cost.Add(1, v)
		for i := range rows {
			if d.oneIn(4) || j == i { // no row stays empty
				rows[i].Add(1, v)
			}
		}
	}
	m.Minimize(cost)
	for i := range rows {
		m.Row(name("r", i), rows[i], AtLeast, 1)
	}
	return m
}

func assignment(d dice, size int) *Model {
	m := New("assignment")
	n := 3 + 2*(size-1)
	var cost Expr
	across, down := make([]Expr, n), make([]Expr, n)
	for i := range n {
		for j := range n {
			v := m.Binary(fmt.Sprintf("x%d_%d", i, j))
			across[i].Add(1, v)
			down[j].Add(1, v)
			cost.Add(d.num(1, 99), v)
		}
	}
	for i := range n {
		m.Row(name("across", i), across[i], Equal, 1)
		m.Row(name("down", i), down[i], Equal, 1)
	}
	m.Minimize(cost)
	return m
}

func oneOption(d dice, size int) *Model {
	m := New("one option")
	var gives, cost Expr
	n := m.Integer("count", 0, 9)
	cost.Add(d.num(100, 999), n)
	gives.Add(d.num(20, 80), n)
	for g := range d(1, 3) * size {
		var one Expr
		for j := range d(2, 4) + 3*(size-1) {
			v := m.Binary(fmt.Sprintf("x%d_%d", g, j))
			one.Add(1, v)
			cost.Add(d.num(100, 999), v)
			gives.Add(d.num(1, 60), v)
		}
		m.Row(name("one of group ", g), one, Equal, 1)
	}
	m.Row("gives", gives, AtLeast, d.num(50, 600))
	m.Minimize(cost)
	return m
}

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

func binPacking(d dice, size int) *Model {
	m := New("bin packing")
	bins := 2 + size
	used := make([]Var, bins)
	load := make([]Expr, bins)
	var cost Expr
	for b := range bins {
		used[b] = m.Binary(name("bin", b))
		cost.Add(d.num(1, 3), used[b])
	}
	for i := range 3 * size {
		var one Expr
		w := d.num(3, 9)
		for b := range bins {
			v := m.Binary(fmt.Sprintf("item %d in %d", i, b))
			one.Add(1, v)
			load[b].Add(w, v)
		}
		m.Row(name("item", i), one, Equal, 1)
	}
	for b := range bins {
		load[b].Add(-15, used[b])
		m.Row(name("load", b), load[b], AtMost, 0)
	}
	m.Minimize(cost)
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

func fixedCharge(d dice, size int) *Model {
	m := New("fixed charge")
	var sum, cost Expr
	most := 0.0
	for j := range d(3, 6) * size {
		hi := d.num(5, 100)
		most += hi
		open := m.Binary(name("open", j))
		flow := m.Continuous(name("flow", j), 0, math.Inf(1))
		m.Row(name("only if open", j), Sum(T(1, flow), T(-hi, open)), AtMost, 0)
		sum.Add(1, flow)
		cost.Add(d.num(10, 500), open)
		cost.Add(d.hundredth(20), flow)
	}
	m.Row("demand", sum, AtLeast, d.part(most))
	m.Minimize(cost)
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
