package relax

import (
	"context"

	"cartwright/optimize/bench"
	"cartwright/optimize/question"
	"cartwright/optimize/search"
)

// jointChange finds a smallest set of limits that together make a plan possible, and then for one after
// the other the least change that is enough while those after it are open.
func jointChange(ctx context.Context, p question.Problem, before *bench.Before, all []Lever) ([]question.Change, error) {
	set, err := smallestSet(ctx, p, before, all)
	if err != nil || set == nil {
		return nil, err
	}
	values := make([]float64, len(set))
	for i := range set {
		values[i] = set[i].End
	}
	var change question.Change
	for i := range set {
		others := append(append([]Lever(nil), set[:i]...), set[i+1:]...)
		open := append(append([]float64(nil), values[:i]...), values[i+1:]...)
		to, ok, err := leastChange(ctx, With(p, others, open), before, set[i])
		if err != nil {
			return nil, err
		}
		if !ok {
			return nil, nil // the engine contradicts itself: better no answer than a wrong one
		}
		values[i] = to
		change.Limits = append(change.Limits, set[i].Change(p, to))
	}
	return []question.Change{change}, nil
}

// possibleWith reports whether a plan is possible when some levers no longer limit anything.
func possibleWith(ctx context.Context, p question.Problem, before *bench.Before, set []Lever) (bool, error) {
	found, err := search.First(ctx, Opened(p, set), before, question.ByCost, true)
	return found != nil, err
}

// smallestSet returns the smallest set of levers, the first of its size in their order, that makes a plan
// possible when they no longer limit anything; all of them together do. It first finds the levers that every such set
// has: those without which all the others are not enough.
func smallestSet(ctx context.Context, p question.Problem, before *bench.Before, all []Lever) ([]Lever, error) {
	var needed, rest []Lever
	for i := range all {
		others := append(append([]Lever(nil), all[:i]...), all[i+1:]...)
		ok, err := possibleWith(ctx, p, before, others)
		if err != nil {
			return nil, err
		}
		if ok {
			rest = append(rest, all[i])
		} else {
			needed = append(needed, all[i])
		}
	}
	possible := func(set []Lever) (bool, error) {
		return possibleWith(ctx, p, before, append(append([]Lever(nil), needed...), set...))
	}
	for more := max(0, 2-len(needed)); more < len(rest); more++ {
		set, ok, err := firstSet(rest, more, nil, possible)
		if err != nil {
			return nil, err
		}
		if ok {
			return without(all, without(rest, set)), nil // in the order of all
		}
	}
	return all, nil
}

// firstSet returns the first set of chosen and size more levers that is possible, and whether there is one.
func firstSet(rest []Lever, size int, chosen []Lever, possible func([]Lever) (bool, error)) ([]Lever, bool, error) {
	if size == 0 {
		ok, err := possible(chosen)
		return chosen, ok, err
	}
	for i := 0; i+size <= len(rest); i++ {
		next := append(append([]Lever(nil), chosen...), rest[i])
		if set, ok, err := firstSet(rest[i+1:], size-1, next, possible); ok || err != nil {
			return set, ok, err
		}
	}
	return nil, false, nil
}
