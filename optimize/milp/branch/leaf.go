package branch

import (
	"math"

	"cartwright/optimize/milp/proof"
)

// prover turns what a table shows into multipliers of the rows and says what they prove, rounding counted
// against it.
type prover struct {
	*box
	reduced, size []float64 // scratch: reduced cost by column, and the sum of its terms' absolute values
}

func newProver(p *proof.Program, below float64) *prover {
	return &prover{box: newBox(p, below), reduced: make([]float64, len(p.Cost)), size: make([]float64, len(p.Cost))}
}

// duals returns the multipliers at a table, the reduced costs of the rows, and what they prove.
func (v *prover) duals(t *tableau, lo, hi []float64) ([]proof.Multiplier, float64) {
	list := v.read(t, nil)
	value := v.value(list, lo, hi, false)
	if math.IsInf(value, -1) {
		if leaning := v.lean(t, t.p.money); len(leaning) > 0 {
			list = append(list, leaning...)
			value = v.value(list, lo, hi, false)
		}
	}
	return list, value
}

// read appends the reduced costs of the rows.
func (v *prover) read(t *tableau, list []proof.Multiplier) []proof.Multiplier {
	for j, o := range t.others {
		if i := o - t.n; i >= 0 {
			list = v.add(list, i, t.d[j]*t.p.rows[i]/t.p.money, math.Abs(t.d[j]))
		}
	}
	return list
}

// farkas returns the multipliers by which row r of a table shows that there is no point, and what they
// come to: above 0 they do.
func (v *prover) farkas(t *tableau, r int, lo, hi []float64) ([]proof.Multiplier, float64) {
	b := t.basic[r]
	sign := 1.0 // below its lower bound
	if t.x[b] > t.hi[b] {
		sign = -1
	}
	var list []proof.Multiplier
	if i := b - t.n; i >= 0 {
		list = v.add(list, i, sign*t.p.rows[i], 1)
	}
	for j, a := range t.row(r) {
		if i := t.others[j] - t.n; i >= 0 {
			list = v.add(list, i, -sign*a*t.p.rows[i], math.Abs(a))
		}
	}
	value := v.value(list, lo, hi, true)
	if math.IsInf(value, -1) {
		if leaning := v.lean(t, 1); len(leaning) > 0 {
			list = append(list, leaning...)
			value = v.value(list, lo, hi, true)
		}
	}
	return list, value
}

// leaning is how far a reduced cost is moved off 0, in scaled rows: more than rounding, less than what matters.
const leaning = 1e-9

// lean returns multipliers that move the reduced costs of basic variables that have a bound on one side only off 0
// to the good side: rounding would leave some on the other, where they prove nothing.
func (v *prover) lean(t *tableau, money float64) []proof.Multiplier {
	d := append([]float64(nil), t.d...)
	prices := append([]float64(nil), t.prices...)
	clear(t.prices)
	needed := false
	for _, j := range t.basic {
		if j >= t.n {
			continue
		}
		switch noLo, noHi := math.IsInf(v.lo[j], 0), math.IsInf(v.hi[j], 0); {
		case noHi && !noLo:
			t.prices[j], needed = -leaning, true
		case noLo && !noHi:
			t.prices[j], needed = leaning, true
		}
	}
	var list []proof.Multiplier
	if needed {
		t.price()
		for j, o := range t.others {
			if i := o - t.n; i >= 0 && t.d[j] != 0 {
				list = v.add(list, i, t.d[j]*t.p.rows[i]/money, 1)
			}
		}
	}
	copy(t.d, d)
	copy(t.prices, prices)
	return list
}

// add appends a multiplier unless it is rounding, or counts on a side that there is not.
func (v *prover) add(list []proof.Multiplier, i int, y, size float64) []proof.Multiplier {
	if size <= 1e-11 || y > 0 && math.IsInf(v.least[i], 0) || y < 0 && math.IsInf(v.most[i], 0) {
		return list
	}
	return append(list, proof.Multiplier{Row: i, Value: y})
}

// value returns what multipliers prove: no point within the bounds costs less; with all costs 0 where the point
// is that there is none. Whatever rounding may have added is taken off.
func (v *prover) value(list []proof.Multiplier, lo, hi []float64, impossible bool) float64 {
	clear(v.reduced)
	if !impossible {
		copy(v.reduced, v.p.Cost)
	}
	for j, c := range v.reduced {
		v.size[j] = math.Abs(c)
	}
	sum, size := 0.0, 0.0
	for _, m := range list {
		r := &v.p.Rows[m.Row]
		for k, j := range r.Cols {
			term := m.Value * r.Coefs[k]
			v.reduced[j] -= term
			v.size[j] += math.Abs(term)
		}
		side := v.least[m.Row]
		if m.Value < 0 {
			side = v.most[m.Row]
		}
		sum += m.Value * side
		size += math.Abs(m.Value * side)
	}
	for j, d := range v.reduced {
		from, to := max(lo[j], v.lo[j]), min(hi[j], v.hi[j])
		switch {
		case d > 0:
			sum += d * from
		case d < 0:
			sum += d * to
		}
		if v.size[j] > 0 {
			if far := max(math.Abs(from), math.Abs(to)); !math.IsInf(far, 0) {
				size += v.size[j] * far
			}
		}
	}
	const unit = 1.0 / (1 << 53)
	return sum - float64(len(list)+len(v.reduced)+4)*unit*size
}

// short rounds multipliers to few digits, as few as still prove what they have to: they are read, and checked in
// exact arithmetic, the faster.
func (v *prover) short(list []proof.Multiplier, lo, hi []float64, impossible bool, enough float64) []proof.Multiplier {
	most := 0.0
	for _, m := range list {
		most = max(most, math.Abs(m.Value))
	}
	_, exponent := math.Frexp(most)
	rounded := make([]proof.Multiplier, 0, len(list))
	for _, bits := range [...]int{10, 20, 30} {
		grid := math.Ldexp(1, exponent-bits)
		rounded = rounded[:0]
		for _, m := range list {
			if m.Value = math.Round(m.Value/grid) * grid; m.Value != 0 {
				rounded = append(rounded, m)
			}
		}
		if v.value(rounded, lo, hi, impossible) >= enough {
			return rounded
		}
	}
	return list
}
