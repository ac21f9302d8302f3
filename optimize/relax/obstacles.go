package relax

import (
	"fmt"
	"strconv"

	"cartwright/catalog"
	"cartwright/optimize/bench"
	"cartwright/optimize/wiring"
)

// Where the catalogue has nothing for some part of every plan, the bench only notes that. What is missing is
// found here by going through the conditions in order: the first that no part meets of those left is to blame.

// Obstacles says what in the catalogue or the scenario leaves nothing to choose from, the most basic lack
// first; nothing where there is a choice for every part of a plan.
func Obstacles(b *bench.Bench) []string {
	if len(b.Reasons) == 0 {
		return nil
	}
	list := emptyFiles(b)
	add := func(words string) {
		if words != "" {
			list = append(list, words)
		}
	}
	if len(b.Supplies) == 0 {
		add(noSupply(b))
	}
	if len(b.Stacks) == 0 {
		add(noStack(b))
	}
	wired := true // every circuit can be wired
	for i := range b.Scenario.Circuits {
		c := &b.Scenario.Circuits[i]
		if d, listed := wiring.BranchDuty(b.Scenario, c); listed {
			if _, ok := b.RunOptions(d, true); !ok {
				add(b.NoRun(d, "circuit "+strconv.Quote(c.Name)))
				wired = false
			}
		}
		if r := c.Receptacle; r != nil && r.Count > 0 && len(b.Receptacles(r)) == 0 {
			add(noSundry(b, r.Role, r.RatingA, "circuit "+strconv.Quote(c.Name)))
		}
	}
	for i := range b.Scenario.Needs {
		n := &b.Scenario.Needs[i]
		switch {
		case n.Count == 0:
		case len(b.Sundries(n.Role, bench.AtLeast(n.RatingA))) == 0:
			add(noSundry(b, n.Role, n.RatingA, "needs"))
		case len(b.Supplies) > 0 && len(b.Sundries(n.Role, bench.AtLeast(b.NeedA(n)))) == 0:
			add(noSundry(b, n.Role, b.NeedA(n), "the bus current of the smallest inverter that serves"))
		case n.Role == wiring.RoleLoadCentre && wired && len(b.Supplies) > 0 && emptied(b, needSlot(n.Role, i)):
			add("no " + n.Role + " of the catalogue has enough spaces for the breakers of all circuits")
		}
	}
	if len(b.Casters) == 0 && len(b.Catalog.Casters) > 0 {
		add(noCasters(b))
	}
	if len(list) == 0 {
		return b.Reasons
	}
	return list
}

// needSlot returns the bench's name for the slot of a need, counted from 0.
func needSlot(role string, i int) string { return "need " + role + " " + strconv.Itoa(i+1) }

// emptied reports whether a slot of the bench has no option left.
func emptied(b *bench.Bench, slot string) bool {
	for i := range b.Fixed {
		if b.Fixed[i].Name == slot {
			return len(b.Fixed[i].Options) == 0
		}
	}
	return false
}

// emptyFiles names the kinds of part that the scenario needs and of which the catalogue has none at all.
func emptyFiles(b *bench.Bench) []string {
	runs := len(b.Scenario.Runs)+len(b.Scenario.Circuits) > 0
	devices := len(b.Scenario.Circuits) > 0
	for i := range b.Scenario.Runs {
		devices = devices || b.Scenario.Runs[i].OwnBreakerA <= 0
	}
	var list []string
	for _, kind := range []struct {
		what   string
		kind   catalog.Kind
		parts  int
		needed bool
	}{
		{"batteries", catalog.KindBattery, len(b.Catalog.Batteries), true},
		{"inverters", catalog.KindInverter, len(b.Catalog.Inverters), true},
		{"cables", catalog.KindCable, len(b.Catalog.Cables), runs},
		{"fuses or breakers", catalog.KindDevice, len(b.Catalog.Devices), devices},
		{"bus bars", catalog.KindBusbar, len(b.Catalog.Busbars), true},
		{"casters", catalog.KindCasters, len(b.Catalog.Casters), true},
		{"sundries", catalog.KindSundry, len(b.Catalog.Sundries), asksSundries(b)},
	} {
		if kind.parts == 0 && kind.needed {
			list = append(list, fmt.Sprintf("the catalogue has no %s: %s is missing or empty", kind.what, kind.kind.File()))
		}
	}
	return list
}

// asksSundries reports whether a circuit or a need asks for a sundry.
func asksSundries(b *bench.Bench) bool {
	for i := range b.Scenario.Circuits {
		if b.Scenario.Circuits[i].Receptacle != nil {
			return true
		}
	}
	return len(b.Scenario.Needs) > 0
}

// noSundry says that no sundry of a role has the rating that asker asks for.
func noSundry(b *bench.Bench, role string, ratingA float64, asker string) string {
	if len(b.Catalog.Sundries) == 0 {
		return "" // emptyFiles has said it
	}
	most, known := 0.0, false
	for i := range b.Catalog.Sundries {
		if x := &b.Catalog.Sundries[i]; x.Role == role {
			most, known = max(most, x.RatingA), true
		}
	}
	if !known {
		return fmt.Sprintf("the catalogue has no %s, which %s asks for", role, asker)
	}
	return fmt.Sprintf("the catalogue has no %s of %s A, as %s asks for; the largest has %s A", role, bench.Figure(ratingA), asker, bench.Figure(most))
}
