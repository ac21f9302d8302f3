package ratings_test

import (
	"fmt"
	"slices"
	"testing"

	"cartwright/scenarios/ratings"
)

// The steps a branch circuit meets, NFPA 70 240.6(A).
func ExampleStandard() {
	fmt.Println(ratings.Standard("nec", "breaker")[:8])
	fmt.Println(ratings.Standard("iec", "fuse")[:8])
	// Output:
	// [15 20 25 30 35 40 45 50]
	// [2 4 6 10 16 20 25 32]
}

// TestStandard holds every rating of the four lists.
func TestStandard(t *testing.T) {
	// NFPA 70 240.6(A), 2017 to 2023, fuses and inverse-time breakers alike: a magazine's column of questions
	// on the Code and two further pages that quote the 2023 edition; three independent texts.
	necBoth := []float64{15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250,
		300, 350, 400, 450, 500, 600, 700, 800, 1000, 1200, 1600, 2000, 2500, 3000, 4000, 5000, 6000}
	// The same clause, further ratings of fuses; the same three texts.
	necFuses := []float64{1, 3, 6, 10, 601}
	// IEC 60898-1: two independent texts, but 8 and 13 A from memory.
	iecBreakers := []float64{6, 8, 10, 13, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125}
	// IEC 60269-1 and -2: one text.
	iecFuses := []float64{2, 4, 6, 10, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 355, 400,
		500, 630, 800, 1000}
	for _, tt := range []struct {
		rules, device string
		lists         [][]float64 // all of their ratings and no other
	}{
		{"nec", "breaker", [][]float64{necBoth}},
		{"nec", "fuse", [][]float64{necBoth, necFuses}},
		{"iec", "fuse", [][]float64{iecFuses}},
		// Breakers above 125 A come in the steps of fuses: common practice, no source.
		{"iec", "breaker", [][]float64{iecBreakers, iecFuses}},
		{"iec", "relay", nil},
		{"", "fuse", nil},
	} {
		t.Run(tt.rules+" "+tt.device, func(t *testing.T) {
			want := slices.Concat(tt.lists...)
			slices.Sort(want)
			want = slices.Compact(want)
			if got := ratings.Standard(tt.rules, tt.device); !slices.Equal(got, want) {
				t.Errorf("got %v, want %v", got, want)
			}
		})
	}
}

func TestStandardIsTheCallersOwn(t *testing.T) {
	ratings.Standard("nec", "fuse")[0] = -1
	if got := ratings.Standard("nec", "fuse")[0]; got != 1 {
		t.Errorf("after writing into a copy the least fuse is %g A, want 1", got)
	}
}

func TestAround(t *testing.T) {
	list := ratings.Standard("nec", "breaker")
	for _, tt := range []struct{ amps, below, above float64 }{
		{22, 20, 25},
		{20, 20, 20},
		{1, 0, 15},
		{7000, 6000, 0},
	} {
		below, above := ratings.Around(list, tt.amps)
		if below != tt.below || above != tt.above {
			t.Errorf("Around(%g) = %g, %g; want %g, %g", tt.amps, below, above, tt.below, tt.above)
		}
	}
}
