package energy

import (
	"math"
	"slices"
	"testing"

	"cartwright/scenarios"
)

// allDay returns a load of one unit that is on all day at full duty, on leg A.
func allDay(name string, watts float64) scenarios.Load {
	return scenarios.Load{
		Name: name, Watts: watts, Count: 1, Leg: scenarios.LegA, AllDay: true, Duty: 1, PowerFactor: 1, Start: 1,
	}
}

// between returns such a load that is on between two minutes of the day.
func between(name string, watts float64, from, to int) scenarios.Load {
	l := allDay(name, watts)
	l.AllDay, l.FromMin, l.ToMin = false, from, to
	return l
}

func demandOf(t *testing.T, loads ...scenarios.Load) *Demand {
	t.Helper()
	d, err := DemandOf(&scenarios.Scenario{Loads: loads})
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestStepIsTheLargestDivisorOfAnHourOnWhichTimesFall(t *testing.T) {
	for _, c := range []struct {
		name     string
		from, to int
		wantMin  int
	}{
		{"whole hours", 8 * 60, 20 * 60, 60},
		{"half hours", 8*60 + 30, 20 * 60, 30},
		{"to on the half hour", 8 * 60, 20*60 + 30, 30},
		{"quarters", 8*60 + 15, 20*60 + 45, 15},
		{"thirds", 8*60 + 20, 20*60 + 40, 20},
		{"halves and thirds", 8*60 + 30, 20*60 + 20, 10},
		{"odd minute", 8*60 + 7, 20 * 60, 1},
		{"midnight", 0, 12 * 60, 60},
		{"to the end of the day", 12 * 60, 24 * 60, 60},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := demandOf(t, between("lamp", 10, c.from, c.to), allDay("hub", 5))
			if got := d.StepH * 60; math.Abs(got-float64(c.wantMin)) > 1e-12 {
				t.Errorf("step %v min, want %d", got, c.wantMin)
			}
			if want := 1440 / c.wantMin; d.Steps() != want {
				t.Errorf("%d steps, want %d", d.Steps(), want)
			}
			if math.Abs(d.RecordH()-24) > 1e-12 {
				t.Errorf("record of %v h, want 24", d.RecordH())
			}
		})
	}
	t.Run("several loads", func(t *testing.T) {
		d := demandOf(t, between("a", 1, 30, 60), between("b", 1, 40, 60), between("c", 1, 0, 120))
		if math.Abs(d.StepH*60-10) > 1e-12 {
			t.Errorf("step %v min, want 10", d.StepH*60)
		}
	})
}

func TestLoadIsOnFromItsFirstMinuteToBeforeItsLast(t *testing.T) {
	for _, c := range []struct {
		name     string
		from, to int
		on, off  []int // hours
	}{
		{"by day", 8 * 60, 20 * 60, []int{8, 12, 19}, []int{0, 7, 20, 23}},
		{"past midnight", 20 * 60, 6 * 60, []int{20, 23, 0, 5}, []int{6, 12, 19}},
		{"to midnight", 20 * 60, 24 * 60, []int{20, 23}, []int{0, 19}},
		{"to midnight, as 00:00", 20 * 60, 0, []int{20, 23}, []int{0, 19}},
		{"from midnight", 0, 60, []int{0}, []int{1, 23}},
		{"from the end of the day", 24 * 60, 60, []int{0}, []int{1, 23}},
		{"the whole day", 0, 24 * 60, []int{0, 12, 23}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := demandOf(t, between("lamp", 10, c.from, c.to))
			for _, h := range c.on {
				if d.ACW[h] != 10 {
					t.Errorf("off at %d:00", h)
				}
			}
			for _, h := range c.off {
				if d.ACW[h] != 0 {
					t.Errorf("on at %d:00", h)
				}
			}
		})
	}
}

func TestDemandCountsUnitsDutyLegsAndStarts(t *testing.T) {
	pump := between("pump", 300, 0, 12*60)
	pump.Count, pump.Duty, pump.Start, pump.Leg = 2, 0.25, 5, scenarios.LegB
	fridge := between("fridge", 100, 6*60, 18*60)
	fridge.Start, fridge.Duty = 3, 0.5
	oven := between("oven", 2000, 6*60, 12*60)
	oven.Leg = scenarios.LegBoth
	radio := between("radio", 30, 0, 12*60)
	radio.DC, radio.Duty, radio.Start, radio.Count = true, 0.5, 9, 2

	d := demandOf(t, pump, fridge, oven, radio)
	if d.StepH != 1 || d.Steps() != 24 {
		t.Fatalf("%d steps of %v h", d.Steps(), d.StepH)
	}
	for _, c := range []struct {
		name                string
		series              []float64
		at3, at9, at15, at2 float64 // 03:00 pump; 09:00 pump, fridge, oven; 15:00 fridge; 20:00 none
	}{
		{"ACW", d.ACW, 150, 150 + 50 + 2000, 50, 0},
		{"DCW", d.DCW, 30, 30, 0, 0},
		{"PeakW", d.PeakVA, 600, 2700, 100, 0},
		{"PeakAW", d.PeakAVA, 0, 1100, 100, 0},
		{"PeakBW", d.PeakBVA, 600, 1600, 0, 0},
		{"PeakDCW", d.PeakDCW, 60, 60, 0, 0},
		{"SurgeVA", d.SurgeVA, 1800, 3900, 300, 0},
		{"LegSurgeVA", d.LegSurgeVA, 1800, 2800, 300, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := []float64{c.series[3], c.series[9], c.series[15], c.series[20]}
			if want := []float64{c.at3, c.at9, c.at15, c.at2}; !slices.Equal(got, want) {
				t.Errorf("at 3, 9, 15 and 20 h: %v, want %v", got, want)
			}
		})
	}
	if !d.NeedsBothLegs {
		t.Error("a load lies between the legs")
	}
	if got := d.PeakTotalVA(); got != 2700 {
		t.Errorf("peak %v W, want 2700", got)
	}
	if got := d.PeakLegVA(); got != 1600 {
		t.Errorf("leg peak %v W, want 1600 (leg B)", got)
	}
	if got := d.PeakSurgeVA(); got != 3900 {
		t.Errorf("surge %v W, want 3900", got)
	}
	if got := d.PeakBusDCW(); got != 60 {
		t.Errorf("direct-current peak %v W, want 60", got)
	}
	if !d.LegsProven || len(d.Legs) != 0 {
		t.Errorf("legs %v proven %v; nothing was to be put", d.Legs, d.LegsProven)
	}
}

func TestSurgeLooksAtEveryMoment(t *testing.T) {
	motor := between("motor", 500, 0, 60)
	motor.Start = 6
	heater := between("heater", 2600, 60, 120)
	d := demandOf(t, motor, heater)
	if got := d.PeakSurgeVA(); got != 3000 { // 500 + 5 * 500, more than 2600
		t.Errorf("surge %v W, want 3000", got)
	}
	if got := d.PeakTotalVA(); got != 2600 {
		t.Errorf("peak %v W, want 2600", got)
	}
	if got := d.PeakLegVA(); got != 2600 {
		t.Errorf("leg peak %v W, want 2600 (leg A)", got)
	}
}

func TestNoUnitsStartNothing(t *testing.T) {
	l := allDay("motor", 500)
	l.Count, l.Start = 0, 6
	soft := allDay("soft", 100)
	soft.Start = 0.5
	d := demandOf(t, l, soft)
	if got := d.PeakSurgeVA(); got != 100 {
		t.Errorf("surge %v W, want 100", got)
	}
}

func TestAutoLoadsAreNamedInOrderAndBusLoadsHaveNoLeg(t *testing.T) {
	a, b, c := allDay("kettle", 1000), allDay("fan", 50), allDay("radio", 700)
	a.Leg, b.Leg, c.Leg = scenarios.LegAuto, scenarios.LegAuto, scenarios.LegAuto
	c.DC = true
	d := demandOf(t, a, b, c)
	want := []LegLoad{{"kettle", scenarios.LegA}, {"fan", scenarios.LegB}}
	if !slices.Equal(d.Legs, want) {
		t.Errorf("legs %v, want %v", d.Legs, want)
	}
	both := allDay("winch", 900)
	both.DC, both.Leg = true, scenarios.LegBoth
	if d := demandOf(t, both); d.NeedsBothLegs {
		t.Error("a load on the bus needs no legs")
	}
}

func TestOnlyALoadBetweenTheLegsNeedsBoth(t *testing.T) {
	for _, leg := range []scenarios.Leg{scenarios.LegA, scenarios.LegB, scenarios.LegAuto, scenarios.LegBoth} {
		l := allDay("pump", 900)
		l.Leg = leg
		if got, want := demandOf(t, l).NeedsBothLegs, leg == scenarios.LegBoth; got != want {
			t.Errorf("leg %s: needs both legs %v, want %v", leg, got, want)
		}
	}
}

func TestNothingIsNoDemand(t *testing.T) {
	d := demandOf(t)
	if d.Steps() != 24 || d.PeakTotalVA() != 0 || d.PeakSurgeVA() != 0 || d.PeakLegVA() != 0 || d.PeakBusDCW() != 0 {
		t.Errorf("demand of no loads: %+v", d)
	}
	var zero Demand
	if zero.PeakTotalVA() != 0 || zero.RecordH() != 0 {
		t.Error("the zero demand is none")
	}
}

func TestMeasuredDemand(t *testing.T) {
	day := func(watts ...float64) []float64 { // repeats to 48 half hours
		var all []float64
		for len(all) < 48 {
			all = append(all, watts...)
		}
		return all
	}
	t.Run("one column counts on leg A", func(t *testing.T) {
		d, err := DemandOf(&scenarios.Scenario{Measured: &scenarios.Measured{
			StepMin: 30, LegA: day(100, 300), LegB: day(7, 7),
		}})
		if err != nil {
			t.Fatal(err)
		}
		if d.StepH != 0.5 || d.Steps() != 48 || d.RecordH() != 24 {
			t.Errorf("%d steps of %v h", d.Steps(), d.StepH)
		}
		if d.ACW[1] != 300 || d.PeakVA[1] != 300 || d.PeakAVA[1] != 300 || d.PeakBVA[1] != 0 {
			t.Errorf("step 2: %v %v %v %v", d.ACW[1], d.PeakVA[1], d.PeakAVA[1], d.PeakBVA[1])
		}
		if d.PeakSurgeVA() != 300 || d.PeakLegVA() != 300 || d.NeedsBothLegs || !d.LegsProven {
			t.Errorf("surge %v, leg %v, both %v, proven %v", d.PeakSurgeVA(), d.PeakLegVA(), d.NeedsBothLegs, d.LegsProven)
		}
	})
	t.Run("two columns, two days", func(t *testing.T) {
		d, err := DemandOf(&scenarios.Scenario{Measured: &scenarios.Measured{
			StepMin: 60, ByLeg: true, LegA: day(100, 300), LegB: day(250, 50),
		}})
		if err != nil {
			t.Fatal(err)
		}
		if d.Steps() != 48 || d.RecordH() != 48 {
			t.Errorf("%d steps, %v h", d.Steps(), d.RecordH())
		}
		if d.ACW[0] != 350 || d.PeakVA[1] != 350 || d.PeakAVA[1] != 300 || d.PeakBVA[0] != 250 {
			t.Errorf("watts %v %v %v %v", d.ACW[0], d.PeakVA[1], d.PeakAVA[1], d.PeakBVA[0])
		}
		if d.PeakLegVA() != 300 {
			t.Errorf("leg peak %v, want 300", d.PeakLegVA())
		}
	})
}

// TestManyLists: of each list the largest, however many lists there are; a load that states no power factor has 1.
func TestManyLists(t *testing.T) {
	s := &scenarios.Scenario{}
	for i := range 12 {
		l := allDay("x", float64(100+i))
		l.Leg, l.PowerFactor = scenarios.LegA, 0
		s.Loads = append(s.Loads, l)
	}
	for k := range 6 {
		s.OneAtATime = append(s.OneAtATime, []int{k, k + 6})
	}
	d, err := DemandOf(s)
	if want := 6*106.0 + 15; err != nil || d.PeakTotalVA() != want {
		t.Errorf("%v VA, %v; want %v", d.PeakTotalVA(), err, want)
	}
}
