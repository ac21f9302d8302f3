package audit

import (
	"strings"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/chassis"
	"cartwright/scenarios"
)

// setDownFaults returns what the audit says of a cart whose modules are set down otherwise.
func setDownFaults(k *cart, stand stander) string {
	x := For(k.s, k.c)
	x.stand = stand
	for _, c := range x.Plan(k.p).Checks {
		if c.Name == ruleSetDown && !c.Passed {
			return c.Detail
		}
	}
	return ""
}

// However the places of modules are wrong, it is found; however kinds stand beside each other, it is right.
func TestModulesSetDownWrongly(t *testing.T) {
	for _, c := range []struct {
		name, want string
		do         func(sh *scenarios.Shelf, all []chassis.Standing) []chassis.Standing
	}{
		{"as they are", "", func(_ *scenarios.Shelf, all []chassis.Standing) []chassis.Standing { return all }},
		{"none", "have a place", func(*scenarios.Shelf, []chassis.Standing) []chassis.Standing { return nil }},
		{"one twice", "have a place", func(_ *scenarios.Shelf, all []chassis.Standing) []chassis.Standing { return append(all, all[0]) }},
		{"another in its place", "have a place", func(_ *scenarios.Shelf, all []chassis.Standing) []chassis.Standing {
			other := *all[0].Battery
			all[0].Battery = &other
			return all
		}},
		{"in each other", "in, or too near", func(_ *scenarios.Shelf, all []chassis.Standing) []chassis.Standing {
			for i := range all {
				all[i].AlongM, all[i].AcrossM, all[i].UpM = 0, 0, 0
			}
			return append(all, all...)
		}},
		{"beyond the end", "beyond", func(sh *scenarios.Shelf, all []chassis.Standing) []chassis.Standing {
			all[0].AlongM = sh.LengthM - all[0].LengthM + 0.001
			return all
		}},
		{"before the beginning", "beyond", func(_ *scenarios.Shelf, all []chassis.Standing) []chassis.Standing {
			all[0].AlongM = -0.001
			return all
		}},
		{"over the edge", "beyond", func(sh *scenarios.Shelf, all []chassis.Standing) []chassis.Standing {
			all[0].AcrossM = sh.DepthM - all[0].DepthM + 0.001
			return all
		}},
		{"through the shelf above", "beyond", func(sh *scenarios.Shelf, all []chassis.Standing) []chassis.Standing {
			all[0].UpM = sh.ClearHeightM - all[0].HighM + 0.001
			return all
		}},
		{"in the air", "in the air", func(_ *scenarios.Shelf, all []chassis.Standing) []chassis.Standing {
			all[0].UpM = 0.001
			return all
		}},
		{"laid down", "another size", func(_ *scenarios.Shelf, all []chassis.Standing) []chassis.Standing {
			all[0].HighM, all[0].DepthM = all[0].DepthM, all[0].HighM
			return all
		}},
		{"smaller", "another size", func(_ *scenarios.Shelf, all []chassis.Standing) []chassis.Standing {
			all[0].LengthM -= 0.001
			return all
		}},
		{"off the middle of the length", "nearer to the middle", func(_ *scenarios.Shelf, all []chassis.Standing) []chassis.Standing {
			for i := range all {
				all[i].AlongM += 0.001
			}
			return all
		}},
		{"off the middle of the depth", "nearer to the middle", func(_ *scenarios.Shelf, all []chassis.Standing) []chassis.Standing {
			for i := range all {
				all[i].AcrossM += 0.001
			}
			return all
		}},
	} {
		got := setDownFaults(newBarn(), func(sh *scenarios.Shelf, sets []chassis.Set) []chassis.Standing {
			if all := chassis.Stand(sh, sets); len(all) > 0 {
				return c.do(sh, all)
			}
			return nil
		})
		if (got == "") != (c.want == "") || !strings.Contains(got, c.want) {
			t.Errorf("%s: the audit says %q, want %q", c.name, got, c.want)
		}
	}
}

// Modules stand on their like, and on nothing else; a gap is kept beside each other.
func TestStacksAndGaps(t *testing.T) {
	low := &catalog.Battery{Part: catalog.Part{ID: "low", MassKg: 10}, LengthM: 0.2, WidthM: 0.1, HeightM: 0.1}
	wide := &catalog.Battery{Part: catalog.Part{ID: "wide", MassKg: 10}, LengthM: 0.2, WidthM: 0.1, HeightM: 0.1}
	sh := &scenarios.Shelf{LengthM: 1, DepthM: 0.1, ClearHeightM: 0.5, GapM: 0.02, Stack: 2}
	at := func(b *catalog.Battery, along, up float64) chassis.Standing {
		return chassis.Standing{Battery: b, AlongM: along, UpM: up, LengthM: b.LengthM, DepthM: b.WidthM, HighM: b.HeightM}
	}
	for _, c := range []struct {
		name, want string
		all        []chassis.Standing
	}{
		{"a stack", "", []chassis.Standing{at(low, 0, 0), at(low, 0, 0.1)}},
		{"on another kind", "stands across", []chassis.Standing{at(low, 0, 0), at(wide, 0, 0.1)}},
		{"over an edge", "stands across", []chassis.Standing{at(low, 0, 0), at(low, 0.01, 0.1)}},
		{"above, not on it", "in the air", []chassis.Standing{at(low, 0, 0), at(low, 0, 0.2)}},
		{"too near", "too near", []chassis.Standing{at(low, 0, 0), at(low, 0.219, 0)}},
		{"a gap apart", "", []chassis.Standing{at(low, 0, 0), at(low, 0.22, 0)}},
	} {
		if got := misplaced(sh, c.all, len(c.all)-1); (got == "") != (c.want == "") || !strings.Contains(got, c.want) {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}
