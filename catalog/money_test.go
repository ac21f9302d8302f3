package catalog

import "testing"

// An exact half cent rounds up, also where it has no exact binary float.
func TestHalfCentsRoundUp(t *testing.T) {
	for _, c := range []struct {
		cents float64
		want  Cents
	}{
		{0.5, 1}, {1.5, 2}, {2.5, 3}, {-0.5, -1}, {0.49, 0},
		{100 * 736.545, 73655}, {100 * 1.005, 101}, {3 * 0.5, 2}, {1.1 * 5, 6}, {0.07 * 50, 4}, {0.35 * 10, 4},
	} {
		if got := RoundCents(c.cents); got != c.want {
			t.Errorf("%v cents are %d, want %d", c.cents, got, c.want)
		}
	}
}
