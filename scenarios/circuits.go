package scenarios

import (
	"fmt"
	"slices"

	"cartwright/catalog/problem"
)

// CircuitNamed returns the circuit with a name, or nil.
func (s *Scenario) CircuitNamed(name string) *Circuit {
	i := slices.IndexFunc(s.Circuits, func(c Circuit) bool { return c.Name == name })
	if i < 0 {
		return nil
	}
	return &s.Circuits[i]
}

// checkCircuitsOfLoads reports loads on a circuit that is not there, or on one that does not suit them by name,
// voltage or leg. Whether the loads of a circuit fit its device is judged where loads are put on circuits.
func (s *Scenario) checkCircuitsOfLoads(r *reader) {
	legs := map[string]Leg{} // of circuits of 120 V, by the loads that name both
	for i := range s.Loads {
		l := &s.Loads[i]
		wrong := func(key, wrong, right string) {
			r.problems.Add(s.Pos(fmt.Sprintf("loads[%d].%s", i, key)), wrong, right)
		}
		if l.Circuit == "" {
			s.checkAnyCircuit(l, wrong)
			continue
		}
		c := s.CircuitNamed(l.Circuit)
		switch {
		case c == nil:
			s.noCircuit(l.Circuit, wrong)
		case l.DC != c.DC:
			current := map[bool]string{true: "direct", false: "alternating"}
			wrong("circuit", fmt.Sprintf("circuit: %q has %s current, the load takes %s", c.Name, current[c.DC], current[l.DC]),
				"name another circuit, or change dc of the load or volts of the circuit")
		case c.Volts == 240 && (l.Leg == LegA || l.Leg == LegB):
			wrong("leg", fmt.Sprintf("leg: the circuit %q of 240 V is on both legs", c.Name), "leave leg out")
		case c.Volts == 240 && l.Leg == LegAuto:
			l.Leg = LegBoth
		case c.Volts == 120 && l.Leg == LegBoth:
			wrong("leg", fmt.Sprintf("leg: the circuit %q of 120 V is on one leg", c.Name), "name a circuit of 240 V, or leave leg out")
		case c.Volts == 120 && (l.Leg == LegA || l.Leg == LegB):
			if other := legs[c.Name]; other != "" && other != l.Leg {
				wrong("leg", fmt.Sprintf("leg: the circuit %q has a load on leg %s already, and is on one leg", c.Name, other),
					"write the same leg for all of its loads, or leave leg out")
			}
			legs[c.Name] = l.Leg
		}
	}
}

// noCircuit reports the name of a circuit that is not there.
func (s *Scenario) noCircuit(name string, wrong func(key, wrong, right string)) {
	var names []string
	for _, c := range s.Circuits {
		names = append(names, c.Name)
	}
	right := "name one of circuits, or add it there"
	if near := problem.Nearest(name, names); near != "" {
		right = fmt.Sprintf("did you mean %q?", near)
	}
	wrong("circuit", fmt.Sprintf("circuit: no circuit is called %q", name), right)
}

// checkAnyCircuit reports a load that names no circuit where no circuit has its voltage.
func (s *Scenario) checkAnyCircuit(l *Load, wrong func(key, wrong, right string)) {
	has := func(volts float64) bool {
		return slices.ContainsFunc(s.Circuits, func(c Circuit) bool { return !c.DC && c.Volts == volts })
	}
	if s.Rules != NEC || l.DC || !has(120) && !has(240) {
		return
	}
	switch {
	case l.Leg == LegBoth && !has(240):
		wrong("leg", "leg: a load of both legs needs a circuit of 240 V, and there is none", "add one to circuits, or leave leg out")
	case l.Leg != LegBoth && !has(120):
		wrong("name", fmt.Sprintf("the load %q of one leg needs a circuit of 120 V, and there is none", l.Name),
			"add one to circuits, or name the circuit of 240 V that the load is on")
	}
}
