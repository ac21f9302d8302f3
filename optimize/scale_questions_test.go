package optimize_test

import (
	"context"
	"fmt"
	"testing"
	"time"

	"cartwright/catalog"
	choices "cartwright/optimize/compare"
	"cartwright/optimize/doubt"
	"cartwright/optimize/frontier"
	"cartwright/optimize/next"
	"cartwright/optimize/question"
	"cartwright/optimize/value"
	"cartwright/optimize/why"
	"cartwright/scenarios"
)

// Every question is answered over a large catalogue of each family. A frontier has as many steps as it has, each a proof:
// it may be told as far as it came. The table of DEVELOPERS.md comes from
//
//	go test ./optimize -run TestScaleQuestions -scale -v -timeout 1h
func TestScaleQuestions(t *testing.T) {
	n, longest := 60, time.Minute
	if *scale {
		n = 1000
	}
	fmt.Println("| family, batteries | question | s (of the processor) |")
	fmt.Println("|---|---|---:|")
	for i := range families {
		if i > 0 && !*scale {
			break // one shows that every question is answered
		}
		p := Sized(i, n)
		p.Scenario.Savings = &scenarios.Savings{Now: catalog.CentsFrom(500), PerMonth: catalog.CentsFrom(200)}
		pair := func(at int) []choices.Line { return []choices.Line{{Part: p.Catalog.Batteries[at].ID, Count: 2}} }
		for _, ask := range []struct {
			name string
			ask  func(ctx context.Context) error
		}{
			{"why", func(ctx context.Context) error { _, err := why.Explain(ctx, p); return err }},
			{"value", func(ctx context.Context) error { _, err := value.Find(ctx, p); return err }},
			{"next", func(ctx context.Context) error { _, err := next.Find(ctx, p, next.Options{}); return err }},
			{"doubt", func(ctx context.Context) error {
				_, err := doubt.Run(ctx, p, doubt.Default(), question.Watch(nil))
				return err
			}},
			{"compare", func(ctx context.Context) error {
				_, err := choices.Find(ctx, p, [][]choices.Line{pair(n / 3), pair(n / 2)})
				return err
			}},
			{"frontier", func(ctx context.Context) error {
				f, err := frontier.Find(ctx, p, frontier.AxisAutonomy, question.Watch(nil))
				if err == nil && !f.Complete {
					fmt.Printf("| | %d steps proved | |\n", len(f.Steps))
				}
				return err
			}},
		} {
			if ask.name == "frontier" && !*scale {
				continue // TestShopQuestions asks it
			}
			ctx, stop := context.WithTimeout(t.Context(), longest)
			start := now()
			err := ask.ask(ctx)
			stop()
			fmt.Printf("| %s, %d | %s | %s |\n", families[i].name, n, ask.name, now().since(start))
			if err != nil {
				t.Errorf("%s, %d: %s: %v", families[i].name, n, ask.name, err)
			}
		}
	}
}
