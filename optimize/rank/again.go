package rank

import (
	"context"
	"reflect"
	"sync"

	"cartwright/optimize/bench"
	"cartwright/optimize/question"
)

// Again ranks plans again and again as a scenario is changed, and keeps what is dear to lay out for as long as
// only limits move. Its answers are those of Plans.
type Again struct {
	mu     sync.Mutex // held while plans are ranked with what is kept
	of     question.Problem
	before *bench.Before
}

// Plans ranks plans. Where another call still uses what is kept, this one lays out everything itself.
func (a *Again) Plans(ctx context.Context, p question.Problem, o question.Options) (*question.Result, error) {
	if p.Scenario == nil || p.Catalog == nil || !a.mu.TryLock() {
		return Plans(ctx, p, o)
	}
	defer a.mu.Unlock()
	if a.before == nil || !a.of.Scenario.SameButLimits(p.Scenario) || !reflect.DeepEqual(a.of.Catalog, p.Catalog) {
		a.of, a.before = p, &bench.Before{}
		return plans(ctx, p, o, a.before)
	}
	// What is kept points into the catalogue and the sun that it was laid out from; these say the same.
	s := *p.Scenario
	s.Sun = a.of.Scenario.Sun
	return plans(ctx, question.Problem{Scenario: &s, Catalog: a.of.Catalog}, o, a.before)
}
