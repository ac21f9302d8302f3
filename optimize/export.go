package optimize

import (
	"errors"
	"strings"

	"cartwright/optimize/milp"
)

// FullModel writes the whole problem as one integer linear program: every supply, every battery, every
// option, with the objective of o.By in currency units or kilograms. It is what Rank solves in parts; any
// solver that reads MPS can check the first plan with it. A ratio is no linear objective, so ByLife
// cannot be written.
func FullModel(p Problem, o Options) (*milp.Model, error) {
	b, err := lay(p, o.Must, &laidBefore{})
	if err != nil {
		return nil, err
	}
	if len(b.reasons) > 0 {
		return nil, errors.New("there is nothing to choose from: " + strings.Join(b.obstacles(), "; "))
	}
	full := b.writeProgram(p.Scenario.Name, b.wholeSpace())
	switch o.By {
	case ByLife:
		return nil, errors.New("cost per lifetime kWh is a ratio, not a linear objective; write the model by cost or by mass")
	case ByMass:
		full.m.Minimize(full.mass)
	default:
		full.m.Minimize(full.cost)
	}
	return full.m, full.m.Err()
}

// wholeSpace is the space of every plan there is.
func (b *bench) wholeSpace() space {
	sp := space{settled: !b.tips.matter()}
	for i := range b.supplies {
		sp.supplies = append(sp.supplies, i)
	}
	for i := range b.stacks {
		sp.strings = append(sp.strings, stringRange{i, 0, b.stacks[i].most})
	}
	return sp
}
