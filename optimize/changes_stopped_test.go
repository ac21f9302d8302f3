package optimize_test

import (
	"context"
	"reflect"
	"sync/atomic"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// patience is a context that is over once it was asked so often whether it is.
type patience struct {
	context.Context
	left atomic.Int64 // asked by several goroutines
}

func (p *patience) Err() error {
	if p.left.Add(-1) < 0 {
		return context.DeadlineExceeded
	}
	return nil
}

// Wherever the search is stopped, a result either has every change or says that it may lack some.
func TestChangesOfAStoppedSearch(t *testing.T) {
	s, err := scenarios.Demo("star-party")
	if err != nil {
		t.Fatal(err)
	}
	s.Limits.MassKg = 70 // beside the frame too little for any battery
	p := question.Problem{Scenario: s, Catalog: catalog.Embedded()}
	whole, err := optimize.Rank(context.Background(), p, question.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if len(whole.Changes) == 0 || whole.ChangesUnknown {
		t.Fatalf("unhurried: changes %v, unknown %v", whole.Changes, whole.ChangesUnknown)
	}
	unknown, known := 0, 0
	for asked := 0; asked < 1<<20 && known == 0; asked = 2*asked + 1 {
		ctx := &patience{Context: context.Background()}
		ctx.left.Store(int64(asked))
		r, err := optimize.Rank(ctx, p, question.Options{Workers: 1})
		if err != nil {
			t.Fatalf("stopped after %d: %v", asked, err)
		}
		switch {
		case r.Solver.Status != question.Infeasible:
			if r.ChangesUnknown {
				t.Errorf("stopped after %d: %s, and yet it tells of changes", asked, r.Solver.Status)
			}
		case r.ChangesUnknown:
			unknown++
		case !reflect.DeepEqual(r.Changes, whole.Changes):
			t.Errorf("stopped after %d: changes %+v are told as all there are, want %+v", asked, r.Changes, whole.Changes)
		default:
			known++
		}
	}
	if unknown == 0 || known == 0 {
		t.Errorf("%d searches were stopped among the changes, %d not at all", unknown, known)
	}
}
