package milp

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
