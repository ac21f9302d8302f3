package ratings_test

import (
	"fmt"
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

func TestStandard(t *testing.T) {
	for _, tt := range []struct {
		rules, device string
		count         int
		has, hasNot   []float64
	}{
		// 37 ratings of 240.6(A) and, for fuses, 5 more.
		{"nec", "breaker", 37, []float64{15, 110, 225, 700, 6000}, []float64{1, 10, 16, 55, 601}},
		{"nec", "fuse", 42, []float64{1, 3, 6, 10, 15, 601, 6000}, []float64{2, 16, 63}},
		{"iec", "fuse", 24, []float64{2, 4, 16, 63, 355, 1000}, []float64{8, 13, 15, 60}},
		// 14 of IEC 60898-1, and of IEC 60269 the two below 6 A and the ten above 125 A.
		{"iec", "breaker", 26, []float64{2, 8, 13, 125, 160, 1000}, []float64{15, 30, 60}},
		{"iec", "relay", 0, nil, []float64{16}},
		{"", "fuse", 0, nil, []float64{16}},
	} {
		t.Run(tt.rules+" "+tt.device, func(t *testing.T) {
			list := ratings.Standard(tt.rules, tt.device)
			if len(list) != tt.count {
				t.Errorf("got %d ratings, want %d: %v", len(list), tt.count, list)
			}
			for i := 1; i < len(list); i++ {
				if !(list[i-1] < list[i]) {
					t.Errorf("%g stands before %g, want the list to rise", list[i-1], list[i])
				}
			}
			for _, a := range tt.has {
				if !ratings.Is(list, a) {
					t.Errorf("%g A is missing", a)
				}
			}
			for _, a := range tt.hasNot {
				if ratings.Is(list, a) {
					t.Errorf("%g A is listed", a)
				}
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
