package audit

import (
	"math"
	"slices"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

func TestLoadsThatCannotBe(t *testing.T) {
	good := scenarios.Load{Watts: 100, Count: 1, PowerFactor: 1, Duty: 1, Start: 1, FromMin: 60, ToMin: 120}
	if bad := absurdLoad(&good); bad != "" {
		t.Errorf("a good load: %s", bad)
	}
	for name, do := range map[string]func(l *scenarios.Load){
		"watts below zero": func(l *scenarios.Load) { l.Watts = -1 }, "endless watts": func(l *scenarios.Load) { l.Watts = math.Inf(1) },
		"no number of watts": func(l *scenarios.Load) { l.Watts = math.NaN() }, "start below zero": func(l *scenarios.Load) { l.Start = -1 },
		"fewer than none": func(l *scenarios.Load) { l.Count = -1 }, "duty below zero": func(l *scenarios.Load) { l.Duty = -0.1 },
		"duty above one": func(l *scenarios.Load) { l.Duty = 1.1 }, "no power factor": func(l *scenarios.Load) { l.PowerFactor = 0 },
		"power factor above one": func(l *scenarios.Load) { l.PowerFactor = 1.1 }, "ends as it begins": func(l *scenarios.Load) { l.ToMin = 60 },
		"begins before the day": func(l *scenarios.Load) { l.FromMin = -60 }, "ends before the day": func(l *scenarios.Load) { l.ToMin = -60 },
		"begins after the day": func(l *scenarios.Load) { l.FromMin = 1441 }, "ends after the day": func(l *scenarios.Load) { l.ToMin = 1441 },
	} {
		l := good
		do(&l)
		if absurdLoad(&l) == "" {
			t.Errorf("%s passes", name)
		}
		if _, err := recordOf(&scenarios.Scenario{Loads: []scenarios.Load{l}}, []scenarios.Leg{scenarios.LegAuto}); err == nil {
			t.Errorf("%s makes a record", name)
		}
	}
	all := good
	all.AllDay, all.ToMin = true, 60
	if bad := absurdLoad(&all); bad != "" {
		t.Errorf("a load of all day: %s", bad)
	}
}

func TestMeasuredRecords(t *testing.T) {
	day := func(n int) []float64 { return make([]float64, n) }
	for name, m := range map[string]scenarios.Measured{
		"no step": {StepMin: 0, LegA: day(24)}, "steps above an hour": {StepMin: 120, LegA: day(12)}, "nothing": {StepMin: 60},
		"part of a day": {StepMin: 60, LegA: day(23)}, "legs of two lengths": {StepMin: 60, LegA: day(24), LegB: day(48), ByLeg: true},
		"no leg B":   {StepMin: 60, LegA: day(24), ByLeg: true},
		"below zero": {StepMin: 60, LegA: append(day(23), -1)}, "leg B below zero": {StepMin: 60, LegA: day(24), LegB: append(day(23), -1), ByLeg: true},
	} {
		if _, err := measuredRecord(&m); err == nil {
			t.Errorf("%s makes a record", name)
		}
	}
	m := &scenarios.Measured{StepMin: 30, LegA: day(48), LegB: day(48), ByLeg: true}
	m.LegA[7], m.LegB[7] = 300, 500
	d, err := measuredRecord(m)
	if err != nil {
		t.Fatal(err)
	}
	peak, surge := d.all.largest()
	if larger, largerSurge := d.larger(); peak != 800 || surge != 800 || larger != 500 || largerSurge != 500 || d.acW[7] != 800 || d.stepH != 0.5 {
		t.Errorf("300 and 500 W on the legs: peak %g, surge %g, larger leg %g and %g, mean %g W", peak, surge, larger, largerSurge, d.acW[7])
	}
	m.ByLeg = false // then leg B is nothing
	if d, err = measuredRecord(m); err != nil || d.legs[0].peak[7] != 300 || d.legs[1].peak[7] != 0 {
		t.Errorf("without legs: %v, %v", d, err)
	}
}

// Two of 300 W at a power factor of 0.75, on from 23:00 to 01:20, that start at three times that, and a lamp on the bus.
func TestListedRecord(t *testing.T) {
	s := &scenarios.Scenario{Loads: []scenarios.Load{
		{Name: "pump", Watts: 300, Count: 2, PowerFactor: 0.75, Duty: 0.5, Start: 3, FromMin: 23 * 60, ToMin: 80},
		{Name: "lamp", Watts: 20, Count: 3, PowerFactor: 1, Duty: 1, Start: 1, AllDay: true, DC: true},
		{Name: "none", Watts: 900, PowerFactor: 1, Duty: 1, Start: 9, AllDay: true},
	}}
	d, err := recordOf(s, []scenarios.Leg{scenarios.LegB, "", scenarios.LegA})
	if err != nil {
		t.Fatal(err)
	}
	if d.stepH != 1.0/3 || len(d.acW) != 72 {
		t.Fatalf("%d steps of %g h, want 72 of 20 min", len(d.acW), d.stepH)
	}
	for step, on := range map[int]bool{0: true, 3: true, 4: false, 68: false, 69: true, 71: true} {
		watts := 0.0
		if on {
			watts = 600
		}
		if d.acW[step] != watts/2 || d.all.peak[step] != watts/0.75 || d.legs[1].peak[step] != watts/0.75 || d.legs[0].peak[step] != 0 || d.dcW[step] != 60 || d.dcPeakW[step] != 60 {
			t.Errorf("step %d: mean %g W, peak %g VA, on the bus %g W", step, d.acW[step], d.all.peak[step], d.dcW[step])
		}
	}
	if _, surge := d.all.largest(); surge != 800+2*400 { // one of the two starts
		t.Errorf("surge %g VA, want 1600", surge)
	}
}

// What a circuit carries: 125 % of three hours and more at full duty under nec, volt-amperes, the bus at its lowest.
func TestCircuitCurrent(t *testing.T) {
	load := func(watts, hours float64) scenarios.Load {
		return scenarios.Load{Watts: watts, Count: 1, PowerFactor: 1, Duty: 1, Start: 1, FromMin: 60, ToMin: 60 + int(hours*60)}
	}
	for _, tt := range []struct {
		name  string
		rules scenarios.Rules
		do    func(s *scenarios.Scenario)
		want  float64
	}{
		{"two hours", scenarios.NEC, func(*scenarios.Scenario) {}, 10},
		{"three hours", scenarios.NEC, func(s *scenarios.Scenario) { s.Loads[0] = load(1200, 3) }, 12.5},
		{"three hours, iec", scenarios.IEC, func(s *scenarios.Scenario) { s.Loads[0] = load(1200, 3) }, 10},
		{"all day", scenarios.NEC, func(s *scenarios.Scenario) { s.Loads[0].AllDay = true }, 12.5},
		{"past midnight", scenarios.NEC, func(s *scenarios.Scenario) { s.Loads[0].FromMin, s.Loads[0].ToMin = 23*60, 2*60 }, 12.5},
		{"half duty", scenarios.NEC, func(s *scenarios.Scenario) { s.Loads[0].AllDay, s.Loads[0].Duty = true, 0.5 }, 10},
		{"power factor", scenarios.NEC, func(s *scenarios.Scenario) { s.Loads[0].PowerFactor = 0.8 }, 12.5},
		{"two of them", scenarios.NEC, func(s *scenarios.Scenario) { s.Loads[0].Count = 2 }, 20},
		{"240 V", scenarios.NEC, func(s *scenarios.Scenario) { s.Circuits[0].Volts = 240 }, 5},
		{"on the bus", scenarios.NEC, func(s *scenarios.Scenario) { s.Circuits[0].DC, s.Circuits[0].Volts = true, 48 }, 30},
		{"at other times", scenarios.NEC, func(s *scenarios.Scenario) {
			s.Loads = append(s.Loads, load(600, 1))
			s.Loads[1].FromMin, s.Loads[1].ToMin = 600, 660
		}, 10},
		{"at the same time", scenarios.NEC, func(s *scenarios.Scenario) { s.Loads = append(s.Loads, load(600, 1)) }, 15},
		{"one at a time", scenarios.NEC, func(s *scenarios.Scenario) {
			s.Loads = append(s.Loads, load(600, 1))
			s.OneAtATime = [][]int{{0, 1}}
		}, 10},
	} {
		s := &scenarios.Scenario{Rules: tt.rules, Bus: scenarios.Bus{LowV: 40}, Loads: []scenarios.Load{load(1200, 2)}, Circuits: []scenarios.Circuit{{Volts: 120}}}
		tt.do(s)
		h := hookup{circuits: make([]int, len(s.Loads))}
		if got := circuitA(s, &h, 0); math.Abs(got-tt.want) > 1e-9 {
			t.Errorf("%s: %g A, want %g", tt.name, got, tt.want)
		}
	}
}

// The least of cycles and years; a bank has a life where each of its batteries states one of them.
func TestLifetime(t *testing.T) {
	for _, tt := range []struct {
		cycles, years, day, want float64 // of the first battery, kWh a day, kWh in its life
	}{{1000, 0, 5, 10000}, {1000, 4, 5, 7300}, {0, 4, 5, 7300}, {1000, 40, 5, 10000}, {0, 0, 5, 0}, {0, 4, 0, 0}} {
		a := &auditor{s: &scenarios.Scenario{UseDays: 365}, units: 1, inverter: &catalog.Inverter{Efficiency: 1},
			strings: []bank{{&catalog.Battery{CapacityWh: 5000, UsableFraction: 1, RoundTrip: 1, CycleLife: tt.cycles, CalendarYears: tt.years}, 2, 1}},
			demand:  newRecord(24, 60)}
		for t := range a.demand.acW {
			a.demand.acW[t] = tt.day * 1000 / 24
		}
		if got := a.lifetimeWh() / 1000; math.Abs(got-tt.want) > 1e-6 {
			t.Errorf("%g cycles, %g years at %g kWh a day: %g kWh, want %g", tt.cycles, tt.years, tt.day, got, tt.want)
		}
	}
}

// No column may have half pieces.
func TestHalfPieces(t *testing.T) {
	for name, column := range map[string]func(l *plan.Line) *float64{
		"installed": func(l *plan.Line) *float64 { return &l.Quantity }, "owned": func(l *plan.Line) *float64 { return &l.Have },
		"bought": func(l *plan.Line) *float64 { return &l.Buy }, "sold": func(l *plan.Line) *float64 { return &l.Sell },
	} {
		k := newBarn()
		*column(k.line("slab", "battery")) += 0.5
		if got := failed(k.auditor().Plan(k.p)); !slices.Contains(got, ruleLines) {
			t.Errorf("half a piece %s: failed %q", name, got)
		}
	}
}
