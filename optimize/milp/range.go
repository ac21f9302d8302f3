package milp

// Range returns the least and the largest value of an expression within the bounds of its variables,
// rows left aside.
func (m *Model) Range(e Expr) (least, most float64) {
	least, most = e.constant, e.constant
	for _, t := range e.terms {
		lo, hi := m.Bounds(t.v)
		if t.coef < 0 {
			lo, hi = hi, lo
		}
		if t.coef != 0 {
			least += t.coef * lo
			most += t.coef * hi
		}
	}
	return least, most
}
