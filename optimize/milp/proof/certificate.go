package proof

import (
	"fmt"
	"math"
)

// Program is what a certificate speaks of: make Cost.x least, every row and bound kept, the integers whole.
// Its numbers are taken as the exact rationals that they are.
type Program struct {
	Cost         []float64
	Lower, Upper []float64 // of each variable; infinite where it has no bound
	Integer      []bool
	Rows         []Row
}

// Row says Lower <= sum of Coefs[i] x[Cols[i]] <= Upper. An infinite side asks nothing. Cols rise.
type Row struct {
	Cols         []int
	Coefs        []float64
	Lower, Upper float64
}

// Tree is a certificate: either a split of an integer variable or a leaf. A split holds two trees, one for
// x[Column] <= At and one for x[Column] >= At+1, which together leave out no whole number. A leaf holds
// multipliers of the rows.
type Tree struct {
	Column       int
	At           int64
	Below, Above *Tree // both or neither
	Multipliers  []Multiplier
	// Impossible marks a leaf that claims that nothing keeps its rows and bounds: its multipliers are read
	// with all costs 0 and have to reach a bound above 0.
	Impossible bool
}

// Multiplier is y of one row: its lower side where positive, its upper side where negative.
type Multiplier struct {
	Row   int
	Value float64
}

// check refuses a program that says nothing definite.
func (p *Program) check() error {
	n := len(p.Cost)
	if len(p.Lower) != n || len(p.Upper) != n || len(p.Integer) != n {
		return flaw(nil, fmt.Sprintf("lists of %d costs, %d and %d bounds and %d kinds", n, len(p.Lower), len(p.Upper), len(p.Integer)), "as many of each")
	}
	for j, v := range p.Cost {
		if math.IsNaN(v) || math.IsInf(v, 0) || !sides(p.Lower[j], p.Upper[j]) {
			return flawOf(nil, aVariable, j, "a finite cost, and bounds that leave room", "costs %v and lies from %v to %v", v, p.Lower[j], p.Upper[j])
		}
	}
	for i, r := range p.Rows {
		if len(r.Cols) != len(r.Coefs) || !sides(r.Lower, r.Upper) {
			return flawOf(nil, aRow, i, "as many of each, and sides that leave room",
				"has %d columns, %d coefficients and the sides %v and %v", len(r.Cols), len(r.Coefs), r.Lower, r.Upper)
		}
		before := -1
		for k, j := range r.Cols {
			if j <= before || j >= n || math.IsNaN(r.Coefs[k]) || math.IsInf(r.Coefs[k], 0) {
				return flawOf(nil, aRow, i, "finite ones, at columns that rise",
					"has the coefficient %v at column %d of %d, after column %d", r.Coefs[k], j, n, before)
			}
			before = j
		}
	}
	return nil
}

// sides reports whether a pair of sides or bounds says something definite.
func sides(lower, upper float64) bool {
	return !math.IsNaN(lower) && !math.IsNaN(upper) && !math.IsInf(lower, 1) && !math.IsInf(upper, -1)
}

// numbers calls f with each number of the program.
func (p *Program) numbers(f func(float64)) {
	for _, list := range [3][]float64{p.Cost, p.Lower, p.Upper} {
		for _, v := range list {
			f(v)
		}
	}
	for _, r := range p.Rows {
		f(r.Lower)
		f(r.Upper)
		for _, v := range r.Coefs {
			f(v)
		}
	}
}
