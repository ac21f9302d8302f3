package audit

import (
	"strings"
	"testing"

	"cartwright/catalog"
	"cartwright/scenarios"
)

// newStable is the barn's cart under the iec rules: cables of like areas in mm2, a breaker of a standard
// rating of theirs, and grounds as large as the line (IEC 60364-5-54 table 54.2).
func newStable() *cart {
	k := newBarn()
	k.s.Name, k.s.Rules = "stable", scenarios.IEC
	k.resize(map[string]catalog.Size{"g1": "35 mm2", "g3": "25 mm2", "g1-0": "50 mm2", "g8": "10 mm2", "g10": "10 mm2", "g12": "4 mm2"})
	k.cable("g8").OuterM, k.cable("g10").OuterM = 0.005, 0.005 // table 5 of the nec's chapter 9 has no mm2
	k.s.Circuits[1].DeviceA, k.device("b15-1").RatingA = 16, 16
	k.restate()
	return k
}

// newBooth is the fair's cart under the nec rules: cables of like areas in gauges, two sets of 1/0 AWG
// (NEC 310.10(H)(1): none smaller), devices of 125 % of the current, and a circuit of 20 A, which a listed
// size of ground can be too thin for (table 250.122).
func newBooth() *cart {
	k := newFair()
	k.s.Name, k.s.Rules = "booth", scenarios.NEC
	k.resize(map[string]catalog.Size{"c50": "1/0 AWG", "c35": "1/0 AWG", "c1.5": "12 AWG", "c4": "10 AWG"})
	for _, id := range []string{"gg-10", "gg-10-b", "gg-10-in"} {
		k.device(id).RatingA = 20
	}
	k.s.Circuits[0].DeviceA, k.s.Recharge.Supply.DeviceA = 20, 20
	k.s.Run(scenarios.RunMain).OwnBreakerA = 150
	k.restate()
	return k
}

func (k *cart) resize(sizes map[string]catalog.Size) {
	for i := range k.c.Cables {
		k.c.Cables[i].Size = sizes[k.c.Cables[i].ID]
	}
}

// carts are the good plans: each of the two made by hand, and its twin under the other rule set.
var carts = map[string]func() *cart{"barn, nec": newBarn, "fair, iec": newFair, "stable, iec": newStable, "booth, nec": newBooth}

// twins breaks the twin of each mutation's cart in the same way. The same checks find it, or those that
// ofTwin tells.
func twins(all []mutation) (others []mutation) {
	for _, m := range all {
		twin := newStable
		if m.fresh().s.Name == "fair" {
			twin = newBooth
		}
		if want, known := ofTwin[m.name]; known {
			m.want = want
		}
		m.fresh, m.name = twin, m.name+", under the other rules"
		others = append(others, m)
	}
	return others
}

// ofTwin is what finds a mutation of a twin, where the rule sets differ.
var ofTwin = map[string][]string{
	// The 125 % is the nec's alone.
	"too much on a circuit for hours":          {},
	"main too thin for what the charger gives": {},
	"feeder too weak for all on one leg":       {},
	"three sets of a solar run":                {"solar parallel sets"},
	"a solar cable in the heat":                {"solar corrected ampacity", "solar cable protected"},
	// So is the growth of a ground with an enlarged line.
	"a ground not enlarged with its line": {},
	// The nec knows no 160 A, and lets a 1/0 AWG of 60 C terminals have 125 A.
	"fuse on the main, too large for its overload": {"main standard rating", "main cable protected"},
	// Gauges are in none of the iec tables.
	"small conductor of a string": {ruleBusCurrent, "string cable listed"},
	"small conductor of a main":   {"main cable listed"},
	// The ground follows the whole line area under iec (IEC 60364-5-54 table 54.2).
	"three sets of a feeder": {"feeder parallel sets", "feeder ground size", "feeder conduit fill"},
	"three sets of an inlet": {"inlet parallel sets", "inlet ground size"},
	"three sets of a main":   {"main parallel sets", "bond ground size"},
	"three sets of a branch": {"branch parallel sets", "branch ground size"},
	// The nec has aluminium, which carries less (table 310.16).
	"cable of aluminium under iec": {"main terminal ampacity", "main cable protected"},
}

// onlyIn are the checks that one rule set makes alone.
func onlyIn(rule string) scenarios.Rules {
	switch {
	case strings.HasSuffix(rule, " device listed"), strings.HasSuffix(rule, " small conductor"):
		return scenarios.NEC
	case strings.HasSuffix(rule, " fuse overload"):
		return scenarios.IEC
	}
	return ""
}

// Every check has a mutation that it must find under each rule set that makes it, and fails under no other.
func TestEveryRuleHasAMutationUnderBothRuleSets(t *testing.T) {
	for _, set := range []scenarios.Rules{scenarios.NEC, scenarios.IEC} {
		found := map[string]bool{}
		for _, m := range mutations {
			if m.fresh().s.Rules == set {
				for _, name := range m.want {
					found[name] = true
				}
			}
		}
		for _, r := range Rules() {
			applies := onlyIn(r.Name) == "" || onlyIn(r.Name) == set
			if found[r.Name] != applies {
				t.Errorf("%s: %q applies: %t; has a mutation: %t", set, r.Name, applies, found[r.Name])
			}
		}
	}
}
