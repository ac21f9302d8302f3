package scenarios

import (
	"fmt"
	"strings"

	"cartwright/catalog/quantity"
)

var loadKeys = []string{"name", "watts", "count", "power_factor", "leg", "circuit", "from", "to", "duty", "start", "dc"}

// readLoads reads the loads, listed or measured: a scenario has exactly one of the two.
func (s *Scenario) readLoads(top section, open opener) {
	listed, measured := top.has("loads"), top.has("measured")
	switch {
	case listed && measured:
		top.wrong("measured", "the loads are both listed and measured", "keep one of loads and measured")
	case !listed && !measured && !top.meant["loads"] && !top.meant["measured"]:
		top.wrong("loads", "the scenario has no loads", "add loads with a list of them, or measured: loads.csv")
	}
	if listed {
		s.Loads = top.loads(s.Rules)
		return
	}
	if name := top.words("measured", "loads.csv", ""); name != "" {
		s.Measured = top.measured(name, s.Rules, open)
	}
}

// loads reads the load list.
func (s section) loads(rules Rules) []Load {
	sections := s.items("loads", "a load", true, loadKeys)
	distinct(sections, "name")
	var loads []Load
	for _, v := range sections {
		l := Load{
			Name:        v.words("name", "kettle"),
			Watts:       v.quantity("watts", quantity.Power, above(0, maxPowerW)),
			Count:       v.integer("count", 1, maxCount, 1),
			PowerFactor: v.number("power_factor", above(0, 1), "0.8", defaultPowerFactor),
			Leg:         v.leg(rules),
			Circuit:     v.words("circuit", "bench", ""),
			Duty:        v.quantity("duty", quantity.Ratio, within(0, 1), 1),
			Start:       v.number("start", within(1, 100), "6", 1),
			DC:          v.truth("dc", false),
		}
		if n := v.nodes["watts"]; n != nil && strings.HasSuffix(strings.ToLower(strings.TrimSpace(n.value)), "hp") {
			v.doubtful("watts", "horsepower is what a motor gives at its shaft", "it draws more: write the watts on its plate, or its volts times its amperes")
		}
		if l.DC && v.has("leg") {
			v.wrong("leg", "leg: a load on the bus has none", "leave leg out, or dc")
		}
		l.AllDay, l.FromMin, l.ToMin = v.hours()
		loads = append(loads, l)
	}
	return loads
}

// leg reads which leg of a 120/240 V supply a load is on. A 230 V supply has one leg.
func (s section) leg(rules Rules) Leg {
	leg := Leg(s.choice("leg", []string{string(LegA), string(LegB), string(LegBoth), string(LegAuto)}, string(LegAuto)))
	if rules == IEC && leg != "" && leg != LegAuto {
		s.wrong("leg", fmt.Sprintf("leg: the iec rules have 230 V only, which has no leg %s", leg), "leave leg out")
	}
	return leg
}

// hours reads from when to when a load is on, in minutes after midnight. Both absent is all day.
func (s section) hours() (allDay bool, from, to int) {
	from, to = s.timeOfDay("from", false), s.timeOfDay("to", true)
	switch {
	case !s.has("from") && !s.has("to"):
		return true, 0, 0
	case !s.has("to"):
		s.wrong("from", "a load with from has no to", `add to, for example to: "22:00", or leave both out for all day`)
	case !s.has("from"):
		s.wrong("to", "a load with to has no from", `add from, for example from: "06:30", or leave both out for all day`)
	case from == to && from >= 0:
		s.wrong("to", "from and to are the same time", "leave both out for all day, or change one")
	}
	return false, from, to
}

// measured reads a measured load profile, given by its file name.
func (s section) measured(name string, rules Rules, open opener) *Measured {
	m := readProfile(name, s.r, s.nodes["measured"].pos, open)
	if m != nil && m.ByLeg && rules == IEC {
		s.wrong("measured", "measured: the iec rules have 230 V only, which has no legs",
			"write one column watts instead of watts_a and watts_b")
	}
	return m
}
