package milp

import "fmt"

// cart is a model of the shape this package is used for: a few counts of heavy things, one option a group
// for what follows from them, shared energy, mass, balance and room, a charge a vendor. All data invented.
func cart(d dice, size int) *Model {
	const vendors = 3
	m := New("cart")
	var cost, mass, energy, amps, balance Expr
	bought := make([]Expr, vendors)
	most := make([]float64, vendors)
	buy := func(cents float64, v Var, upTo float64) {
		cost.Add(cents, v)
		from := d(0, vendors-1)
		bought[from].Add(1, v)
		most[from] += upTo
	}
	shelves := 1 + size
	room, load := make([]Expr, shelves), make([]Expr, shelves)
	for b := range d(1, 2) + (size-1)*d(0, 2) {
		series := []float64{1, 1, 4}[d(0, 2)]
		strings := m.Integer(name("strings", b), 0, 6)
		buy(series*d.num(20000, 140000), strings, 6)
		kwh := 1 + d.hundredth(4)
		kg := 8*kwh + d.hundredth(5)
		energy.Add(series*kwh, strings)
		mass.Add(series*kg, strings)
		amps.Add(50+d.hundredth(100), strings)
		stand := Sum(T(-series, strings))
		for k := range shelves {
			n := m.Integer(fmt.Sprintf("modules %d on shelf %d", b, k), 0, 24)
			stand.Add(1, n)
			room[k].Add(1/d.num(1, 6), n)
			load[k].Add(kg, n)
			balance.Add(kg*(0.3*float64(k)-0.7), n)
		}
		m.Row(name("all modules stand", b), stand, Equal, 0)
	}
	for k := range shelves {
		m.Row(name("room on shelf", k), room[k], AtMost, 1)
		m.Row(name("mass on shelf", k), load[k], AtMost, 60+d.hundredth(80))
	}
	m.Row("energy", energy, AtLeast, 4+d.hundredth(8))
	m.Row("amps", amps, AtLeast, 60+d.hundredth(200))
	for run := range 1 + size*d(1, 2) {
		var one Expr
		for o := range 3 + d(2, 10)*size {
			v := m.Binary(fmt.Sprintf("run %d option %d", run, o))
			one.Add(1, v)
			buy(d.num(500, 20000), v, 1)
			kg := 0.2 + d.hundredth(4)
			mass.Add(kg, v)
			balance.Add(0.1*kg, v)
		}
		m.Row(name("one option of run", run), one, Equal, 1)
	}
	var one, carries Expr
	for c := range 4 * size {
		v := m.Binary(name("casters", c))
		one.Add(1, v)
		buy(d.num(2000, 22000), v, 1)
		mass.Add(3+d.hundredth(9), v)
		carries.Add(40+d.hundredth(150), v)
	}
	m.Row("one set of casters", one, Equal, 1)
	mass.Const(80)
	m.Row("mass", mass, AtMost, 250+d.hundredth(150))
	carries.AddExpr(-1.25/3, mass)
	m.Row("casters carry", carries, AtLeast, 0)
	m.Row("balance", balance, AtMost, 20)
	for k := range vendors {
		if most[k] > 0 {
			order := m.Binary(name("order from ", k))
			cost.Add(d.num(0, 9000), order)
			bought[k].Add(-most[k], order)
			m.Row(name("only if ordered from ", k), bought[k], AtMost, 0)
		}
	}
	// A real variable in the objective, as tax or a tie-breaker would be.
	weight := m.Continuous("weight", 0, 1000)
	mass.Add(-1, weight)
	m.Row("weight is the mass", mass, AtMost, 0)
	cost.Add(0.01, weight)
	m.Minimize(cost)
	return m
}
