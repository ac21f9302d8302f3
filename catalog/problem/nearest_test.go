package problem_test

import (
	"strings"
	"testing"
	"time"

	"cartwright/catalog/problem"
)

func TestNearest(t *testing.T) {
	columns := []string{"id", "mass_kg", "mass_lb", "max_v", "max_series", "price_per_m", "price", "sundries"}
	for _, test := range []struct{ name, want string }{
		{"max_c", "max_v"},
		{"MAX_V", "max_v"},
		{"pirce", "price"},
		{"max_serie", "max_series"},
		{"mass", "mass_kg"}, // the beginning of two, of which the first is taken
		{"price_per", "price_per_m"},
		{"ma", ""},         // two letters are too few for a beginning
		{"mxa_v", "max_v"}, // neighbours that changed places
		{"pirc", ""},       // not even with two changes
		{"ie", ""},         // half of it would have to change
		{"mas_v", "max_v"},
		{"minor", ""}, // shares two letters of five with max_v
		{"studs", ""},
		{"sundry", "sundries"}, // begins right
		{"sundri", "sundries"},
		{"idea", ""}, // id is too short to be its beginning
		{"quandary", ""},
		{"max_serious", "max_series"},
		{"", ""},
		{"telephone", ""},
		{strings.Repeat("max_v", 21), ""},
	} {
		t.Run(test.name, func(t *testing.T) {
			if got := problem.Nearest(test.name, columns); got != test.want {
				t.Errorf("got %q, want %q", got, test.want)
			}
		})
	}
	if got := problem.Nearest("sundries", []string{"battery", "sundry"}); got != "sundry" {
		t.Errorf("of sundries %q is the nearest", got)
	}
	if got := problem.Nearest("x", nil); got != "" {
		t.Errorf("of no names %q is the nearest", got)
	}
}

// A lost quote may make a name of a whole file; comparing that with every part would take minutes.
func TestNearestOfAVeryLongNameIsQuick(t *testing.T) {
	long := strings.Repeat("a", 16<<20)
	begin := time.Now()
	for range 1000 {
		if got := problem.Nearest(long, []string{"aa", "ab"}); got != "" {
			t.Fatalf("got %q", got)
		}
	}
	if took := time.Since(begin); took > time.Second { // it takes microseconds; one comparison takes a second
		t.Errorf("took %v", took)
	}
}
