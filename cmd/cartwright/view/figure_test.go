package view

import (
	"math"
	"testing"
)

func TestFigures(t *testing.T) {
	for _, c := range []struct{ name, got, want string }{
		{"rounded", fixed(1.25001, 1), "1.3"},
		{"no negative zero", fixed(-0.001, 2), "0.00"},
		{"negative", fixed(-0.05, 2), "-0.05"},
		{"infinite", fixed(math.Inf(1), 2), "no limit"},
		{"not a number", fixed(math.NaN(), 2), "?"},
		{"plus", signed(2.5, 1), "+2.5"},
		{"minus", signed(-2.5, 1), "-2.5"},
		{"same", signed(-0.0001, 2), "="},
		{"short whole", short(24, 1), "24"},
		{"short hundred", short(100, 0), "100"},
		{"short part", short(19.50, 2), "19.5"},
		{"stated", stated(0, 1), "-"},
		{"lowered rounds down", lenient(19.59, 24, "h"), "19.5"},
		{"raised rounds up", lenient(337.91, 300, "kg"), "338"},
		{"floating point misses a whole figure", lenient(19.499999999999, 24, "h"), "19.5"},
		{"money to the cent, upward", lenient(1000.001, 900, "USD"), "1000.01"},
		{"one", count(1, "plan", "plans"), "1 plan"},
		{"many", count(10, "plan", "plans"), "10 plans"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if c.got != c.want {
				t.Errorf("got %q, want %q", c.got, c.want)
			}
		})
	}
}
