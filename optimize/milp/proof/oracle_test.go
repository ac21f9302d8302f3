package proof

import (
	"math"
	"math/big"
)

// oracle is the theorem once more, in fractions and the plainest way, for programs whose variables all have bounds
// of their own: how far the tree reaches, and whether all its leaves count.
func oracle(p *Program, t *Tree, lower, upper []float64) (*big.Rat, bool) {
	for j := range lower {
		if lower[j] > upper[j] {
			return nil, true // nothing there: no limit
		}
	}
	if t == nil || (t.Below == nil) != (t.Above == nil) {
		return nil, false
	}
	if t.Below != nil {
		if t.Column < 0 || t.Column >= len(lower) || !p.Integer[t.Column] || t.Impossible || len(t.Multipliers) > 0 {
			return nil, false
		}
		low, high := append([]float64(nil), lower...), append([]float64(nil), upper...)
		high[t.Column] = math.Min(high[t.Column], float64(t.At))
		low[t.Column] = math.Max(low[t.Column], float64(t.At)+1)
		a, good := oracle(p, t.Below, lower, high)
		b, too := oracle(p, t.Above, low, upper)
		if a == nil || b != nil && b.Cmp(a) < 0 {
			a = b
		}
		return a, good && too
	}
	sum, reduced := new(big.Rat), make([]*big.Rat, len(lower))
	for j, c := range p.Cost {
		reduced[j] = new(big.Rat)
		if !t.Impossible {
			reduced[j].SetFloat64(c)
		}
	}
	for _, m := range t.Multipliers {
		y := new(big.Rat).SetFloat64(m.Value)
		if y == nil || m.Row < 0 || m.Row >= len(p.Rows) {
			return nil, false
		}
		r := p.Rows[m.Row]
		side := r.Lower
		if math.Signbit(m.Value) {
			side = r.Upper
		}
		if math.IsInf(side, 0) {
			return nil, false
		}
		sum.Add(sum, new(big.Rat).Mul(y, outward(p, &r, side, m.Value)))
		for k, j := range r.Cols {
			reduced[j].Sub(reduced[j], new(big.Rat).Mul(y, new(big.Rat).SetFloat64(r.Coefs[k])))
		}
	}
	for j, d := range reduced {
		end := upper[j]
		if d.Sign() > 0 {
			end = lower[j]
		}
		sum.Add(sum, new(big.Rat).Mul(d, new(big.Rat).SetFloat64(end)))
	}
	if t.Impossible {
		return nil, sum.Sign() > 0
	}
	return sum, true
}

// outward moves a side of a row out by (|side| + min(N, P)) / (1e9 - 1), as the package comment has it.
func outward(p *Program, r *Row, side, y float64) *big.Rat {
	negative, positive := new(big.Rat), new(big.Rat)
	for k, j := range r.Cols {
		coef := new(big.Rat).SetFloat64(r.Coefs[k])
		a := new(big.Rat).Mul(coef, new(big.Rat).SetFloat64(p.Lower[j]))
		b := new(big.Rat).Mul(coef, new(big.Rat).SetFloat64(p.Upper[j]))
		if a.Cmp(b) > 0 {
			a, b = b, a
		}
		if a.Sign() < 0 {
			negative.Sub(negative, a)
		}
		if b.Sign() > 0 {
			positive.Add(positive, b)
		}
	}
	if positive.Cmp(negative) < 0 {
		negative = positive
	}
	off := new(big.Rat).SetFloat64(math.Abs(side))
	off.Add(off, negative).Mul(off, big.NewRat(1, 1e9-1))
	if y > 0 {
		off.Neg(off)
	}
	return off.Add(off, new(big.Rat).SetFloat64(side))
}
