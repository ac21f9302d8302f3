package scenarios_test

import (
	"strings"
	"testing"

	"cartwright/catalog"
	"cartwright/scenarios"
)

// full states what the plain scenario leaves out, in the sections that came with wiring, frame and trade.
var full = []string{
	"frame: {mass: 80 lb, height: 14 in}", "rolling: 3 %\n  grip: 0.7\n  frame: {pieces: [{section: tube-40, length: 1 m, count: 4, height: 20 cm}]}",
	"clear_height: 10 in}", "clear_height: 10 in, stack: 2, rails: {section: angle-40, span: 50 cm, count: 3}}",
	"", `units: metric
recharge: {within: 8 h, supply: {volts: 240 V, device: 30 A}}
limits: {protocols: shared, served: 90 %}
cable: {slack: 10 %, step: 1 ft, strand: fine}
runs:
  - {run: string, length: 1 m, link: 20 cm}
  - {run: main, length: 1 m, conduit: EMT}
  - {run: inlet, length: 2 m}
  - {run: solar, length: 9 m}
  - {run: bond, length: 1 m}
have: [{part: switch-300, count: 1, keep: true}]
money: {grid: 0.325}
` + sunny,
}

func TestNewSections(t *testing.T) {
	s, err := openText(changed(t, full...))
	if err != nil {
		t.Fatal(err)
	}
	if err := s.Check(catalog.Embedded()); err != nil {
		t.Error(err)
	}
	piece, rails, shelf := s.Cart.Pieces[0], s.Cart.Shelves[0].Rails, s.Cart.Shelves[0]
	for _, tt := range []struct {
		name      string
		got, want any
	}{
		{"units", s.Units, scenarios.Metric},
		{"supply", [2]float64{s.Recharge.Supply.Volts, s.Recharge.Supply.DeviceA}, [2]float64{240, 30}},
		{"sun", s.Sun.LatitudeDeg, 43.0},
		{"rolling and grip", [2]float64{s.Cart.Rolling, s.Cart.Grip}, [2]float64{0.03, 0.7}},
		{"frame", s.Cart.Frame.MassKg, 0.0},
		{"piece", [4]any{piece.Section, piece.LengthM, piece.Count, piece.HeightM}, [4]any{"tube-40", 1.0, 4, 0.2}},
		{"rails", [3]any{rails.Section, rails.SpanM, rails.Count}, [3]any{"angle-40", 0.5, 3}},
		{"stack", shelf.Stack, 2},
		{"limits", [2]any{s.Limits.SharedProtocols, s.Limits.Served}, [2]any{true, 0.9}},
		{"cable", s.Cable, scenarios.CableWish{Slack: 0.1, StepM: 0.3048, Fine: true}},
		{"link", s.Run(scenarios.RunString).LinkM, 0.2},
		{"conduit", s.Run(scenarios.RunMain).Conduit, "emt"},
		{"runs", s.Run(scenarios.RunInlet) != nil && s.Run(scenarios.RunSolar) != nil && s.Run(scenarios.RunBond) != nil, true},
		{"keep", s.Have[0].Keep, true},
		{"grid", s.GridCentsPerKWh, 32.5},
		{"place of a supply", s.Recharge.Supply.Pos.String(), "cart/scenario.yaml:17:33"},
	} {
		if tt.got != tt.want {
			t.Errorf("%s: got %v, want %v", tt.name, tt.got, tt.want)
		}
	}
}

func TestNewDefaults(t *testing.T) {
	us, err := openText(plain)
	if err != nil {
		t.Fatal(err)
	}
	metric, err := openText(changed(t, "rules: nec", "rules: iec", "", "recharge: {within: 9 h}\nuse: {days: 40}\nruns: [{run: string, length: 1 m}]",
		"clear_height: 10 in}", "clear_height: 10 in, rails: {section: angle-40, span: 50 cm}}"))
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		name      string
		got, want any
	}{
		{"units under nec", us.Units, scenarios.US},
		{"units under iec", metric.Units, scenarios.Metric},
		{"power factor", us.Loads[0].PowerFactor, 1.0},
		{"use", us.UseDays, 365.0},
		{"use stated", metric.UseDays, 40.0},
		{"rolling and grip", [2]float64{us.Cart.Rolling, us.Cart.Grip}, [2]float64{0.02, 0.5}},
		{"stack", us.Cart.Shelves[0].Stack, 1},
		{"no rails", us.Cart.Shelves[0].Rails == nil, true},
		{"rails", metric.Cart.Shelves[0].Rails.Count, 2},
		{"limits", [2]any{us.Limits.SharedProtocols, us.Limits.Served}, [2]any{false, 0.0}},
		{"cable", us.Cable, scenarios.CableWish{}},
		{"link", metric.Run(scenarios.RunString).LinkM, 0.3},
		{"supply", metric.Recharge.Supply == nil, true},
		{"grid", us.GridCentsPerKWh, 0.0},
	} {
		if tt.got != tt.want {
			t.Errorf("%s: got %v, want %v", tt.name, tt.got, tt.want)
		}
	}
}

func TestWrongSections(t *testing.T) {
	for _, tt := range []struct {
		name   string
		change []string
		want   string
	}{
		{"inlet of no supply", []string{"", "runs: [{run: inlet, length: 1 m}]"},
			`14:8: the inlet has no supply; add recharge with a supply, for example recharge: {within: 10 h, supply: {volts: 120 V, device: 20 A}}`},
		{"bond of no main", []string{"", "runs: [{run: bond, length: 1 m}]"},
			`14:8: a bond is sized by the device of the main, and there is no run main; add one, or leave the bond out`},
		{"own breaker of an inlet", []string{"", "recharge: {within: 9 h, supply: {volts: 120 V, device: 20 A}}\nruns: [{run: inlet, length: 1 m, own_breaker: 20 A}]"},
			`15:47: own_breaker: the device of the supply protects the inlet; leave it out; write the device under recharge.supply`},
		{"link of a main", []string{"", "runs: [{run: main, length: 1 m, link: 1 m}]"},
			`14:39: link: only strings have links, between modules in series; leave it out, or write it in the run string`},
		{"supply of other volts", []string{"", "recharge: {within: 9 h, supply: {volts: 208 V, device: 20 A}}"},
			`14:41: volts: the nec rules have no circuit of 208 V; write 120 V or 240 V, or rules: iec`},
		{"supply of no standard", []string{"", "recharge: {within: 9 h, supply: {volts: 120 V, device: 22 A}}"},
			`14:56: device: 22 A is not a standard rating under the nec rules; write 20 A or 25 A`},
		{"a frame of pieces and of a mass", []string{"height: 14 in}", "height: 14 in, pieces: [{section: a, length: 1 m, height: 1 m}]}"},
			`10:17: mass: a frame of pieces has the mass of its pieces; leave mass out, or the pieces
10:32: height: a frame of pieces has the mass of its pieces; leave height out, or the pieces`},
		{"days of no year", []string{"", "use: {days: 400}"}, `14:13: days: 400 is out of range; write more than 0, up to 366`},
		{"keep and sell", []string{"", "have: [{part: a, count: 1, keep: true, sell: 5}]"},
			`14:34: keep: what stays on the cart is not sold; leave out keep or sell`},
		{"keep of a length", []string{"", "have: [{part: a, count: 1 m, keep: true}]"},
			`14:36: keep: what is bought by length is cut as it is needed; leave keep out; it is for pieces`},
		{"count in words", []string{"", "have: [{part: a, count: two}]"},
			`14:25: count: "two" is not a number; write count: 2, or of a cable a length, count: "12 ft"`},
		{"a share without its unit", []string{"", "limits: {served: 0.9}"}, `14:18: served: "0.9" has no unit; add %, for example "90 %"`},
		{"units of neither", []string{"", "units: imperial"}, `14:8: units: "imperial" is none of the choices; write us or metric`},
		{"slack above all", []string{"", "cable: {slack: 200 %}"}, `14:16: slack: "200 %" is out of range; write from 0 % to 100 %`},
		{"a misspelt key", []string{"", "cable: {slak: 20 %}"}, `14:9: unknown key "slak" in cable; did you mean "slack"?`},
		{"measured and one at a time", []string{"loads:\n  - {name: lamp, watts: 60 W}", "measured: loads.csv\none_at_a_time: [[a, b]]"},
			`5:16: one_at_a_time: measured loads have no names; leave it out; what was measured was on when it was on`},
	} {
		t.Run(tt.name, func(t *testing.T) {
			day := "time,watts\n"
			for _, h := range strings.Fields("00 01 02 03 04 05 06 07 08 09 10 11 12 13 14 15 16 17 18 19 20 21 22 23") {
				day += h + ":00,5\n"
			}
			_, err := openText(changed(t, tt.change...), "loads.csv", day)
			expect(t, err, "cart/scenario.yaml:"+strings.ReplaceAll(tt.want, "\n", "\ncart/scenario.yaml:"))
		})
	}
}

// What a scenario names of a catalogue has to be there, and good for it.
func TestCheckStockAndConduits(t *testing.T) {
	s, err := openText(changed(t, "rules: nec", "rules: iec", "frame: {mass: 80 lb, height: 14 in}", "frame: {pieces: [{section: tub-40, length: 1 m, height: 20 cm}]}",
		"clear_height: 10 in}", "clear_height: 10 in, rails: {section: ply-18, span: 50 cm}}\n    - {name: upper, elevation: 20 in, length: 40 in, "+
			"depth: 20 in, clear_height: 10 in, rails: {section: tube-40-alu, span: 50 cm}}",
		"", "runs: [{run: main, length: 1 m, conduit: empty}]\ncircuits: [{name: a, volts: 230 V, device: 16 A, length: 1 m, conduit: emt}]"))
	if err != nil {
		t.Fatal(err)
	}
	c := catalog.Embedded()
	for i := range c.Cables {
		if c.Cables[i].ID == "flex-10mm" || c.Cables[i].ID == "flex-6" {
			c.Cables[i].OuterM = 0
		}
	}
	expect(t, s.Check(c), `cart/scenario.yaml:10:30: the catalogue has no section "tub-40"; did you mean "tube-40"?
cart/scenario.yaml:12:105: "ply-18" is ply, which cannot be a rail; name a square tube, a flat or an angle of steel
cart/scenario.yaml:13:106: "tube-40-alu" does not weigh as much as steel of its sides, and rails are calculated for steel; name a section of steel, or state max_mass instead of rails
cart/scenario.yaml:15:42: the catalogue has no conduit of type "empty"; the types there are emt, flexible, pvc-40, rigid-plastic
embedded catalogue/cables.csv:71:1: cable "flex-10mm" states no outer diameter, which circuits[0].conduit needs; fill outer_mm`)
}
