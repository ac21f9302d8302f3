package bench

import (
	"slices"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// An owned battery that only a missing parallel_group keeps apart from alike ones is named once, with all of them.
func TestUngrouped(t *testing.T) {
	battery := func(id, chemistry, group string, volts float64) catalog.Battery {
		return catalog.Battery{Part: catalog.Part{ID: id}, Chemistry: chemistry, Group: group, NominalV: volts, MaxV: volts * 1.1, MaxSeries: 4}
	}
	p := func(have []string, batteries ...catalog.Battery) question.Problem {
		s := &scenarios.Scenario{Bus: scenarios.Bus{NominalV: 48, LowV: 46, HighV: 60}}
		for _, id := range have {
			s.Have = append(s.Have, scenarios.Holding{PartID: id, Count: 1})
		}
		return question.Problem{Scenario: s, Catalog: &catalog.Catalog{Batteries: batteries}}
	}
	const pair = "ember-5 and cask-15 state no common group, so they never share a bus (batteries.csv, parallel_group)"
	ember, cask := battery("ember-5", "LFP", "", 51.2), battery("cask-15", "lfp", "", 51.2)
	for _, c := range []struct {
		name string
		p    question.Problem
		want []string
	}{
		{"neither states one", p([]string{"ember-5"}, ember, cask), []string{pair}},
		{"the candidate states one", p([]string{"ember-5"}, ember, battery("cask-15", "LFP", "a", 51.2)), []string{pair}},
		{"both owned: said once", p([]string{"ember-5", "cask-15"}, ember, cask), []string{pair}},
		{"nothing owned", p(nil, ember, cask), nil},
		{"both state one, not the same", p([]string{"ember-5"}, battery("ember-5", "LFP", "a", 51.2), battery("cask-15", "LFP", "b", 51.2)), nil},
		{"another chemistry", p([]string{"ember-5"}, ember, battery("cask-15", "NMC", "", 51.2)), nil},
		{"another voltage", p([]string{"ember-5"}, ember, battery("cask-15", "LFP", "", 12.8)), nil},
		{"it does not fit the bus", p([]string{"ember-5"}, battery("ember-5", "LFP", "", 64), battery("cask-15", "LFP", "", 64)), nil},
		{"many", p([]string{"ember-5"}, ember, cask, battery("b", "LFP", "", 51.2), battery("c", "LFP", "", 51.2), battery("d", "LFP", "", 51.2), battery("e", "LFP", "", 51.2)),
			[]string{"ember-5 states no common group with cask-15, b, c and 2 more, so it never shares a bus with them (batteries.csv, parallel_group)"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := Ungrouped(c.p); !slices.Equal(got, c.want) {
				t.Errorf("Ungrouped = %q, want %q", got, c.want)
			}
		})
	}
}
