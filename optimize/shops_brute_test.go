package optimize_test

import (
	"fmt"
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize"
	"cartwright/optimize/question"
)

// shopCases is how many problems with six shops are compared with the enumeration, by each figure.
const shopCases = 6

// sixShops returns a random problem with six shops that ship some things for less or for nothing, and give quantity breaks.
func sixShops(seed uint64) question.Problem {
	const apart, shops = 11e9, 6
	p := randomProblem(seed)
	d := newDice(seed + apart)
	c := p.Catalog
	c.Offers = nil
	all := c.All()
	for i := range shops {
		ships := catalog.Cents(100 * d.from(2, 60))
		levels := [2]catalog.Cents{0, ships}
		if i == 0 {
			levels[0] = ships / 2
		}
		for _, at := range d.Perm(len(all))[:d.from(min(4, len(all)), min(9, len(all)))] {
			e := all[at]
			part := d.between(0.8, 1.1, 0.01)
			o := catalog.Offer{PartID: e.ID, Vendor: fmt.Sprintf("shop %d", i+1), MinQty: 1, Shipping: levels[d.from(0, 1)]}
			for {
				if o.Price = catalog.Cents(part * float64(e.Price)); e.Kind.ByLength() {
					m, _ := c.Metre(e.ID)
					o.Price, o.CentsPerM = 0, math.Round(part**m.Cents)
				}
				c.Offers = append(c.Offers, o)
				if o.MinQty > 1 || d.chance(60) {
					break
				}
				o.MinQty = float64(d.from(2, 4))
				part *= d.between(0.6, 0.95, 0.05)
				if d.chance(20) { // and the more is bought the less it takes to ship
					o.Shipping = levels[0]
				}
			}
		}
	}
	return p
}

// With six shops, too, the first ten plans are those of an enumeration.
func TestBruteForceOfSixShops(t *testing.T) {
	possible, looked := 0, 0
	for _, test := range []struct {
		by    question.By
		first uint64 // seed
	}{{question.ByCost, 31e6}, {question.ByLife, 32e6}, {question.ByMass, 33e6}, {question.ByEnergy, 34e6}} {
		t.Run(string(test.by), func(t *testing.T) {
			for seed := test.first; seed < test.first+shopCases*uint64(*times); seed++ {
				looked++
				if compare(t, seed, sixShops(seed), question.Options{By: test.by}) {
					possible++
				}
			}
		})
	}
	if cases := 4 * shopCases * *times; looked == cases && possible < cases/5 {
		t.Errorf("%d of %d have a plan: too few to tell much", possible, cases)
	}
}

// With six shops and a budget that is just enough for some plans, these are found: shipping that is too dear at some orders
// says nothing of others.
func TestBruteForceOfBudgetsAtShops(t *testing.T) {
	// Each of these once lost a plan so.
	seeds := []uint64{47e6 + 72, 47e6 + 495, 47e6 + 838}
	for seed := range uint64(2 * *times) {
		seeds = append(seeds, 35e6+seed)
	}
	possible := 0
	for _, seed := range seeds {
		p := sixShops(seed)
		best, err := optimize.Rank(t.Context(), p, question.Options{Plans: 1})
		if err != nil {
			t.Fatal(err)
		}
		if len(best.Plans) == 0 {
			continue
		}
		for _, more := range []catalog.Cents{0, 500, 8000, 20000} {
			s := *p.Scenario
			s.Limits.Budget = best.Plans[0].Cost - s.Sold + more
			q := question.Problem{Scenario: &s, Catalog: p.Catalog}
			if more > 0 { // the enumeration does not round each line of a bill
				if compare(t, seed, q, question.Options{}) {
					possible++
				}
				continue
			}
			if just, err := optimize.Rank(t.Context(), q, question.Options{Plans: 1}); err != nil || len(just.Plans) == 0 || just.Plans[0].Cost != best.Plans[0].Cost {
				t.Errorf("seed %d: a budget of just the best plan: %v, %v", seed, just, err)
			}
		}
	}
	if possible < 3*len(seeds)/2 {
		t.Errorf("%d of %d have a plan: too few to tell much", possible, 3*len(seeds))
	}
}
