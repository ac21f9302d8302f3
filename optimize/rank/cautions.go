package rank

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"cartwright/catalog"
	"cartwright/optimize/bench"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// Cautions returns the usual cautions, which go with every plan.
func Cautions() []string {
	return []string{
		"Stored energy does not switch off: a battery bus can burn, and a direct-current arc can blind and kill. Take off jewellery, insulate tools, fit the main fuse last.",
		"Bring strings to the same voltage before they are connected in parallel. Pre-charge the inverter's capacitors through a resistor before the main is closed; set its low-voltage cut-off at or above bus.low. Lithium cells must not be charged below 0 C.",
		"Local code and a licensed electrician decide. A figure from a table is a check, not a permission.",
		"Follow each maker's manual: it outranks this plan in torque, terminals, clearances, ventilation and parallel or series use.",
		"Lifting and rolling a heavy cart can crush. Strap the modules down, block the casters, and stay off slopes steeper than the plan's.",
	}
}

// shockCautions name what protects people at the outlets, which no plan checks, by rule set. Clauses from
// memory.
var shockCautions = map[scenarios.Rules]string{
	scenarios.NEC: "Not checked: ground-fault protection of the outlets (NEC 210.8), and the one bond of the inverter's neutral to the frame (NEC 250.30).",
	scenarios.IEC: "Not checked: residual-current protection of the outlets (IEC 60364-4-41, 411.3.3), and the one bond of the inverter's neutral to the frame (IEC 60364-4-41, 411.4).",
}

// cautions returns the usual cautions, those of the scenario, and those of the plans and their parts.
func cautions(b *bench.Bench, plans []plan.Plan) []string {
	out := append(Cautions(), shockCautions[b.Scenario.Rules])
	for _, kind := range []scenarios.RunKind{scenarios.RunString, scenarios.RunMain, scenarios.RunFeeder} {
		r := b.Scenario.Run(kind)
		switch {
		case r == nil:
			out = append(out, fmt.Sprintf("The scenario lists no %s run: its cable and protection are neither planned nor checked.", kind))
		case r.OwnBreakerA > 0 && kind == scenarios.RunMain:
			out = append(out, fmt.Sprintf("The main relies on a %g A breaker of the inverter's own: nothing at the bus bars protects the cable to it from what the batteries feed into a short circuit. A fuse at the bars is needed: without own_breaker one is planned.", r.OwnBreakerA))
		case r.OwnBreakerA > 0:
			out = append(out, fmt.Sprintf("The %s relies on a %g A breaker of the inverter's own: check that it has one and that its interrupting rating is enough.", kind, r.OwnBreakerA))
		}
	}
	if b.Scenario.Cart.Casters == 3 {
		out = append(out, "Three wheels stand on a triangle: two of them are taken to be a track apart at one end, the third in the middle of the other.")
	}
	if !b.Demand.LegsProven {
		out = append(out, "The loads left to the program were too many to find the very best split between the legs; theirs is a good one, and the plan was checked with it.")
	}
	out = append(out, planCautions(b, plans)...)
	return append(out, partCautions(b.Catalog, plans)...)
}

// partCautions returns what to keep in mind about the batteries of plans: the gas of flooded lead cells, and that
// modules are second-hand, where the catalogue says so.
func partCautions(c *catalog.Catalog, plans []plan.Plan) []string {
	installed := map[string]bool{}
	for i := range plans {
		for _, b := range plans[i].Core.Batteries {
			installed[b.Part] = true
		}
	}
	var flooded, used []string
	for i := range c.Batteries {
		b := &c.Batteries[i]
		if !installed[b.ID] {
			continue
		}
		if isFlooded(b.Chemistry) {
			flooded = append(flooded, b.ID)
		}
		if usedName.MatchString(b.Name) || usedNote.MatchString(b.Notes) {
			used = append(used, b.ID)
		}
	}
	var out []string
	if len(flooded) > 0 { // the clauses from memory
		out = append(out, strings.Join(flooded, ", ")+": flooded lead batteries give off explosive gas while charging. Give them fresh air (NEC 480.10(A), IEC 62485-2), keep sparks away, look after the water.")
	}
	if len(used) > 0 {
		out = append(out, strings.Join(used, ", ")+": second-hand; test capacity and resistance of each module.")
	}
	return out
}

// The words that say that a module is second-hand. In notes "used" may mean much else, unless they begin with it.
var (
	usedName = regexp.MustCompile(`(?i)\b(second[- ]hand|used)\b`)
	usedNote = regexp.MustCompile(`(?i)\bsecond[- ]hand\b|^used\b`)
)

// isFlooded reports whether a chemistry, which is free text, is that of open lead cells: flooded or wet, or lead that is
// not said to be sealed.
func isFlooded(chemistry string) bool {
	has := func(words ...string) bool {
		return slices.ContainsFunc(words, func(w string) bool { return strings.Contains(strings.ToLower(chemistry), w) })
	}
	return has("flooded", "wet") || has("lead") && !has("agm", "gel", "sealed", "vrla", "valve")
}
