package optimize_test

import (
	"context"
	"fmt"
	"time"

	"cartwright/catalog"
	"cartwright/optimize"
	"cartwright/scenarios"
)

// A demo is planned from the catalogue that comes with the program; the first two of ten plans are printed.
func Example() {
	ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
	defer cancel()
	s, err := scenarios.Demo("star-party")
	if err != nil {
		panic(err)
	}
	p := optimize.Problem{Scenario: s, Catalog: catalog.Embedded()}
	r, err := optimize.Rank(ctx, p, optimize.Options{Plans: 2})
	if err != nil {
		panic(err)
	}
	for _, plan := range r.Plans {
		fmt.Printf("plan %d: audited %v, proven %v, costs as much as the first or more: %v\n",
			plan.Rank, plan.Audit.Passed, plan.Proven, plan.Cost >= r.Plans[0].Cost)
	}
	// Output:
	// plan 1: audited true, proven true, costs as much as the first or more: true
	// plan 2: audited true, proven true, costs as much as the first or more: true
}
