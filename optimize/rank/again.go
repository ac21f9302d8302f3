package rank

import (
	"context"
	"reflect"
	"sync"

	"cartwright/optimize/bench"
	"cartwright/optimize/question"
)

// Again ranks plans repeatedly as a scenario is changed, and keeps what takes long to lay out as long as only limits
// change. Its answers are those of Plans.
type Again struct {
	mu     sync.Mutex // held while what is kept is in use
	of     question.Problem
	before *bench.Before
}

// Plans ranks plans. While another call uses what is kept, this one lays out everything itself.
func (a *Again) Plans(ctx context.Context, p question.Problem, o question.Options) (*question.Result, error) {
	if p.Scenario == nil || p.Catalog == nil || !a.mu.TryLock() {
		return Plans(ctx, p, o)
	}
	defer a.mu.Unlock()
	if a.before == nil || !a.of.Scenario.SameButLimits(p.Scenario) || !reflect.DeepEqual(a.of.Catalog, p.Catalog) {
		a.of, a.before = p, &bench.Before{}
		return plans(ctx, p, o, a.before)
	}
	// What is kept points into the catalogue and the sun that it was laid out from, which are equal to these.
	s := *p.Scenario
	s.Sun = a.of.Scenario.Sun
	return plans(ctx, question.Problem{Scenario: &s, Catalog: a.of.Catalog}, o, a.before)
}
