package optimize

import (
	"context"
	"errors"
	"strings"

	"cartwright/optimize/bench"
	"cartwright/optimize/milp"
	"cartwright/optimize/model"
	"cartwright/optimize/question"
	"cartwright/optimize/relax"
)

// FullModel writes the whole problem as one integer linear program: every supply, every battery, every
// option, with the objective of o.By in currency units or kilograms. It is what Rank solves in parts; any
// solver that reads MPS can check the first plan with it. A ratio is not a linear objective, so ByLife
// is an error. The error is question.ErrUnknown where the context ends before all is written.
func FullModel(ctx context.Context, p question.Problem, o question.Options) (*milp.Model, error) {
	b, err := bench.Lay(ctx, p, o.Must, &bench.Before{})
	if err != nil {
		return nil, err
	}
	if len(b.Reasons) > 0 {
		return nil, errors.New("there is nothing to choose from: " + strings.Join(relax.Obstacles(b), "; "))
	}
	full := model.Write(b, p.Scenario.Name, model.WholeSpace(ctx, b))
	if ctx.Err() != nil {
		return nil, question.ErrUnknown
	}
	switch o.By {
	case question.ByLife:
		return nil, errors.New("cost per lifetime kWh is a ratio, not a linear objective; write the model by cost or by mass")
	case question.ByEnergy:
		full.Model.Minimize(full.Shortfall())
	case question.ByMass:
		full.Model.Minimize(full.Mass)
	default:
		full.Model.Minimize(full.Cost)
	}
	return full.Model, full.Model.Err()
}
