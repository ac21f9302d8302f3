package proof

import (
	"fmt"
	"math"
	"math/big"
	"math/bits"
	"slices"
)

// Slack is the part of a row's largest term by which a point may be off the row.
const Slack = 1e-9

// Deepest is how many splits a certificate may have one below the other.
const Deepest = 10000

// guard is how many bits finer than the numbers of a program everything is counted, so that what is rounded, and it
// is rounded to the safe side, is next to nothing.
const guard = 64

// slackOf is 1/Slack - 1: v <= Slack (t + v) is v <= t / slackOf.
var slackOf, zero, one = big.NewInt(1e9 - 1), big.NewInt(0), big.NewInt(1)

// Check returns nil where the tree proves that no point of the program costs less than bound, else a *Flaw: what is
// wrong with it. A bound of +Inf stands for: the program has no point.
func Check(p *Program, t *Tree, bound float64) error {
	if math.IsNaN(bound) || math.IsInf(bound, -1) {
		return flaw(nil, fmt.Sprintf("a bound of %v", bound), "it is a number, or +Inf")
	}
	if err := p.check(); err != nil {
		return err
	}
	c := newChecker(p, bound)
	for j := range c.cost {
		if c.at.crossed(j) {
			return nil
		}
	}
	return c.tree(t, 0)
}

// checker holds a program in whole numbers: each number times 2^scale, and so a product of two times 2^(2 scale).
type checker struct {
	scale    uint
	integer  []bool
	cost     []*big.Int
	halves   []half    // two a row, its lower side, then its upper; the last is the cost
	root, at box       // of the program, and where the tree stands
	bound    *big.Int  // nil where no point is to be possible
	reduced  []big.Int // scratch of leaf
}

// newChecker takes in a program and derives the bounds that it lacks.
func newChecker(p *Program, bound float64) *checker {
	c := &checker{scale: finest(bound), integer: p.Integer, reduced: make([]big.Int, len(p.Cost))}
	p.numbers(func(v float64) { c.scale = max(c.scale, finest(v)) })
	c.scale += guard
	c.bound, c.cost = whole(bound, c.scale), c.all(1, p.Cost)
	c.root = box{c.all(1, p.Lower), c.all(1, p.Upper)}
	for i := range p.Rows {
		r := &p.Rows[i]
		c.halves = append(c.halves, half{row: r, sign: 1, side: whole(r.Lower, c.scale)}, half{row: r, sign: -1, side: whole(-r.Upper, c.scale)})
	}
	cost := &Row{Coefs: p.Cost}
	for j := range c.cost {
		cost.Cols = append(cost.Cols, j)
	}
	c.halves = append(c.halves, half{row: cost, sign: -1, side: whole(-bound, c.scale)})
	for found := slices.Contains(c.root.lower, nil) || slices.Contains(c.root.upper, nil); found; {
		found = false
		for i := range c.halves {
			found = c.derive(&c.halves[i]) || found
		}
	}
	c.at = box{slices.Clone(c.root.lower), slices.Clone(c.root.upper)}
	return c
}

// all takes in numbers, times a sign.
func (c *checker) all(sign float64, list []float64) []*big.Int {
	z := make([]*big.Int, len(list))
	for i, v := range list {
		z[i] = whole(sign*v, c.scale)
	}
	return z
}

// whole returns v * 2^scale, nil for an infinite v.
func whole(v float64, scale uint) *big.Int {
	if math.IsInf(v, 0) {
		return nil
	}
	fraction, exponent := math.Frexp(v)
	z := big.NewInt(int64(math.Ldexp(fraction, 53)))
	shift := exponent - 53 + int(scale)
	return z.Rsh(z.Lsh(z, uint(max(0, shift))), uint(max(0, -shift))) // what is dropped is 0: the scale is fine enough
}

// finest returns the least scale that makes a number whole, 0 for an infinite one.
func finest(v float64) uint {
	if math.IsInf(v, 0) {
		return 0
	}
	fraction, exponent := math.Frexp(v)
	return uint(max(0, 53-exponent-bits.TrailingZeros64(uint64(math.Abs(math.Ldexp(fraction, 53))))))
}

// tree checks a tree within the bounds at hand.
func (c *checker) tree(t *Tree, depth int) error {
	switch {
	case t == nil || (t.Below == nil) != (t.Above == nil):
		return flaw(t, "half of a split is missing", "it has two trees")
	case depth > Deepest:
		return flaw(t, fmt.Sprintf("more than %d splits one below the other", Deepest), "split less")
	case t.Below == nil:
		return c.leaf(t)
	case t.Column < 0 || t.Column >= len(c.cost) || !c.integer[t.Column] || t.Impossible || len(t.Multipliers) > 0:
		return flawOf(t, aVariable, t.Column, "split an integer, and claim at leaves", "is split: it is no integer, or the split has a claim of its own")
	}
	at, next := big.NewInt(t.At), big.NewInt(t.At)
	next.Add(next, one)
	if err := c.within(t.Below, depth+1, c.at.upper, t.Column, at.Lsh(at, c.scale), -1); err != nil {
		return err
	}
	return c.within(t.Above, depth+1, c.at.lower, t.Column, next.Lsh(next, c.scale), 1)
}

// within checks a tree with one more bound, lower for the sign 1 and upper for -1. Where that leaves no value,
// there is nothing to prove.
func (c *checker) within(t *Tree, depth int, bounds []*big.Int, j int, bound *big.Int, sign int) error {
	before := bounds[j]
	defer func() { bounds[j] = before }()
	if before == nil || bound.Cmp(before) == sign {
		bounds[j] = bound
	}
	if c.at.crossed(j) {
		return nil
	}
	return c.tree(t, depth)
}

// leaf checks that the multipliers reach the bound.
func (c *checker) leaf(t *Tree) error {
	if c.bound == nil && !t.Impossible {
		return flaw(t, "the leaf does not say that it is impossible", "every leaf of such a claim does")
	}
	fine := uint(0) // the scale of the multipliers
	for _, m := range t.Multipliers {
		if m.Row < 0 || m.Row >= len(c.halves)/2 || math.IsNaN(m.Value) || math.IsInf(m.Value, 0) {
			return flawOf(t, aRow, m.Row, "a finite one, of a row", "has the multiplier %v", m.Value)
		}
		fine = max(fine, finest(m.Value))
	}
	for j := range c.reduced {
		if c.reduced[j].SetInt64(0); !t.Impossible {
			c.reduced[j].Lsh(c.cost[j], fine)
		}
	}
	sum, term := new(big.Int), new(big.Int)
	for _, m := range t.Multipliers {
		h := &c.halves[2*m.Row+int(math.Float64bits(m.Value)>>63)] // by the sign bit
		if c.move(h); h.side == nil {
			return flawOf(t, aRow, m.Row, "above 0 it takes the lower side, below the upper", "has no such side for the multiplier %v", m.Value)
		}
		y := whole(math.Abs(m.Value), fine)
		sum.Add(sum, term.Mul(y, h.side))
		for k, j := range h.row.Cols {
			c.reduced[j].Sub(&c.reduced[j], term.Mul(y, h.coefs[k]))
		}
	}
	sum.Lsh(sum, c.scale)
	for j := range c.reduced {
		end := c.at.end(j, &c.reduced[j], -1)
		if end == nil {
			return flawOf(t, aVariable, j, "bound it, or change the multipliers", "has no bound where its reduced cost asks for one")
		}
		sum.Add(sum, term.Mul(&c.reduced[j], end))
	}
	if t.Impossible && sum.Sign() <= 0 {
		return flaw(t, "the impossible leaf comes to no more than 0", "it has to come to more")
	} else if !t.Impossible && sum.Cmp(term.Lsh(c.bound, c.scale+fine)) < 0 {
		return flaw(t, "the leaf falls short of the claim", "it has to reach it")
	}
	return nil
}
