package proof

import (
	"fmt"
	"math"
	"math/big"
)

// slackParts is 1/Slack.
var slackParts = big.NewInt(1e9)

// CheckPoint returns exactly what a point costs, and a *Flaw where it is no point of the program: its bounds are kept
// exactly, its integers are whole, and no row is off by more than Slack of its largest term.
func CheckPoint(p *Program, x []float64) (*big.Rat, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	if len(x) != len(p.Cost) {
		return nil, flaw(nil, fmt.Sprintf("%d values for %d variables", len(x), len(p.Cost)), "one for each")
	}
	scale := uint(0)
	p.numbers(func(v float64) { scale = max(scale, finest(v)) })
	for j, v := range x {
		if !(p.Lower[j] <= v && v <= p.Upper[j]) || math.IsInf(v, 0) || p.Integer[j] && v != math.Trunc(v) {
			right := fmt.Sprintf("keep it from %v to %v", p.Lower[j], p.Upper[j])
			if p.Integer[j] {
				right += ", and whole"
			}
			return nil, flawOf(nil, aVariable, j, right, "is %v", v)
		}
		scale = max(scale, finest(v))
	}
	at := make([]*big.Int, len(x))
	for j, v := range x {
		at[j] = whole(v, scale)
	}
	sum, largest, term := new(big.Int), new(big.Int), new(big.Int)
	for i, r := range p.Rows {
		sum.SetInt64(0)
		largest.SetInt64(0)
		for k, j := range r.Cols {
			if at[j].Sign() == 0 {
				continue // most are
			}
			sum.Add(sum, term.Mul(whole(r.Coefs[k], scale), at[j]))
			if term.CmpAbs(largest) > 0 {
				largest.Abs(term)
			}
		}
		if beyond(sum, whole(r.Lower, scale), largest, scale, -1) || beyond(sum, whole(r.Upper, scale), largest, scale, 1) {
			return nil, flawOf(nil, aRow, i, fmt.Sprintf("it may be off by %g of its largest term", Slack), "is not kept")
		}
	}
	sum.SetInt64(0)
	for j, v := range p.Cost {
		if at[j].Sign() != 0 {
			sum.Add(sum, term.Mul(whole(v, scale), at[j]))
		}
	}
	return new(big.Rat).SetFrac(sum, new(big.Int).Lsh(one, 2*scale)), nil
}

// beyond reports whether a sum is above a side, for the sign 1, or below it, for -1, by more than a row may be
// off. A side of nil asks nothing.
func beyond(sum, side, largest *big.Int, scale uint, sign int) bool {
	if side == nil {
		return false
	}
	limit := new(big.Int).Lsh(side, scale)
	off := new(big.Int).Sub(sum, limit)
	if limit.Abs(limit).Cmp(largest) < 0 {
		limit = largest
	}
	return off.Sign() == sign && off.Mul(off, slackParts).CmpAbs(limit) > 0
}
