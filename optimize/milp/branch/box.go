package branch

import (
	"math"

	"cartwright/optimize/milp/proof"
)

// box is what a bound may count on, as the checker has it: bounds of the variables, their own or derived from
// rows, and rows moved out by what a point may be off. All a little wider than the checker's, for rounding.
type box struct {
	p           *proof.Program
	lo, hi      []float64 // by column
	least, most []float64 // by row; infinite where the side cannot be counted on
	open        bool      // some variable has an infinite bound of its own
}

// wider is the relative error that the sums behind a derived bound may have.
const wider = 1e-9

// newBox takes in a program; only points that cost less than below are of interest.
func newBox(p *proof.Program, below float64) *box {
	b := &box{p: p, lo: append([]float64(nil), p.Lower...), hi: append([]float64(nil), p.Upper...),
		least: make([]float64, len(p.Rows)), most: make([]float64, len(p.Rows))}
	for j := range b.lo {
		b.open = b.open || math.IsInf(b.lo[j], 0) || math.IsInf(b.hi[j], 0)
	}
	if b.open {
		b.derive(below)
	}
	for i := range p.Rows {
		r := &p.Rows[i]
		off := min(b.greatest(r.Cols, r.Coefs, 1).terms, b.greatest(r.Cols, r.Coefs, -1).terms)
		b.least[i] = moved(r.Lower, off)
		b.most[i] = -moved(-r.Upper, off)
	}
	return b
}

// moved is a side "at least" less what a point may be off it where its terms reach so far.
func moved(side, reach float64) float64 {
	if math.IsInf(reach, 1) {
		return math.Inf(-1)
	}
	off := (math.Abs(side) + reach) * proof.Slack * (1 + 1e-6)
	return side - off
}

// reach is what a sum can come to.
type reach struct {
	sum, size float64 // of all terms that have an end, and of their absolute values
	terms     float64 // of those terms that are above 0; infinite where one has no end
	open      int     // how many have no end
	last      int     // which of them is the last
}

// greatest adds up the terms, times sign, each at its greatest.
func (b *box) greatest(cols []int, coefs []float64, sign float64) (r reach) {
	for k, j := range cols {
		term := b.end(j, sign*coefs[k])
		if math.IsInf(term, 1) {
			r.open, r.last, r.terms = r.open+1, k, term
			continue
		}
		r.sum += term
		r.size += math.Abs(term)
		r.terms += max(term, 0)
	}
	return r
}

// end returns the greatest that a coefficient times its variable can be.
func (b *box) end(j int, coef float64) float64 {
	switch {
	case coef > 0:
		return coef * b.hi[j]
	case coef < 0:
		return coef * b.lo[j]
	}
	return 0
}

// derive gives bounds to variables without, from rows of which all other variables have one, until no more are
// found.
func (b *box) derive(below float64) {
	all := make([]int, len(b.p.Cost))
	for j := range all {
		all[j] = j
	}
	for found := true; found; {
		found = false
		for i := range b.p.Rows {
			r := &b.p.Rows[i]
			found = b.half(r.Cols, r.Coefs, 1, r.Lower) || found
			found = b.half(r.Cols, r.Coefs, -1, -r.Upper) || found
		}
		found = b.half(all, b.p.Cost, -1, -below) || found
	}
}

// half derives from one side of a row: the terms times sign are at least side.
func (b *box) half(cols []int, coefs []float64, sign, side float64) (found bool) {
	if math.IsInf(side, -1) {
		return false
	}
	r := b.greatest(cols, coefs, sign)
	if r.open > 1 {
		return false
	}
	terms := r.terms
	if r.open == 1 {
		terms = r.size
	}
	rest := moved(side, terms) - r.sum - wider*(r.size+math.Abs(side))
	for k, j := range cols {
		coef := sign * coefs[k]
		if coef == 0 || !math.IsInf(b.end(j, -coef), 1) || r.open == 1 && k != r.last {
			continue
		}
		term := rest
		if r.open == 0 {
			term += b.end(j, coef)
		}
		term = min(term, 0)
		if coef > 0 {
			b.lo[j] = term/coef - wider*math.Abs(term/coef)
		} else {
			b.hi[j] = term/coef + wider*math.Abs(term/coef)
		}
		found = true
	}
	return found
}
