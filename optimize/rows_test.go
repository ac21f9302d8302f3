package optimize_test

import (
	"context"
	"fmt"
	"slices"
	"testing"
	"time"

	"cartwright/catalog"
	"cartwright/optimize"
	"cartwright/optimize/question"
)

// Rows that are the same but for their id, as a list put together from many files has them, do not multiply the work:
// beyond those that the ranks asked for can be made of, they are left aside. The plans are those of a list cut to that
// length.
func TestEqualRows(t *testing.T) {
	rows := []int{60, 2_000}
	if *scale {
		rows = append(rows, 100_000)
	}
	for _, group := range []string{"", "same"} {
		var first []string
		for _, n := range rows {
			p := withRows(t, group, n)
			start, cpu := time.Now(), cpuSeconds()
			r, err := optimize.Rank(context.Background(), p, question.Options{Plans: 10})
			if err != nil {
				t.Fatal(err)
			}
			t.Logf("group %q, %d equal rows: %d plans, %d programs, %.1f s, of the processor %.1f s", group, n, len(r.Plans), r.Solver.Models,
				time.Since(start).Seconds(), cpuSeconds()-cpu)
			if r.Solver.Status != question.Optimal || len(r.Plans) != 10 {
				t.Fatalf("%d equal rows: %s with %d plans", n, r.Solver.Status, len(r.Plans))
			}
			var plans []string
			for i := range r.Plans {
				plans = append(plans, fmt.Sprint(r.Plans[i].Cost, r.Plans[i].Core, r.Plans[i].Proven))
			}
			if first == nil {
				first = plans
			} else if !slices.Equal(plans, first) {
				t.Errorf("%d equal rows have other plans than %d:\n%v\n%v", n, rows[0], plans, first)
			}
		}
	}
}

// withRows returns a problem of which one battery, the best, stands in the catalogue so many times.
func withRows(t *testing.T, group string, rows int) question.Problem {
	t.Helper()
	p := Generated(30, 6, 4)
	best, err := optimize.Rank(context.Background(), p, question.Options{Plans: 1})
	if err != nil || len(best.Plans) == 0 {
		t.Fatalf("no plan: %v", err)
	}
	at := slices.IndexFunc(p.Catalog.Batteries, func(b catalog.Battery) bool { return b.ID == best.Plans[0].Core.Batteries[0].Part })
	one := p.Catalog.Batteries[at]
	one.Group = group
	p.Catalog.Batteries = p.Catalog.Batteries[:2] // which are owned
	for i := range rows {
		one.ID = fmt.Sprintf("same-%06d", i)
		p.Catalog.Batteries = append(p.Catalog.Batteries, one)
	}
	return p
}
