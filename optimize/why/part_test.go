package why

import (
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/market"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// TestPricedByLength: what is bought by length takes the price that is tried, for a metre. Conduit and sections once kept
// their own, so that conduit was said to stay out of every plan even as a gift.
func TestPricedByLength(t *testing.T) {
	p := question.Problem{Scenario: &scenarios.Scenario{}, Catalog: &catalog.Catalog{
		Cables:   []catalog.Cable{{Part: catalog.Part{ID: "red"}, CentsPerM: 300}},
		Conduits: []catalog.Conduit{{Part: catalog.Part{ID: "emt"}, CentsPerM: 400}},
		Sections: []catalog.Section{{Part: catalog.Part{ID: "tube"}, CentsPerM: 500}},
	}}
	for _, id := range []string{"red", "emt", "tube"} {
		q := priced(p, id, 7)
		if got := market.New(q.Scenario, q.Catalog).Part(id).Cents; got != 7 {
			t.Errorf("%s at 7 cents a metre: the market has %g", id, got)
		}
		if got := market.New(p.Scenario, p.Catalog).Part(id).Cents; got == 7 {
			t.Errorf("%s: the problem's own price changed", id)
		}
	}
}
