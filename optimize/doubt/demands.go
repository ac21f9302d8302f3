package doubt

import (
	"fmt"

	"cartwright/optimize/energy"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// circuit is a circuit and the loads that a plan has on it.
type circuit struct {
	of    *scenarios.Circuit
	loads []int
}

// circuitsOf looks up the loads that a plan puts on the circuits.
func circuitsOf(s *scenarios.Scenario, p *plan.Plan) []circuit {
	var list []circuit
	placed := make([]bool, len(s.Loads))
	for _, told := range p.Circuits {
		for c := range s.Circuits {
			if s.Circuits[c].Name != told.Circuit {
				continue
			}
			x := circuit{of: &s.Circuits[c]}
			for _, name := range told.Loads {
				for i := range s.Loads { // two loads of a name take their turns
					if s.Loads[i].Name == name && !placed[i] {
						placed[i] = true
						x.loads = append(x.loads, i)
						break
					}
				}
			}
			list = append(list, x)
		}
	}
	return list
}

// demands has by candidate the demand of the loads as drawn. Candidates that put the loads on the same legs
// share a demand.
type demands struct {
	s     *scenarios.Scenario
	loads [][]scenarios.Load // by assignment, with every leg fixed
	group []int              // by candidate
	of    []*energy.Demand   // by candidate
	drawn [][]scenarios.Load // by assignment
}

// newDemands fixes the legs of the loads for each candidate. With a supply of a single leg they do not matter, and all
// loads are put on leg A.
func newDemands(s *scenarios.Scenario, list []*candidate) *demands {
	d := &demands{s: s, of: make([]*energy.Demand, len(list))}
	seen := map[string]int{}
	for _, c := range list {
		key := fmt.Sprint(c.p.Legs)
		at, known := seen[key]
		if !known {
			at = len(d.loads)
			seen[key] = at
			d.loads = append(d.loads, onLegs(s, c.p.Legs))
		}
		d.group = append(d.group, at)
	}
	return d
}

// onLegs returns the loads with those of leg auto put on the given legs.
func onLegs(s *scenarios.Scenario, legs []plan.LegLoad) []scenarios.Load {
	settled := append(s.Loads[:0:0], s.Loads...)
	between := map[string]bool{}
	for i := range s.Circuits {
		between[s.Circuits[i].Name] = s.Circuits[i].Volts == splitV
	}
	for i := range settled {
		l := &settled[i]
		if l.DC || l.Leg != scenarios.LegAuto {
			continue
		}
		l.Leg = scenarios.LegA
		if l.Circuit != "" && between[l.Circuit] {
			l.Leg = scenarios.LegBoth
		}
		for _, put := range legs {
			if put.Load == l.Name {
				l.Leg = scenarios.Leg(put.Leg)
			}
		}
	}
	return settled
}

// draw works out the demand of the loads drawn.
func (d *demands) draw(by *dice) error {
	drawn := make([]*energy.Demand, len(d.loads))
	d.drawn = make([][]scenarios.Load, len(d.loads))
	for at := range d.loads {
		s := *d.s
		s.Circuits = nil // the loads' circuits are fixed, and their currents checked by broken
		s.Loads = append(d.loads[at][:0:0], d.loads[at]...)
		for i := range s.Loads {
			s.Loads[i].Watts *= by.load[i]
		}
		if s.Measured != nil {
			s.Measured = scaled(s.Measured, by.load[0])
		}
		d.drawn[at] = s.Loads
		var err error
		if drawn[at], err = energy.DemandOf(&s); err != nil {
			return err
		}
	}
	for i, at := range d.group {
		d.of[i] = drawn[at]
	}
	return nil
}

// splitV is the volts between the legs.
const splitV = 240

// scaled returns measured loads times a factor.
func scaled(m *scenarios.Measured, factor float64) *scenarios.Measured {
	out := *m
	times := func(watts []float64) []float64 {
		list := make([]float64, len(watts))
		for i, w := range watts {
			list[i] = factor * w
		}
		return list
	}
	out.LegA, out.LegB = times(m.LegA), times(m.LegB)
	return &out
}
