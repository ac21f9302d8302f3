package proof

import "math/big"

// box is the bounds of the variables; nil for none.
type box struct{ lower, upper []*big.Int }

// crossed reports whether the bounds of a variable leave no value.
func (b *box) crossed(j int) bool {
	return b.lower[j] != nil && b.upper[j] != nil && b.lower[j].Cmp(b.upper[j]) > 0
}

// half is one side of a row: the sum of the terms, times the sign, is at least side. A side of nil asks nothing. Most
// halves are never needed, so coefs are taken in, and the side is moved, when they first are.
type half struct {
	row   *Row
	sign  float64
	side  *big.Int
	coefs []*big.Int
	moved bool
}

// end returns the value of a variable at which its term is greatest, for the sign 1, or least, for -1; nil for
// infinity.
func (b *box) end(j int, coef *big.Int, sign int) *big.Int {
	switch coef.Sign() * sign {
	case 1:
		return b.upper[j]
	case -1:
		return b.lower[j]
	}
	return zero
}

// sum adds up the terms, each at its greatest or least as end has it: all of them, and those that have the sign.
// Terms without an end are left out; it returns how many there are, and which is the last.
func (c *checker) sum(h *half, sign int) (all, reach *big.Int, open, last int) {
	if h.coefs == nil {
		h.coefs = c.all(h.sign, h.row.Coefs)
	}
	all, reach, term := new(big.Int), new(big.Int), new(big.Int)
	for k, j := range h.row.Cols {
		end := c.root.end(j, h.coefs[k], sign)
		if end == nil {
			open, last = open+1, k
			continue
		}
		all.Add(all, term.Mul(end, h.coefs[k]))
		if term.Sign() == sign {
			reach.Add(reach, term)
		}
	}
	return all, reach.Abs(reach), open, last
}

// moved returns the side less what a point may be off it where the terms of one sign reach so far.
func (c *checker) moved(side, reach *big.Int) *big.Int {
	off := new(big.Int).Abs(side)
	off.Add(off.Lsh(off, c.scale), reach)
	off.Div(off, new(big.Int).Lsh(slackOf, c.scale)) // rounds down, hence the one more
	return off.Sub(side, off.Add(off, one))
}

// move moves the side out for good. Where nothing limits what a point may be off, the half asks nothing any more.
func (c *checker) move(h *half) {
	if h.side == nil || h.moved {
		return
	}
	h.moved = true
	_, reach, open, _ := c.sum(h, 1)
	if _, least, without, _ := c.sum(h, -1); open > 0 || without == 0 && least.Cmp(reach) < 0 {
		reach, open = least, without
	}
	if h.side = c.moved(h.side, reach); open > 0 {
		h.side = nil
	}
}

// derive gives bounds to variables that have none, and reports whether it did: a term is at least the side less
// the greatest that all others come to. Points off the row are counted in: where the term is below 0, the reach of
// the others says how far; where it is not, 0 is a bound.
func (c *checker) derive(h *half) (found bool) {
	if h.side == nil {
		return false
	}
	all, reach, open, last := c.sum(h, 1)
	if open > 1 {
		return false
	}
	rest := all.Sub(new(big.Int).Lsh(c.moved(h.side, reach), c.scale), all)
	for k, j := range h.row.Cols {
		coef, term := h.coefs[k], new(big.Int)
		if c.root.end(j, coef, -1) != nil || open == 1 && k != last {
			continue
		}
		if open == 0 {
			term.Mul(coef, c.root.end(j, coef, 1))
		}
		if term.Add(term, rest); term.Sign() > 0 {
			term.SetInt64(0)
		}
		found = true
		term.Div(term, coef) // down for a coefficient above 0, up for one below: outwards
		if coef.Sign() > 0 {
			c.root.lower[j] = term
		} else {
			c.root.upper[j] = term
		}
	}
	return found
}
