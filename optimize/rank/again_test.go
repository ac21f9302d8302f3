package rank

import (
	"encoding/json"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// As limits move to and fro, what is kept answers as if all were laid out anew, and the first plan is told on the
// way as it ranks in the end.
func TestAgainAnswersAsPlans(t *testing.T) {
	for _, demo := range []string{"cider-shed", "goat-dairy"} {
		var a Again
		laid := 0
		for _, change := range []func(*scenarios.Scenario){
			func(*scenarios.Scenario) {},
			func(s *scenarios.Scenario) { s.Limits.Reserve += 0.03 },
			func(s *scenarios.Scenario) { s.AutonomyH *= 0.8 },
			func(s *scenarios.Scenario) { s.Limits.MassKg *= 0.9 },
			func(s *scenarios.Scenario) { s.Limits.TiltDeg += 6 },
			func(s *scenarios.Scenario) { s.Have = nil }, // another problem: what is kept is of no use
			func(s *scenarios.Scenario) { s.Have, s.Limits.Reserve = nil, 0 },
		} {
			s, err := scenarios.Demo(demo)
			if err != nil {
				t.Fatal(err)
			}
			change(s)
			p := question.Problem{Scenario: s, Catalog: catalog.Embedded()}
			was := a.before
			var first *question.Result
			got, err := a.Plans(t.Context(), p, question.Options{Plans: 3, First: func(r *question.Result) { first = r }})
			if err != nil {
				t.Fatal(err)
			}
			if a.before != was {
				laid++
			}
			want, err := Plans(t.Context(), p, question.Options{Plans: 3})
			if err != nil {
				t.Fatal(err)
			}
			if text(t, got.Plans) != text(t, want.Plans) || text(t, got.Cautions) != text(t, want.Cautions) {
				t.Errorf("%s: again it is\n%s\nwant\n%s", demo, text(t, got.Plans), text(t, want.Plans))
			}
			if len(got.Plans) > 0 && (first == nil || text(t, first.Plans) != text(t, got.Plans[:1]) || len(first.Cautions) == 0) {
				t.Errorf("%s: the first plan was told as %+v", demo, first)
			}
		}
		if laid != 2 {
			t.Errorf("%s: %d times all was laid out anew, want 2", demo, laid)
		}
	}
}

func text(t *testing.T, v any) string {
	t.Helper()
	b, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}
