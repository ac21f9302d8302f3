package milp

import (
	"fmt"
	"math"
)

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
