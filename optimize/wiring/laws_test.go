package wiring_test

import (
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"

	"pgregory.net/rapid"
)

// sizesOf returns the sizes of a rule set, rising.
func sizesOf(r wiring.Rules) []catalog.Size {
	if r == wiring.For(scenarios.IEC) {
		return iecSizes
	}
	return necSizes
}

// drawnOption draws an option of a listed copper cable.
func drawnOption(t *rapid.T, r wiring.Rules) wiring.Option {
	insulationC := rapid.SampledFrom([]float64{70, 75, 90}).Draw(t, "insulation")
	return wiring.Option{
		Cable: copperCable(rapid.SampledFrom(sizesOf(r)).Draw(t, "size"), insulationC),
		Sets:  rapid.IntRange(1, 2).Draw(t, "sets"), Device: device("fuse", rapid.SampledFrom([]float64{20, 100, 125}).Draw(t, "rating")),
		Devices: 2,
		Ground:  copperCable("4 AWG", 75),
	}
}

// deviceDuty draws a duty that buys its device.
func deviceDuty(t *rapid.T) wiring.Duty {
	d := drawnDuty(t)
	d.OwnBreakerA, d.Fine = 0, false
	return d
}

func TestLongerRunNeverDropsLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawnRules(t)
		d, o := deviceDuty(t), drawnOption(t, r)
		before := r.Check(d, o, 0).DropPct
		d.LengthM += rapid.Float64Range(0, 20).Draw(t, "more")
		if after := r.Check(d, o, 0).DropPct; after < before {
			t.Fatalf("%v %% before, %v %% after", before, after)
		}
	})
}

func TestBiggerCableNeverAllowedLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawnRules(t)
		d, o := deviceDuty(t), drawnOption(t, r)
		sizes := sizesOf(r)
		i := rapid.IntRange(0, len(sizes)-1).Draw(t, "small")
		j := rapid.IntRange(i, len(sizes)-1).Draw(t, "big")
		small := r.Check(d, changed(o, func(o *wiring.Option) { o.Cable = copperCable(sizes[i], 90) }), 0)
		big := r.Check(d, changed(o, func(o *wiring.Option) { o.Cable = copperCable(sizes[j], 90) }), 0)
		if big.AllowedA < small.AllowedA || big.DropPct > small.DropPct {
			t.Fatalf("%s %v A %v %%, %s %v A %v %%", sizes[i], small.AllowedA, small.DropPct, sizes[j], big.AllowedA, big.DropPct)
		}
	})
}

func TestHotterNeverAllowedMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawnRules(t)
		d, o := deviceDuty(t), drawnOption(t, r)
		before := r.Check(d, o, 0).AllowedA
		d.AmbientC += rapid.Float64Range(0, 40).Draw(t, "hotter")
		if after := r.Check(d, o, 0).AllowedA; after > before {
			t.Fatalf("%v A before, %v A after", before, after)
		}
	})
}

func TestMoreBundledNeverAllowedMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawnRules(t)
		d, o := deviceDuty(t), drawnOption(t, r)
		before := r.Check(d, o, 0).AllowedA
		d.Bundled += rapid.IntRange(0, 20).Draw(t, "more")
		if after := r.Check(d, o, 0).AllowedA; after > before {
			t.Fatalf("%v A before, %v A after", before, after)
		}
	})
}

// TestFaultOnlyTakesAway: what serves carries its design current and breaks the fault, and a stronger
// fault can only take options away.
func TestFaultOnlyTakesAway(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawnRules(t)
		d, o := deviceDuty(t), drawnOption(t, r)
		weak := rapid.Float64Range(0, 40000).Draw(t, "fault")
		strong := weak + rapid.Float64Range(0, 40000).Draw(t, "more")
		if r.Check(d, o, strong).OK() && !r.Check(d, o, weak).OK() {
			t.Fatalf("serves at %v A and not at %v A", strong, weak)
		}
		if res := r.Check(d, o, weak); res.OK() && (res.AllowedA < d.DesignA*(1-1e-9) || res.InterruptingA < weak) {
			t.Fatalf("serves %v A behind %v A: %+v", d.DesignA, weak, res)
		}
	})
}

// TestSourcesStated: every table, formula, rule and practice of this room and those within is listed
// once, with its source and confidence.
func TestSourcesStated(t *testing.T) {
	type entry struct{ name, source string }
	seen := map[entry]bool{}
	for _, s := range wiring.Sources() {
		e := entry{s.Name, s.Source}
		if s.Kind == "" || s.Name == "" || s.Source == "" || s.Confidence == "" || seen[e] {
			t.Errorf("source %+v has an empty field or stands twice", s)
		}
		seen[e] = true
	}
	if want := 15 + 5 + 7 + 4 + 3 + 2 + 14 + 13; len(seen) != want {
		t.Errorf("%d sources, want %d: paths, faults, devices, sun, conductor, raceway, nec, iec", len(seen), want)
	}
}

// TestChecksStated: every check of an option that is judged in full has a name of its own and a source.
func TestChecksStated(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawnRules(t)
		names := map[string]bool{}
		for _, c := range r.Check(drawnDuty(t), drawnOption(t, r), 1000).Checks {
			if c.Name == "" || c.Source == "" || names[c.Name] {
				t.Fatalf("check %+v has an empty field or stands twice", c)
			}
			names[c.Name] = true
		}
	})
}
