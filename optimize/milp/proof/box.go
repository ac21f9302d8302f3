package proof

import "math/big"

// half is one side of a row: the sum of the terms is at least side. A side of nil asks nothing.
type half struct {
	cols  []int
	coefs []*big.Int
	side  *big.Int
}

// end returns the value of a variable at which its term is greatest, for the sign 1, or least, for -1; nil for
// infinity.
func (c *checker) end(j int, coef *big.Int, sign int) *big.Int {
	switch coef.Sign() * sign {
	case 1:
		return c.upper[j]
	case -1:
		return c.lower[j]
	}
	return zero
}

// sum adds up the terms, each at its greatest or least as end has it: all of them, and those that have the sign.
// Terms without an end are left out; it returns how many there are, and which is the last.
func (c *checker) sum(h *half, sign int) (all, reach *big.Int, open, last int) {
	all, reach, term := new(big.Int), new(big.Int), new(big.Int)
	for k, j := range h.cols {
		end := c.end(j, h.coefs[k], sign)
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
	if h.side == nil {
		return
	}
	_, reach, open, _ := c.sum(h, 1)
	if _, least, without, _ := c.sum(h, -1); open > 0 || without == 0 && least.Cmp(reach) < 0 {
		reach, open = least, without
	}
	if h.side = c.moved(h.side, reach); open > 0 {
		h.side = nil
	}
}

// lacks reports whether a half is about a variable that has no bound where its term is least.
func (c *checker) lacks(h *half) bool {
	for k, j := range h.cols {
		if c.end(j, h.coefs[k], -1) == nil {
			return true
		}
	}
	return false
}

// derive gives bounds to variables that have none, and reports whether it did: a term is at least the side less
// the greatest that all others come to. Points off the row are counted in: where the term is below 0, the reach of
// the others says how far; where it is not, 0 is a bound.
func (c *checker) derive(h *half) (found bool) {
	if h.side == nil || !c.lacks(h) {
		return false
	}
	all, reach, open, last := c.sum(h, 1)
	if open > 1 {
		return false
	}
	rest := all.Sub(new(big.Int).Lsh(c.moved(h.side, reach), c.scale), all)
	for k, j := range h.cols {
		coef, term := h.coefs[k], new(big.Int)
		if c.end(j, coef, -1) != nil || open == 1 && k != last {
			continue
		}
		if open == 0 {
			term.Mul(coef, c.end(j, coef, 1))
		}
		if term.Add(term, rest); term.Sign() > 0 {
			term.SetInt64(0)
		}
		found = true
		term.Div(term, coef) // down for a coefficient above 0, up for one below: outwards
		if coef.Sign() > 0 {
			c.lower[j] = term
		} else {
			c.upper[j] = term
		}
	}
	return found
}
