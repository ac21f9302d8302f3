package picture

import (
	"math"
	"strings"
	"testing"

	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// sunny is a demo with a year of sun and an array on the cart: its figures are made up, its drawings are not.
func sunny(t testing.TB) (*Subject, []plan.Plan) {
	t.Helper()
	q, plans := demo(t, "cider-shed")
	s := *q.Scenario
	s.Sun = &scenarios.Sun{LatitudeDeg: 45, TiltDeg: 30, AzimuthDeg: 180, Ground: 0.2, Losses: 0.1, HottestC: 40, OnCart: true, HeightM: 1.6}
	for m := range s.Sun.MonthlyKWhM2 {
		s.Sun.MonthlyKWhM2[m] = []float64{1.5, 2.3, 3.4, 4.5, 5.4, 6, 6.1, 5.3, 4, 2.7, 1.7, 1.3}[m]
		s.Sun.WarmthC[m] = 12
	}
	c := q.Catalog.Clone()
	for i := range c.Inverters {
		c.Inverters[i].SolarMaxW = 5000
	}
	p := *q.Plan
	large := c.Solar[0]
	for _, m := range c.Solar {
		if m.Watts > large.Watts {
			large = m
		}
	}
	p.Core.Solar = []plan.CoreSolar{{Part: large.ID, Series: 2, Parallel: 5, Inputs: 1}}
	p.Year = &plan.Year{Served: 0.8, ShortH: 900, LongestShortH: 60}
	for m := range 12 {
		p.Year.Months = append(p.Year.Months, plan.Month{Sun: 100 + 20*float64(m), Load: 200, Short: 50, Spilled: 5 * float64(m)})
	}
	return &Subject{Scenario: &s, Catalog: c, Plan: &p, Units: q.Units}, plans
}

func TestAYearIsDrawn(t *testing.T) {
	q, _ := sunny(t)
	s, err := Year(q)
	if err != nil {
		t.Fatal(err)
	}
	legible(t, "year", s)
	text := string(s.SVG())
	for _, want := range []string{"Jul", "18:00", "full, sun is left over", "kWh a month", "80.0 %", "left in the store"} {
		if !strings.Contains(text, want) {
			t.Errorf("it does not say %q", want)
		}
	}
	legible(t, "cart", Cart(q))
	if cart := string(Cart(q).SVG()); !strings.Contains(cart, "wind") {
		t.Error("the array is not on the cart")
	}
}

// Every hour of the year has its shade, and with more sun fewer hours are short.
func TestHoursAreShadedByTheStore(t *testing.T) {
	q, _ := sunny(t)
	short := func() int {
		year, err := q.track()
		if err != nil || year == nil || len(year.StoredWh) != 8760 {
			t.Fatalf("%v, %v", year, err)
		}
		n := 0
		for h := range year.StoredWh {
			if year.shadeOf(h) == 0 {
				n++
			}
		}
		return n
	}
	few := short()
	q.Plan.Core.Solar[0].Parallel = 10
	if many := short(); few == 0 || few == 8760 || many >= few {
		t.Errorf("%d hours are short, with twice the modules %d", few, many)
	}
}

// The year that is drawn is the one that the plan was found by: its shortage, what is left over, and the hours.
func TestTheYearDrawnIsThePlans(t *testing.T) {
	q, plans := demo(t, "goat-dairy")
	for i := range plans {
		q.Plan = &plans[i]
		year, err := q.track()
		if err != nil || year == nil || q.Plan.Year == nil {
			t.Fatalf("plan %d: %v, %v, %v", i+1, year, q.Plan.Year, err)
		}
		short, spilled := 0.0, 0.0
		for h := range year.StoredWh {
			short, spilled = short+year.ShortWh[h]/1000, spilled+year.SpilledWh[h]/1000
		}
		const exact = 1e-6 // relative; sums of 8,760 figures in another order
		if y := q.Plan.Year; math.Abs(short-y.WallKWh) > exact*y.WallKWh || math.Abs(spilled-y.SpilledKWh) > exact*y.SpilledKWh {
			t.Errorf("plan %d: %v kWh short and %v spilled are drawn; the plan says %v and %v", i+1, short, spilled, y.WallKWh, y.SpilledKWh)
		}
	}
}

func TestWithoutSunAYearIsADay(t *testing.T) {
	q, _ := demo(t, "star-party")
	day, err := Day(q)
	if err != nil {
		t.Fatal(err)
	}
	year, err := Year(q)
	if err != nil || string(year.SVG()) != string(day.SVG()) {
		t.Errorf("they differ, %v", err)
	}
}
