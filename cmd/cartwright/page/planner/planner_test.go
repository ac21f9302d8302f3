package planner

import (
	"context"
	"encoding/json"
	"errors"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"cartwright/catalog"
	"cartwright/cmd/cartwright/page"
	"cartwright/scenarios"
)

// starParty returns a demo with the batteries of a copy of the catalogue changed.
func starParty(t *testing.T, change func(*catalog.Battery)) (*scenarios.Scenario, *catalog.Catalog) {
	t.Helper()
	s, err := scenarios.Demo("star-party")
	if err != nil {
		t.Fatal(err)
	}
	c := *catalog.Embedded()
	c.Batteries = append([]catalog.Battery{}, c.Batteries...)
	for i := range c.Batteries {
		change(&c.Batteries[i])
	}
	return s, &c
}

func ranked(t *testing.T, p *Planner, s *scenarios.Scenario, c *catalog.Catalog) *page.Answer {
	t.Helper()
	a, err := p.Rank(t.Context(), s, c, func(*page.Answer) {}, func(int, int) {})
	if err != nil || len(a.Plans) == 0 {
		t.Fatalf("%+v, %v", a, err)
	}
	return a
}

// A battery that is owned and has no parallel group is told of in what the page shows, as "plan" tells of it.
func TestMissingGroupsAreTold(t *testing.T) {
	s, c := starParty(t, func(b *catalog.Battery) { b.Group = "" })
	p := &Planner{Today: time.Now}
	body, err := p.Report(s, c, ranked(t, p, s, c), 0).Body()
	if err != nil || !strings.Contains(string(body), "parallel_group") {
		t.Errorf("it is not told (%v)", err)
	}
	s, c = starParty(t, func(b *catalog.Battery) { b.Group = "all" })
	if body, err = p.Report(s, c, ranked(t, p, s, c), 0).Body(); err != nil || strings.Contains(string(body), "parallel_group") {
		t.Errorf("it is told where no group is missing (%v)", err)
	}
}

// A search is paused again and again, hears of a stop in a pause, and comes to the same answer with pauses as without.
func TestASearchPauses(t *testing.T) {
	s, c := starParty(t, func(*catalog.Battery) {})
	plain := ranked(t, &Planner{Today: time.Now}, s, c)
	var pauses, after atomic.Int64
	paused := ranked(t, &Planner{Today: time.Now, Pause: func() { pauses.Add(1) }}, s, c)
	was, err := json.Marshal(plain.Plans)
	if err != nil {
		t.Fatal(err)
	}
	is, err := json.Marshal(paused.Plans)
	if err != nil || string(was) != string(is) || pauses.Load() < 100 {
		t.Errorf("%d pauses, the same plans: %v, %v", pauses.Load(), string(was) == string(is), err)
	}
	ctx, stop := context.WithCancel(t.Context())
	p := &Planner{Today: time.Now, Pause: func() {
		if after.Add(1) == 20 {
			stop()
		}
	}}
	if a, err := p.Rank(ctx, s, c, func(*page.Answer) {}, func(int, int) {}); err == nil && len(a.Plans) == len(plain.Plans) || err != nil && !errors.Is(err, context.Canceled) {
		t.Errorf("stopped it gives %v, %v", a, err)
	}
	if n := after.Load(); n > pauses.Load()/2 {
		t.Errorf("stopped after 20 pauses it went on for %d of %d", n, pauses.Load())
	}
}
