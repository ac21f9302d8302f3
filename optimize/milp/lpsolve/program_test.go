package lpsolve

import (
	"math"
	"testing"
)

func TestNothingWrongCrossesOver(t *testing.T) {
	for what, f := range map[string]*program{
		"a column out of range": {begin: []int32{0, 1}, cols: []int32{2}, coefs: []float64{1}, kinds: []int32{1}, sides: []float64{1}, lower: []float64{0}, upper: []float64{1}},
		"column 0":              {begin: []int32{0, 1}, cols: []int32{0}, coefs: []float64{1}, kinds: []int32{1}, sides: []float64{1}, lower: []float64{0}, upper: []float64{1}},
		"a column twice":        {begin: []int32{0, 2}, cols: []int32{1, 1}, coefs: []float64{1, 1}, kinds: []int32{1}, sides: []float64{1}, lower: []float64{0}, upper: []float64{1}},
		"no number":             {begin: []int32{0}, costCols: []int32{1}, costs: []float64{math.NaN()}, lower: []float64{0}, upper: []float64{1}},
		"a side too large":      {begin: []int32{0, 1}, cols: []int32{1}, coefs: []float64{1}, kinds: []int32{1}, sides: []float64{1e31}, lower: []float64{0}, upper: []float64{1}},
	} {
		if f.check() == nil {
			t.Errorf("%s: passed", what)
		}
	}
}
