package optimize_test

import (
	"encoding/csv"
	"math"
	"math/big"
	"strings"
	"testing"
	"testing/fstest"

	"cartwright/catalog"
	"cartwright/optimize"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// A catalogue and a scenario written in pounds, inches, feet and degrees Fahrenheit give the same plans as
// the same in kilograms, metres and degrees Celsius.
func TestLawUnits(t *testing.T) {
	asIs := func(_ *testing.T, text string) string { return text }
	for seed := uint64(9e6); seed < 9e6+40; seed++ {
		p := func() question.Problem {
			d := drafted(seed)
			return writable(question.Problem{Scenario: d.s, Catalog: d.c})
		}
		text := scenarioText(p().Scenario)
		inUnits := func(catalogue, scenario func(*testing.T, string) string) []plan.Plan {
			q := question.Problem{Scenario: opened(t, scenario(t, text)), Catalog: rewritten(t, p().Catalog, catalogue)}
			if err := optimize.Check(q); err != nil {
				t.Fatal(err)
			}
			return rank(t, q, question.Options{}).Plans
		}
		was := inUnits(asIs, asIs)
		for how, is := range map[string][]plan.Plan{
			"both in US units": inUnits(inUS, scenarioInUS), "the catalogue in US units": inUnits(inUS, asIs), "the scenario in US units": inUnits(asIs, scenarioInUS),
			"never written": rank(t, p(), question.Options{}).Plans,
		} {
			sameUnits(t, p().Scenario.Name+", "+how, was, is)
		}
	}
}

// writable makes of a problem one that files can hold: metres are sold for whole cents, and an inverter has no
// breaker in the strings.
func writable(p question.Problem) question.Problem {
	for i := range p.Scenario.Have {
		if h := &p.Scenario.Have[i]; h.ByLength && h.Sell != nil {
			h.SellCentsPerM = math.Round(h.SellCentsPerM)
			*h.Sell = catalog.Cents(h.SellCentsPerM)
		}
	}
	for i := range p.Catalog.Inverters {
		x := &p.Catalog.Inverters[i]
		x.LegSurgeW = math.Max(x.LegSurgeW, x.LegW)
	}
	if r := p.Scenario.Run(scenarios.RunString); r != nil {
		r.OwnBreakerA, r.LinkM = 0, 0.3 // as it is where nothing is said
	}
	return p
}

// sameUnits reports an error where plans differ in more than the last digits of a mass.
func sameUnits(t *testing.T, what string, was, is []plan.Plan) {
	t.Helper()
	if len(is) != len(was) {
		t.Errorf("%s: %d plans, in metric units %d", what, len(is), len(was))
		return
	}
	for i := range is {
		a, b := &was[i], &is[i]
		if core(a) != core(b) || a.Cost != b.Cost || math.Abs(a.MassKg-b.MassKg) > 1e-9*a.MassKg {
			t.Errorf("%s: plan %d is %s at %s, %g kg; in metric units %s at %s, %g kg",
				what, i+1, core(b), b.Cost, b.MassKg, core(a), a.Cost, a.MassKg)
		}
	}
}

// usUnits are the headers of the unit pairs, and how many of the second make one of the first: the
// international yard and pound agreement of 1959, 1 lb = 0.45359237 kg, 1 in = 25.4 mm, 1 ft = 0.3048 m.
var usUnits = []struct{ metric, us, each string }{
	{"_kg_per_m", "_lb_per_ft", "0.3048/0.45359237"},
	{"_per_m", "_per_ft", "0.3048"},
	{"_kg", "_lb", "1/0.45359237"},
	{"_mm", "_in", "1/25.4"},
	{"min_m", "min_ft", "1/0.3048"},
}

// rewritten writes a catalogue as CSV files, changes them and reads them.
func rewritten(t *testing.T, c *catalog.Catalog, change func(*testing.T, string) string) *catalog.Catalog {
	t.Helper()
	files := fstest.MapFS{}
	put := func(name string, write func(*strings.Builder) error) {
		var b strings.Builder
		if err := write(&b); err != nil {
			t.Fatal(err)
		}
		files[name] = &fstest.MapFile{Data: []byte(change(t, b.String())), Mode: 0o644}
	}
	for _, k := range catalog.Kinds() {
		put(k.File(), func(b *strings.Builder) error { return c.Write(k, b) })
	}
	put(catalog.OffersFile, func(b *strings.Builder) error { return c.WriteOffers(b) })
	back, err := catalog.Read(files, ".", "parts")
	if err != nil {
		t.Fatal(err)
	}
	return back
}

// inUS changes a file to US units.
func inUS(t *testing.T, text string) string {
	t.Helper()
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for col, header := range rows[0] {
		for _, u := range usUnits {
			stem, found := strings.CutSuffix(header, u.metric)
			if !found {
				continue
			}
			rows[0][col] = stem + u.us
			for _, row := range rows[1:] {
				if row[col] != "" {
					row[col] = multiplied(t, row[col], u.each)
				}
			}
			break
		}
	}
	var b strings.Builder
	if err := csv.NewWriter(&b).WriteAll(rows); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// multiplied multiplies a cell by a quotient, to more digits than a float has.
func multiplied(t *testing.T, cell, quotient string) string {
	t.Helper()
	x, ok := new(big.Rat).SetString(cell)
	if !ok {
		t.Fatalf("%q is not a number", cell)
	}
	over, under, divided := strings.Cut(quotient, "/")
	factor, _ := new(big.Rat).SetString(over)
	if divided {
		by, _ := new(big.Rat).SetString(under)
		factor.Quo(factor, by)
	}
	const digits = 24
	return x.Mul(x, factor).FloatString(digits)
}
