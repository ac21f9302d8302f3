package bench

import (
	"fmt"
	"strings"

	"cartwright/catalog"
	"cartwright/optimize/energy"
	"cartwright/optimize/question"
)

// Apart says that two batteries never share a bus.
func Apart(a, b string) string { return ApartFrom(a, []string{b}) }

// mostApart is how many batteries a sentence names at most.
const mostApart = 3

// ApartFrom says that a battery never shares a bus with any of several.
func ApartFrom(a string, others []string) string {
	switch n := len(others); {
	case n == 1:
		return fmt.Sprintf("%s and %s state no common group, so they never share a bus", a, others[0])
	case n > mostApart:
		others = append(append([]string(nil), others[:mostApart]...), fmt.Sprintf("%d more", n-mostApart))
	}
	last := len(others) - 1
	return fmt.Sprintf("%s states no common group with %s and %s, so it never shares a bus with them", a, strings.Join(others[:last], ", "), others[last])
}

// Ungrouped says for each owned battery which others it could share a bus with if a parallel_group were stated: those
// that fit the bus and are alike, where one of the two states none.
func Ungrouped(p question.Problem) []string {
	owned := map[string]bool{}
	for _, h := range p.Scenario.Have {
		owned[h.PartID] = owned[h.PartID] || h.Count > 0
	}
	fits := func(b *catalog.Battery) bool { _, ok := energy.Fits(p.Scenario.Bus, b); return ok }
	var list []string
	for i := range p.Catalog.Batteries {
		a := &p.Catalog.Batteries[i]
		if !owned[a.ID] || !fits(a) {
			continue
		}
		var others []string
		for j := range p.Catalog.Batteries {
			b := &p.Catalog.Batteries[j]
			said := owned[b.ID] && j <= i // of two owned batteries the first has named it
			if said || !fits(b) || a.Group != "" && b.Group != "" || !alike(a, b) {
				continue
			}
			others = append(others, b.ID)
		}
		if len(others) > 0 {
			list = append(list, ApartFrom(a.ID, others)+" (batteries.csv, parallel_group)")
		}
	}
	return list
}

// alike reports whether two batteries are of one chemistry and one voltage, as those in parallel have to be. Common
// practice, no source.
func alike(a, b *catalog.Battery) bool {
	return strings.EqualFold(a.Chemistry, b.Chemistry) && a.NominalV == b.NominalV
}
