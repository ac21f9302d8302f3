package view

import (
	"fmt"
	"strings"

	"cartwright/optimize/plan"
	"cartwright/optimize/question"
)

// impossible says that there is no plan, and the smallest changes that would make one possible.
func (p Plans) impossible() sheet {
	s := sheet{{title: "No plan for " + p.Scenario.Name + " meets all limits."}}
	var single, joint []string
	for _, c := range p.Result.Changes {
		if len(c.Limits) == 1 {
			single = append(single, p.units().change(c.Limits[0]))
			continue
		}
		var parts []string
		for _, l := range c.Limits {
			parts = append(parts, p.units().change(l))
		}
		joint = append(joint, strings.Join(parts, " and "))
	}
	if len(p.Result.Reasons) > 0 {
		s = append(s, obstacles(p.Result.Reasons))
	}
	unknown := p.Result.ChangesUnknown
	switch {
	case unknown && len(single) == 0:
		s[0].prose = []string{"Whether a change of the limits would make one possible is not known: the search for changes was stopped before every one was looked into."}
	case len(single) > 0:
		if unknown {
			s[0].prose = []string{"Not every change of the limits was looked into before the search was stopped: whether others than those below would do as well is not known."}
		}
		title := "Any one of these changes alone makes a plan possible:"
		if len(single) == 1 {
			title = "This change alone makes a plan possible:"
		}
		s = append(s, section{title: title, bullets: single})
	case len(joint) > 0:
		s[0].prose = []string{"No change of a single limit is enough."}
	case len(p.Result.Reasons) > 0:
		s[0].prose = []string{"No change of the limits alone helps."}
	default:
		s[0].prose = []string{"No change of the limits was found that helps; the catalogue may hold no parts that fit this bus and these loads."}
	}
	if len(joint) > 0 {
		s = append(s, section{title: "Changed together, these make a plan possible:", bullets: joint})
	}
	return append(s, p.proofOfNone())
}

// obstacles lists what other than a limit rules out every plan.
func obstacles(reasons []string) section {
	return section{title: "What stands in the way:", bullets: reasons}
}

// change returns "autonomy 24 h -> 19.5 h", the new figure rounded so that it is enough; money has its
// two decimals.
func (u units) change(c question.LimitChange) string {
	to := lenient(u.figure(c.To, c.Unit), u.figure(c.From, c.Unit), u.unit(c.Unit))
	if c.Name == plan.LimitBudget {
		to = fixed(roundedAway(c.To, c.From, 2), 2)
	}
	return fmt.Sprintf("%s %s -> %s", c.Name, u.asked(c), withUnit(to, u.unit(c.Unit)))
}

// asked returns the limit as the scenario has it: "24 h", "900.00 USD".
func (u units) asked(c question.LimitChange) string {
	if c.Name == plan.LimitBudget {
		return withUnit(fixed(c.From, 2), c.Unit)
	}
	return withUnit(visible(u.figure(c.From, c.Unit), 2), u.unit(c.Unit))
}

// withUnit returns a figure with its unit, where it has one.
func withUnit(figure, unit string) string {
	if unit == "" {
		return figure
	}
	return figure + " " + unit
}

// proofOfNone says how it is known that there is no plan.
func (p Plans) proofOfNone() section {
	s := p.Result.Solver
	if s.Models == 0 {
		return section{title: "Proof", prose: []string{
			"Proven impossible without the solver: the parts there are, and bounds on what they cost, weigh and hold, leave no plan.",
		}}
	}
	return section{title: "Proof", prose: []string{
		"Proven impossible. " + Work(s),
	}}
}
