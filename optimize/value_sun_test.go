package optimize_test

import (
	"context"
	"math"
	"testing"

	"cartwright/optimize/energy/sun"
	"cartwright/optimize/value"
	"cartwright/scenarios"
)

// With sun a lifetime kWh is a served one: of each battery a bank with the energy of the autonomy is run through the
// year beside inverter and array of the cheapest plan, and ends with its cycles or its years, whichever end first.
func TestValueOfServed(t *testing.T) {
	p := demo(t, "goat-dairy")
	got, err := value.Find(context.Background(), p)
	if err != nil {
		t.Fatal(err)
	}
	if got.Beside == nil || len(got.Beside.Core.Solar) != 1 {
		t.Fatalf("beside %+v", got.Beside)
	}
	light := sun.Of(p.Scenario.Sun)
	s, place := *p.Scenario, *p.Scenario.Sun
	place.Hours = &scenarios.Weather{POA: light.Plane, TempC: light.AirC}
	s.Sun = &place
	p.Scenario = &s
	e := newEnumeration(t, p)
	core := got.Beside.Core
	for i := range p.Catalog.Solar {
		if x := core.Solar[0]; p.Catalog.Solar[i].ID == x.Part {
			e.field = &field{&p.Catalog.Solar[i], x.Series, x.Parallel, x.Inputs, core.Inverter.Units}
		}
	}
	years, cycles := 0, 0
	for i := range p.Catalog.Inverters {
		inv := &p.Catalog.Inverters[i]
		if inv.ID != core.Inverter.Part {
			continue
		}
		needWh := e.house.windowWh(inv.Efficiency, float64(core.Inverter.Units)*inv.IdleW, s.AutonomyH)
		for _, v := range got.Batteries {
			for b := range p.Catalog.Batteries {
				bat := p.Catalog.Batteries[b]
				if bat.ID != v.Part || v.CostPerLifetimeKWh == 0 {
					continue
				}
				// One battery of just that energy, in the place of the whole catalogue's.
				series, _ := e.series(&bat)
				share := needWh / (float64(series) * e.usableEach(&bat))
				bat.CapacityWh, bat.MaxChargeA = bat.CapacityWh*share, bat.MaxChargeA*share
				small := *p.Catalog
				small.Batteries = append(small.Batteries[:0:0], bat)
				e.c = &small
				_, drawnWh := e.year([]int{1}, inv, core.Inverter.Units)
				aYear := drawnWh / needWh
				full := math.Inf(1)
				if bat.CycleLife > 0 {
					full = bat.CycleLife
				}
				if bat.CalendarYears > 0 && bat.CalendarYears*aYear < full {
					full = bat.CalendarYears * aYear
					years++
				} else {
					cycles++
				}
				if want := v.Price.Units() / (v.UsableKWh * full); math.Abs(v.CostPerLifetimeKWh-want) > 1e-6*want {
					t.Errorf("%s: %g a served kWh, want %g", v.Part, v.CostPerLifetimeKWh, want)
				}
			}
		}
	}
	if years == 0 || cycles == 0 {
		t.Errorf("%d batteries end with their years, %d with their cycles", years, cycles)
	}
}
