package relax

import (
	"context"

	"cartwright/optimize/bench"
	"cartwright/optimize/question"
)

// Conflict finds a smallest set of limits that no plan can meet together; without any one of them some plan meets the
// others. Deleting one by one finds an irreducible set; then all smaller sets are tried.
func Conflict(ctx context.Context, p question.Problem, before *bench.Before) ([]Lever, error) {
	all := Levers(p.Scenario)
	contradict := func(kept []Lever) (bool, error) {
		possible, err := possibleWith(ctx, p, before, without(all, kept))
		return !possible, err
	}
	if none, err := contradict(nil); err != nil || none {
		return nil, err // no limit is to blame: the catalogue has nothing that serves
	}
	kept := append([]Lever(nil), all...)
	for i := 0; i < len(kept); {
		rest := append(append([]Lever(nil), kept[:i]...), kept[i+1:]...)
		still, err := contradict(rest)
		switch {
		case err != nil:
			return nil, err
		case still:
			kept = rest
		default:
			i++
		}
	}
	for size := 1; size < len(kept); size++ {
		if set, ok, err := firstSet(all, size, nil, contradict); ok || err != nil {
			return set, err
		}
	}
	return kept, nil
}

// without returns the levers that are not among the others.
func without(all, others []Lever) []Lever {
	var rest []Lever
	for _, l := range all {
		found := false
		for _, o := range others {
			found = found || o.Name == l.Name
		}
		if !found {
			rest = append(rest, l)
		}
	}
	return rest
}
