package optimize_test

import (
	"context"
	"errors"
	"slices"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/question"
	"cartwright/optimize/value"
)

// Each limit stops the count where hand arithmetic says. Without strings the small cart weighs: frame 20,
// inverter 10, bars 1, wheels 4 = 35 kg; a string adds a module 40, rope 1, a link 1 = 42 kg.
func TestWhatStopsTheCount(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(p question.Problem)
		want   value.Count
	}{
		{"two modules a shelf", func(question.Problem) {},
			value.Count{Strings: 4, Modules: 4, Limits: []string{value.StopsRoom}}},
		{"too tall for any shelf", func(p question.Problem) { p.Catalog.Batteries[0].HeightM = 0.21 },
			value.Count{Limits: []string{value.StopsRoom}}},
		{"shelves carry one each", func(p question.Problem) {
			p.Scenario.Cart.Shelves[0].MaxMassKg, p.Scenario.Cart.Shelves[1].MaxMassKg = 79, 79
		}, value.Count{Strings: 2, Modules: 2, Limits: []string{value.StopsShelfMass}}},
		{"35 + 3 * 42 = 161 kg", func(p question.Problem) { p.Scenario.Limits.MassKg = 161 },
			value.Count{Strings: 3, Modules: 3, Limits: []string{value.StopsMass}}},
		{"a little less", func(p question.Problem) { p.Scenario.Limits.MassKg = 160.9 },
			value.Count{Strings: 2, Modules: 2, Limits: []string{value.StopsMass}}},
		{"0.02 * 9.80665 * 119 = 23.34 N", func(p question.Problem) { p.Scenario.Limits.PushN = 23.4 },
			value.Count{Strings: 2, Modules: 2, Limits: []string{value.StopsPush}}},
		{"1.25 * 119 / 3 = 49.6 kg a wheel", func(p question.Problem) { p.Catalog.Casters[0].RatingKg = 50 },
			value.Count{Strings: 2, Modules: 2, Limits: []string{value.StopsCasters}}},
		{"the maker", func(p question.Problem) { p.Catalog.Batteries[0].MaxParallel = 3 },
			value.Count{Strings: 3, Modules: 3, Limits: []string{value.StopsParallel}}},
		{"a fault of two others is 4 kA, of three 6 kA", func(p question.Problem) { p.Catalog.Devices = p.Catalog.Devices[:1] },
			value.Count{Strings: 3, Modules: 3, Limits: []string{value.StopsFault}}},
		{"studs for an inverter and two strings", func(p question.Problem) { p.Catalog.Busbars[0].Studs = 3 },
			value.Count{Strings: 2, Modules: 2, Limits: []string{value.StopsStuds}}},
		{"two limits at once", func(p question.Problem) {
			p.Catalog.Busbars[0].Studs, p.Catalog.Batteries[0].MaxParallel = 3, 2
		}, value.Count{Strings: 2, Modules: 2, Limits: []string{value.StopsParallel, value.StopsStuds}}},
		{"room below for two, above for none: the rest may not stand so high", func(p question.Problem) {
			// A module at 20.05 m takes 40 kg * (tan 10 deg * 20.05 - 0.3) m = 129 kg m; all else gives 31.
			p.Scenario.Cart.Shelves[1].ElevationM = 20
		}, value.Count{Strings: 2, Modules: 2, Limits: []string{value.StopsRoom, value.StopsTilt}, Jointly: true}},
		{"one below by mass, one above by room", func(p question.Problem) {
			p.Scenario.Cart.Shelves[0].MaxMassKg = 79
			p.Scenario.Cart.Shelves[1].LengthM = 0.5
		}, value.Count{Strings: 2, Modules: 2, Limits: []string{value.StopsRoom, value.StopsShelfMass}, Jointly: true}},
		{"two strings carry the inverter, one fits", func(p question.Problem) {
			// 1000 W / (0.9 * 46 V) = 24.2 A
			p.Catalog.Batteries[0].MaxDischargeA = 20
			p.Catalog.Devices[0].RatingA, p.Catalog.Devices[1].RatingA = 30, 30
			p.Scenario.Cart.Shelves = p.Scenario.Cart.Shelves[:1]
			p.Scenario.Cart.Shelves[0].LengthM = 0.5
		}, value.Count{Limits: []string{value.StopsRoom}, Least: 2}},
		{"no bus bars", func(p question.Problem) { p.Catalog.Busbars = nil },
			value.Count{Limits: []string{value.StopsAll}}},
		{"autonomy, peaks and budget have no part in it", func(p question.Problem) {
			p.Scenario.AutonomyH, p.Scenario.Limits.Budget, p.Scenario.Loads[0].Watts = 700, 0, 5000
		}, value.Count{Strings: 4, Modules: 4, Limits: []string{value.StopsRoom}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := small()
			c.change(p)
			got := valued(t, p).Batteries[0].Count
			if got.Strings != c.want.Strings || got.Modules != c.want.Modules || got.Least != c.want.Least ||
				got.Jointly != c.want.Jointly || !slices.Equal(got.Limits, c.want.Limits) {
				t.Errorf("got %+v, want %+v", got, c.want)
			}
		})
	}
}

// countCases is how many random catalogues are counted by trying everything.
const countCases = 100

// The counts are those of an enumeration of all carts, and so is what stops one more.
func TestCountsByBruteForce(t *testing.T) {
	counted, stopped := 0, map[string]int{}
	for seed := uint64(5e6); seed < 5e6+uint64(countCases**times); seed++ {
		p := randomProblem(seed)
		v, err := value.Find(context.Background(), p)
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		for _, b := range v.Batteries {
			at := slices.IndexFunc(p.Catalog.Batteries, func(o catalog.Battery) bool { return o.ID == b.Part })
			want := mostByEnumeration(t, value.Unloaded(p), at)
			if b.Count.Strings != want {
				t.Errorf("seed %d, %s: %d strings, want %d", seed, b.Part, b.Count.Strings, want)
				continue
			}
			counted += min(want, 1)
			next := max(want+1, b.Count.Least)
			for _, limit := range b.Count.Limits {
				stopped[limit]++
				if !b.Count.Jointly && limit != value.StopsWiring && limit != value.StopsProtocols && buildable(t, value.Held(value.Unloaded(p), limit), at, next) {
					t.Errorf("seed %d, %s: %d strings are possible with %s alone", seed, b.Part, next, limit)
				}
			}
			if b.Count.Jointly && buildable(t, value.Held(value.Unloaded(p), b.Count.Limits...), at, next) {
				t.Errorf("seed %d, %s: %d strings are possible with %q", seed, b.Part, next, b.Count.Limits)
			}
		}
	}
	t.Logf("%d batteries of which some fit; stopped by %v", counted, stopped)
	if counted < countCases || len(stopped) < 6 {
		t.Errorf("too little was looked at: %d counts, stopped by %v", counted, stopped)
	}
}

// mostByEnumeration returns the most strings of a battery that some cart takes.
func mostByEnumeration(t *testing.T, p question.Problem, battery int) int {
	t.Helper()
	most, enough := 0, 12 // more than any shelf of a random cart holds
	if b := &p.Catalog.Batteries[battery]; b.MaxParallel > 0 {
		enough = b.MaxParallel
	}
	for n := 1; n <= enough; n++ {
		if buildable(t, p, battery, n) {
			most = n
		}
	}
	return most
}

// buildable reports whether some cart has so many strings of a battery and no other.
func buildable(t *testing.T, p question.Problem, battery, n int) bool {
	t.Helper()
	bat := &p.Catalog.Batteries[battery]
	if bat.MaxParallel > 0 && n > bat.MaxParallel {
		return false
	}
	e := newEnumeration(t, p)
	strings := make([]int, len(p.Catalog.Batteries))
	strings[battery] = n
	if len(e.placings(strings)) == 0 {
		return false
	}
	for i := range p.Catalog.Inverters {
		inv := &p.Catalog.Inverters[i]
		for units := 1; units <= inv.MaxUnits; units++ {
			if !e.serves(inv) || !e.talks(strings, inv) || !e.carries(strings, inv, units) {
				continue
			}
			if e.support(&total{batteries: strings, inverter: i, units: units}, question.ByCost) {
				return true
			}
		}
	}
	return false
}

// A count that is not known in the time given is an error, not a number.
func TestValueStopped(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := value.Find(ctx, small()); !errors.Is(err, question.ErrUnknown) {
		t.Errorf("error %v, want %v", err, question.ErrUnknown)
	}
}
