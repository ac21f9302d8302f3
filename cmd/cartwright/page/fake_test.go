package page

import (
	"context"
	"encoding/json"
	"errors"
	"os"
	"sync/atomic"
	"testing"
	"time"

	"cartwright/catalog"
	"cartwright/cmd/cartwright/page/files"
	"cartwright/cmd/cartwright/report"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// fake is a planner that answers at once with plans that were ranked once; see testdata of picture.
type fake struct {
	plans []plan.Plan
	asked atomic.Int32
	slow  chan struct{} // ranking waits until it is closed, where there is one
}

func newFake(t testing.TB) *fake {
	t.Helper()
	text, err := os.ReadFile("../picture/testdata/cider-shed.json")
	if err != nil {
		t.Fatal(err)
	}
	f := &fake{}
	if err := json.Unmarshal(text, &f.plans); err != nil {
		t.Fatal(err)
	}
	return f
}

func (f *fake) Check(*scenarios.Scenario, *catalog.Catalog) error { return nil }

func (f *fake) Rank(ctx context.Context, _ *scenarios.Scenario, _ *catalog.Catalog, first func(*Answer), tell func(cells, found int)) (*Answer, error) {
	f.asked.Add(1)
	tell(1, 0)
	if f.slow != nil {
		select {
		case <-f.slow:
		case <-ctx.Done():
			return nil, ctx.Err()
		}
	}
	first(&Answer{Plans: f.plans[:1], Proof: []string{"Proved."}})
	return &Answer{Plans: f.plans, Proof: []string{"Proved."}}, nil
}

func (f *fake) Prices(context.Context, *scenarios.Scenario, *catalog.Catalog) ([]Price, error) {
	return []Price{{Limit: "mass", Step: "900 lb", Cost: "saves 10.00"}}, nil
}

func (f *fake) Compare(_ context.Context, _ *scenarios.Scenario, _ *catalog.Catalog, buy []string) (*Compared, error) {
	if buy[0] == "nothing" {
		return nil, errors.New("<b>nothing</b> does not begin with a count")
	}
	return &Compared{Choices: append([]string{"nothing bought"}, buy...), Rows: [][]string{append([]string{"cost"}, append([]string{""}, buy...)...)}}, nil
}

func (f *fake) Bought(s *scenarios.Scenario, _ *catalog.Catalog, p *plan.Plan) (scenarios.Owned, error) {
	have := append([]scenarios.Holding{}, s.Have...)
	for _, l := range p.Bill {
		if l.Kind == "battery" && l.Buy > 0 {
			have = append(have, scenarios.Holding{PartID: l.Part, Count: l.Buy})
		}
	}
	return scenarios.Owned{Have: have, Sold: s.Sold}, nil
}

func (f *fake) BoughtPart(s *scenarios.Scenario, _ *catalog.Catalog, part, _, _ string) (scenarios.Owned, error) {
	return scenarios.Owned{Have: append(append([]scenarios.Holding{}, s.Have...), scenarios.Holding{PartID: part, Count: 1}), Sold: s.Sold}, nil
}

func (f *fake) Sold(s *scenarios.Scenario, _ *catalog.Catalog, part, _, _ string) (scenarios.Owned, error) {
	var have []scenarios.Holding
	for _, h := range s.Have {
		if h.PartID != part {
			have = append(have, h)
		}
	}
	if len(have) == len(s.Have) {
		return scenarios.Owned{}, errors.New(part + " is not owned")
	}
	return scenarios.Owned{Have: have, Sold: s.Sold + 100}, nil
}

func (f *fake) JSON(_ *scenarios.Scenario, _ *catalog.Catalog, a *Answer) ([]byte, error) {
	return json.Marshal(a.Plans)
}

func (f *fake) Report(s *scenarios.Scenario, c *catalog.Catalog, a *Answer, show int) *report.Report {
	return &report.Report{Scenario: s, Catalog: c, Plans: a.Plans, Show: show, AsOf: time.Unix(0, 0)}
}

// demoFiles are those of a demo.
func demoFiles() Files {
	kept, err := files.Demo("cider-shed")
	if err != nil {
		panic(err) // it is built in
	}
	return Files{Scenario: "cider-shed/scenario.yaml", Store: kept}
}

// begun returns a session, ended with the test.
func begun(t testing.TB, f *fake, files Files) *session {
	t.Helper()
	ctx, cancel := context.WithCancel(t.Context())
	s, err := newSession(ctx, f, files)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		cancel()
		s.close()
		s.work.Wait()
	})
	return s
}

// settled waits until a session has planned.
func settled(t testing.TB, s *session) {
	t.Helper()
	for range 2000 {
		s.mu.Lock()
		done := !s.planning && s.answer != nil
		s.mu.Unlock()
		if done {
			return
		}
		time.Sleep(5 * time.Millisecond)
	}
	t.Fatal("it did not plan")
}
