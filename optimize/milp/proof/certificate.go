package proof

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
