package proof

import (
	"math"
	"strings"
	"testing"
)

var inf = math.Inf(1)

// cover is: make 3x + 2y + z least, x + y >= 1.5, x + z >= 1, x and y whole, all from 0 to 10.
func cover() *Program {
	return &Program{
		Cost:  []float64{3, 2, 1},
		Lower: []float64{0, 0, 0}, Upper: []float64{10, 10, 10},
		Integer: []bool{true, true, false},
		Rows: []Row{
			{Cols: []int{0, 1}, Coefs: []float64{1, 1}, Lower: 1.5, Upper: inf},
			{Cols: []int{0, 2}, Coefs: []float64{1, 1}, Lower: 1, Upper: inf},
		},
	}
}

// Its relaxation costs 4, at x = 1, y = 0.5; whole ones cost 5: 1, 1, 0 or 0, 2, 1.
func coverTree() *Tree {
	leaf := func(first, second float64) *Tree {
		return &Tree{Multipliers: []Multiplier{{0, first}, {1, second}}}
	}
	return &Tree{Column: 1, At: 0,
		Below: &Tree{Column: 0, At: 1, // y = 0
			Below: &Tree{Multipliers: []Multiplier{{0, 1}}, Impossible: true},
			Above: leaf(0, 0), // x >= 2: costs 6
		},
		Above: &Tree{Column: 1, At: 1,
			Below: &Tree{Column: 0, At: 0, // y = 1
				Below: &Tree{Multipliers: []Multiplier{{0, 1}}, Impossible: true},
				Above: leaf(0, 0), // x >= 1: 3 + 2
			},
			Above: leaf(0, 1), // y >= 2: 4 + 1 where z takes the row
		},
	}
}

func TestCheck(t *testing.T) {
	if err := Check(cover(), coverTree(), 5-1e-6); err != nil {
		t.Error(err)
	}
	if err := Check(cover(), coverTree(), 5); err == nil {
		t.Error("a bound that only points exactly on the rows keep was passed")
	}
	cost, err := CheckPoint(cover(), []float64{1, 1, 0})
	if err != nil || cost.RatString() != "5" {
		t.Error(cost, err)
	}
	root := &Tree{Multipliers: []Multiplier{{0, 2}, {1, 1}}}
	if err := Check(cover(), root, 4-1e-6); err != nil {
		t.Error(err)
	}
	if err := Check(cover(), root, 4.1); err == nil {
		t.Error("a bound above the relaxation was passed")
	}
}

// A bound is a double; the next one beyond what the multipliers come to is refused.
func TestOneUnitInTheLastPlace(t *testing.T) {
	p := cover()
	p.Rows = nil
	p.Lower = []float64{1, 1, 0.7}
	leaf := &Tree{}
	if err := Check(p, leaf, 5.7); err == nil { // 5 + 0.7 is rounded up in doubles
		t.Error("passed what only rounding reaches")
	}
	if err := Check(p, leaf, math.Nextafter(5.7, 0)); err != nil {
		t.Error(err)
	}
	p.Lower[2] = 0.125
	if err := Check(p, leaf, 5.125); err != nil {
		t.Error(err)
	}
	if err := Check(p, leaf, math.Nextafter(5.125, 6)); err == nil {
		t.Error("passed a leaf one unit in the last place short")
	}
}

func TestRefused(t *testing.T) {
	nan := math.NaN()
	deep := &Tree{}
	for range Deepest + 1 {
		deep = &Tree{Column: 0, At: 5, Below: deep, Above: &Tree{}}
	}
	endless := &Tree{Column: 0, At: 5, Above: &Tree{}}
	endless.Below = endless
	for _, c := range []struct {
		what  string
		tree  *Tree
		bound float64
		want  string
	}{
		{"no tree", nil, 1, "missing"},
		{"only one half", &Tree{Column: 0, At: 1, Below: &Tree{}}, 0, "missing"},
		{"only the other half", &Tree{Column: 0, At: 1, Above: &Tree{}}, 0, "missing"},
		{"a split of a continuous variable", &Tree{Column: 2, At: 1, Below: &Tree{}, Above: &Tree{}}, 0, "no integer"},
		{"a split of a variable that is not there", &Tree{Column: 3, At: 1, Below: &Tree{}, Above: &Tree{}}, 0, "no integer"},
		{"a split of a negative variable", &Tree{Column: -1, At: 1, Below: &Tree{}, Above: &Tree{}}, 0, "no integer"},
		{"a split that claims", &Tree{Column: 0, At: 1, Below: &Tree{}, Above: &Tree{}, Impossible: true}, 0, "claim"},
		{"a split with multipliers", &Tree{Column: 0, At: 1, Below: &Tree{}, Above: &Tree{}, Multipliers: []Multiplier{{0, 1}}}, 0, "claim"},
		{"a row that is not there", &Tree{Multipliers: []Multiplier{{2, 1}}}, 0, "row 2"},
		{"a negative row", &Tree{Multipliers: []Multiplier{{-1, 1}}}, 0, "row -1"},
		{"a multiplier that is no number", &Tree{Multipliers: []Multiplier{{0, nan}}}, 0, "NaN"},
		{"an infinite multiplier", &Tree{Multipliers: []Multiplier{{0, inf}}}, 0, "Inf"},
		{"the wrong sign", &Tree{Multipliers: []Multiplier{{0, -1}}}, 0, "no such side"},
		{"too little", &Tree{Multipliers: []Multiplier{{0, 1}}}, 4, "short"},
		{"an impossible leaf that is possible", &Tree{Impossible: true}, 4, "no more than 0"},
		{"impossible, said by nobody", &Tree{}, inf, "does not say"},
		{"too deep", deep, 0, "more than"},
		{"endless", endless, 0, "more than"},
		{"a bound that is no number", &Tree{}, nan, "NaN"},
		{"a bound without end", &Tree{}, -inf, "Inf"},
	} {
		err := Check(cover(), c.tree, c.bound)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v", c.what, err)
		}
	}
}

func TestRefusedPrograms(t *testing.T) {
	nan := math.NaN()
	for what, change := range map[string]func(p *Program){
		"a cost that is no number":        func(p *Program) { p.Cost[0] = nan },
		"an infinite cost":                func(p *Program) { p.Cost[0] = -inf },
		"a bound that is no number":       func(p *Program) { p.Lower[0] = nan },
		"nothing above a lower bound":     func(p *Program) { p.Lower[0] = inf },
		"nothing below an upper bound":    func(p *Program) { p.Upper[0] = -inf },
		"fewer bounds than variables":     func(p *Program) { p.Upper = p.Upper[:2] },
		"fewer kinds than variables":      func(p *Program) { p.Integer = p.Integer[:2] },
		"a side that is no number":        func(p *Program) { p.Rows[0].Upper = nan },
		"a row above everything":          func(p *Program) { p.Rows[0].Lower = inf },
		"a coefficient that is no number": func(p *Program) { p.Rows[0].Coefs[0] = nan },
		"an infinite coefficient":         func(p *Program) { p.Rows[0].Coefs[1] = inf },
		"fewer coefficients than columns": func(p *Program) { p.Rows[0].Coefs = p.Rows[0].Coefs[:1] },
		"a column that is not there":      func(p *Program) { p.Rows[0].Cols[1] = 3 },
		"a negative column":               func(p *Program) { p.Rows[0].Cols[0] = -1 },
		"a column twice":                  func(p *Program) { p.Rows[0].Cols[1] = 0 },
	} {
		p := cover()
		change(p)
		if err := Check(p, &Tree{}, 0); err == nil {
			t.Errorf("%s: a certificate was passed", what)
		}
		if _, err := CheckPoint(p, []float64{1, 1, 0}); err == nil {
			t.Errorf("%s: a point was passed", what)
		}
	}
}

func TestRefusedPoints(t *testing.T) {
	for what, x := range map[string][]float64{
		"below a bound":        {-1, 3, 2},
		"above a bound":        {11, 1, 1},
		"not whole":            {1, 1.5, 0},
		"a row short":          {1, 0, 0},
		"a row short by 2e-9":  {1, 1, 0},
		"no number":            {1, 1, math.NaN()},
		"infinite":             {1, 1, inf},
		"too few values":       {1, 1},
		"a lower bound by ulp": {1, 1, -math.SmallestNonzeroFloat64},
	} {
		p := cover()
		if what == "a row short by 2e-9" {
			p.Rows[0].Lower = 2 * (1 + 2e-9)
		}
		if _, err := CheckPoint(p, x); err == nil {
			t.Errorf("%s: passed", what)
		}
	}
}

// What counts as a point is what the proof excludes: a row may be off by 1e-9 of its largest term, and a bound on
// the cost allows for that.
func TestSlack(t *testing.T) {
	p := &Program{Cost: []float64{1}, Lower: []float64{0}, Upper: []float64{1e9}, Integer: []bool{false},
		Rows: []Row{{Cols: []int{0}, Coefs: []float64{1}, Lower: 1000, Upper: inf}}}
	leaf := &Tree{Multipliers: []Multiplier{{0, 1}}}
	if err := Check(p, leaf, 1000); err == nil {
		t.Error("excluded a point that counts")
	}
	if err := Check(p, leaf, 1000-2e-6); err != nil { // the wide bound of x plays no part
		t.Error(err)
	}
	if _, err := CheckPoint(p, []float64{1000 - 0.9e-6}); err != nil {
		t.Error(err)
	}
	if _, err := CheckPoint(p, []float64{1000 - 1.1e-6}); err == nil {
		t.Error("a point too far off was passed")
	}
}

// Bounds come from rows where a variable has none, from both sides and through one another, and from the cost.
func TestDerivedBounds(t *testing.T) {
	free := func(n int) (lower, upper []float64) {
		for range n {
			lower, upper = append(lower, -inf), append(upper, inf)
		}
		return lower, upper
	}
	lower, upper := free(3)
	p := &Program{Cost: []float64{1, 1, 0}, Lower: lower, Upper: upper, Integer: make([]bool, 3), Rows: []Row{
		{Cols: []int{0}, Coefs: []float64{-2}, Lower: -8, Upper: 6},         // x from -3 to 4
		{Cols: []int{0, 1}, Coefs: []float64{1, 1}, Lower: -5, Upper: 5},    // y from -9 to 8
		{Cols: []int{1, 2}, Coefs: []float64{1, -0.5}, Lower: 0, Upper: 10}, // z from -38 to 16
	}}
	c := newChecker(p, inf)
	for j, want := range [][2]float64{{-3, 4}, {-9, 8}, {-38, 16}} {
		lo, hi := value(c.root.lower[j], c.scale), value(c.root.upper[j], c.scale)
		if lo > want[0] || lo < want[0]-1e-6 || hi < want[1] || hi > want[1]+1e-6 {
			t.Errorf("variable %d lies from %v to %v; want about %v", j, lo, hi, want)
		}
	}
	if err := Check(p, &Tree{}, -12-1e-6); err != nil {
		t.Error(err)
	}
	// Of x, y >= 0 that have to come to 3, the cost bounds both; without a cost nothing does.
	p = &Program{Cost: []float64{1, 2}, Lower: []float64{0, 0}, Upper: []float64{inf, inf}, Integer: make([]bool, 2),
		Rows: []Row{{Cols: []int{0, 1}, Coefs: []float64{1, 1}, Lower: 3, Upper: inf}}}
	more := &Tree{Multipliers: []Multiplier{{0, 1 + 1e-12}}} // x has a reduced cost just below 0
	if err := Check(p, more, 3-1e-6); err != nil {
		t.Error(err)
	}
	if err := Check(p, &Tree{Multipliers: more.Multipliers, Impossible: true}, inf); err == nil {
		t.Error("a row that is kept far out was called impossible")
	}
}

// Bounds that leave a variable no value prove everything, and a split may make them so.
func TestNothingLeft(t *testing.T) {
	p := cover()
	p.Lower[0], p.Upper[0] = 3, 2
	if err := Check(p, &Tree{Impossible: true}, inf); err != nil {
		t.Error(err)
	}
	beyond := &Tree{Column: 0, At: 10, Below: coverTree(), Above: &Tree{}}
	if err := Check(cover(), beyond, 4.9); err != nil {
		t.Error(err)
	}
	last := &Tree{Column: 0, At: math.MaxInt64, Below: coverTree(), Above: &Tree{}}
	if err := Check(cover(), last, 4.9); err != nil {
		t.Error(err)
	}
	first := &Tree{Column: 0, At: math.MinInt64, Below: &Tree{}, Above: coverTree()}
	if err := Check(cover(), first, 4.9); err != nil {
		t.Error(err)
	}
}
