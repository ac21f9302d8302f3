package scenarios_test

import (
	"math"
	"testing"

	"cartwright/scenarios"
)

func TestPlain(t *testing.T) {
	s, err := openText(plain)
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		name      string
		got, want any
	}{
		{"currency", s.Currency, "USD"},
		{"catalog", s.CatalogDir, ""},
		{"count", s.Loads[0].Count, 1},
		{"leg", s.Loads[0].Leg, scenarios.LegAuto},
		{"all day", s.Loads[0].AllDay, true},
		{"duty", s.Loads[0].Duty, 1.0},
		{"start", s.Loads[0].Start, 1.0},
		{"casters", s.Cart.Casters, 4},
		{"caster_mass_height", s.Cart.CasterMassHeightM, 0.08},
		{"max_mass", s.Cart.Shelves[0].MaxMassKg, math.Inf(1)},
		{"gap", s.Cart.Shelves[0].GapM, 0.0},
		{"limits.mass", s.Limits.MassKg, math.Inf(1)},
		{"limits.budget", int64(s.Limits.Budget), int64(math.MaxInt64)},
		{"limits.tilt", s.Limits.TiltDeg, 10.0},
		{"limits.reserve", s.Limits.Reserve, 0.0},
		{"limits.push", s.Limits.PushN, 0.0},
		{"limits.slope", s.Limits.Slope, 0.0},
		{"caster_factor", s.CasterFactor, 1.25},
		{"ac_fault", s.ACFaultA, 5000.0},
		{"sold", int64(s.Sold), int64(0)},
		{"tax", s.Tax, 0.0},
		{"time_limit", s.Solver.TimeLimitS, 60.0},
		{"plans", s.Solver.Plans, 10},
		{"frame", s.Cart.Frame.MassKg, 80 * 0.45359237},
		{"high", s.Bus.HighV, 58.4},
	} {
		if tt.got != tt.want {
			t.Errorf("%s: got %v, want %v", tt.name, tt.got, tt.want)
		}
	}
	if s.Recharge != nil || s.Savings != nil || s.Measured != nil || s.Runs != nil || s.Circuits != nil || s.Needs != nil || s.Have != nil {
		t.Errorf("a scenario that states none has recharge, savings, measured, runs, circuits, needs or have: %+v", s)
	}
}

func TestSections(t *testing.T) {
	s, err := openText(changed(t, "watts: 60 W}", `watts: 60 W, count: 3, leg: both, from: "22:00", to: "06:30", duty: 40 %, start: 6}`,
		"", `recharge: {within: 90 min}
limits: {mass: 450 lb, budget: 1234.5, tilt: 12 deg, reserve: 10 %, push: 15 kgf, slope: 5 %}
runs:
  - {run: main, length: 4 ft}
  - {run: feeder, length: 50 cm, ambient: 95 F, bundled: 3, terminal: 75 C, drop: 2 %, own_breaker: 30 A}
circuits:
  - {name: press, volts: 240 V, device: 20 A, length: 2 m, neutral: false, receptacle: {role: receptacle, rating: 20 A, count: 2}}
needs: [{role: shunt, count: 2, rating: 300 A}]
have:
  - {part: lfp-rack-5, count: 2, sell: 700.25}
  - {part: flex-2-0, count: 10 ft}
sold: 99.99
money: {tax: 8.25 %}
savings: {per_month: 150}
solver: {time_limit: 2 min, plans: 3}`))
	if err != nil {
		t.Fatal(err)
	}
	l := s.Loads[0]
	main, feeder, press := s.Run(scenarios.RunMain), s.Run(scenarios.RunFeeder), s.Circuits[0]
	for _, tt := range []struct {
		name      string
		got, want any
	}{
		{"load", [6]any{l.Count, l.Leg, l.AllDay, l.FromMin, l.ToMin, l.Start}, [6]any{3, scenarios.LegBoth, false, 1320, 390, 6.0}},
		{"duty", l.Duty, 0.4},
		{"recharge", *s.Recharge, scenarios.Recharge{WithinH: 1.5, From: "grid"}},
		{"limits", s.Limits, scenarios.Limits{MassKg: 204.1165665, Budget: 123450, TiltDeg: 12, Reserve: 0.1, PushN: 147.09975, Slope: 0.05}},
		{"main", [5]any{main.LengthM, main.AmbientC, main.Bundled, main.TerminalC, main.Drop}, [5]any{1.2192, 30.0, 2, 0.0, 0.03}},
		{"feeder", [6]any{feeder.LengthM, feeder.AmbientC, feeder.Bundled, feeder.TerminalC, feeder.Drop, feeder.OwnBreakerA}, [6]any{0.5, 35.0, 3, 75.0, 0.02, 30.0}},
		{"press", [4]any{press.Volts, press.DeviceA, press.LengthM, press.Neutral}, [4]any{240.0, 20.0, 2.0, false}},
		{"receptacle", *press.Receptacle, scenarios.Receptacle{Role: "receptacle", RatingA: 20, Count: 2}},
		{"need", [3]any{s.Needs[0].Role, s.Needs[0].Count, s.Needs[0].RatingA}, [3]any{"shunt", 2, 300.0}},
		{"owned pieces", [3]any{s.Have[0].Count, s.Have[0].ByLength, int64(*s.Have[0].Sell)}, [3]any{2.0, false, int64(70025)}},
		{"owned cable", [3]any{s.Have[1].Count, s.Have[1].ByLength, s.Have[1].Sell == nil}, [3]any{3.048, true, true}},
		{"money", [2]any{int64(s.Sold), s.Tax}, [2]any{int64(9999), 0.0825}},
		{"savings", *s.Savings, scenarios.Savings{Now: 0, PerMonth: 15000}},
		{"solver", s.Solver, scenarios.Solver{TimeLimitS: 120, Plans: 3}},
	} {
		if tt.got != tt.want {
			t.Errorf("%s: got %v, want %v", tt.name, tt.got, tt.want)
		}
	}
}

// Places are what later checks and edits find a value by.
func TestPos(t *testing.T) {
	s, err := openText(changed(t, "name: Test cart", "name: Zoë's cart", "60 W", `60 W, count: 2`,
		"", "have:\n  # owned\n  - part: lfp-rack-5\n    count: 2"))
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct{ path, want string }{
		{"rules", "cart/scenario.yaml:2:8"},
		{"bus.low", "cart/scenario.yaml:3:27"},
		{"loads[0]", "cart/scenario.yaml:5:5"},
		{"loads[0].count", "cart/scenario.yaml:5:38"},
		{"loads[0].duty", "cart/scenario.yaml:5:5"}, // left out: where it would stand
		{"cart.shelves[0].gap", "cart/scenario.yaml:12:7"},
		{"have[0].part", "cart/scenario.yaml:16:11"},
		{"have[0].count", "cart/scenario.yaml:17:12"},
		{"limits.mass", "cart/scenario.yaml:1:1"},
	} {
		if got := s.Pos(tt.path).String(); got != tt.want {
			t.Errorf("Pos(%q) = %s, want %s", tt.path, got, tt.want)
		}
	}
	made := &scenarios.Scenario{File: "made.yaml"}
	if got := made.Pos("limits.mass").String(); got != "made.yaml" {
		t.Errorf("a scenario made in code has a place %s, want the file alone", got)
	}
}

func TestByteOrderMarkAndCarriageReturns(t *testing.T) {
	want, err := openText(plain)
	if err != nil {
		t.Fatal(err)
	}
	crlf := "\uFEFF"
	for _, c := range plain {
		if c == '\n' {
			crlf += "\r"
		}
		crlf += string(c)
	}
	got, err := openText(crlf)
	if err != nil {
		t.Fatal(err)
	}
	if got.Name != want.Name || got.Pos("autonomy") != want.Pos("autonomy") || got.Cart.TrackM != want.Cart.TrackM {
		t.Errorf("with CRLF and a byte order mark: %+v\nwithout: %+v", got, want)
	}
}
