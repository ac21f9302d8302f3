package scenarios_test

import (
	"strings"
	"testing"

	"cartwright/scenarios"
)

// circuitsOf are keys for the end of the plain scenario.
const circuitsOf = `circuits:
  - {name: bench, volts: 120 V, device: 20 A, length: 8 ft}
  - {name: press, volts: 240 V, device: 30 A, length: 8 ft}
  - {name: gauges, volts: dc, device: 15 A, length: 8 ft}`

// Loads name circuits that are there, of their own current and legs.
func TestCircuitsOfLoads(t *testing.T) {
	for _, tt := range []struct {
		name   string
		change []string
		want   string
	}{
		{"not there", []string{"60 W}", "60 W, circuit: bensh}", "", circuitsOf}, `5:40: circuit: no circuit is called "bensh"; did you mean "bench"?`},
		{"none at all", []string{"60 W}", "60 W, circuit: lamps}"}, `5:40: circuit: no circuit is called "lamps"; name one of circuits, or add it there`},
		{"ac on dc", []string{"60 W}", "60 W, circuit: gauges}", "", circuitsOf},
			`5:40: circuit: "gauges" has direct current, the load takes alternating; name another circuit, or change dc of the load or volts of the circuit`},
		{"dc on ac", []string{"60 W}", "60 W, dc: true, circuit: bench}", "", circuitsOf},
			`5:50: circuit: "bench" has alternating current, the load takes direct; name another circuit, or change dc of the load or volts of the circuit`},
		{"one leg on 240 V", []string{"60 W}", "60 W, leg: A, circuit: press}", "", circuitsOf}, `5:36: leg: the circuit "press" of 240 V is on both legs; leave leg out`},
		{"both legs on 120 V", []string{"60 W}", "60 W, leg: both, circuit: bench}", "", circuitsOf},
			`5:36: leg: the circuit "bench" of 120 V is on one leg; name a circuit of 240 V, or leave leg out`},
		{"two legs of a circuit", []string{"60 W}", "60 W, leg: A, circuit: bench}\n  - {name: saw, watts: 5 W, leg: B, circuit: bench}", "", circuitsOf},
			`6:34: leg: the circuit "bench" has a load on leg A already, and is on one leg; write the same leg for all of its loads, or leave leg out`},
		{"both legs and no 240 V", []string{"60 W}", "60 W, leg: both}", "", strings.Replace(circuitsOf, "240", "120", 1)},
			`5:36: leg: a load of both legs needs a circuit of 240 V, and there is none; add one to circuits, or leave leg out`},
		{"one leg and no 120 V", []string{"", strings.Replace(circuitsOf, "120", "240", 1)},
			`5:12: the load "lamp" of one leg needs a circuit of 120 V, and there is none; add one to circuits, or name the circuit of 240 V that the load is on`},
		{"a neutral of dc", []string{"", strings.Replace(circuitsOf, "dc, device", "dc, neutral: true, device", 1)},
			`17:40: neutral: a circuit on the bus has none; leave it out`},
		{"volts that are none", []string{"", strings.Replace(circuitsOf, "volts: dc", "volts: ac", 1)},
			`17:27: volts: "ac" is not a number with a unit; write for example "48 V"`},
		{"a load in two lists", []string{"60 W}", "60 W}\n  - {name: saw, watts: 5 W}", "", "one_at_a_time: [[lamp, saw], [saw, lmp]]"},
			`15:31: the load "saw" is in a list already; name each load once; the first is in line 15
15:36: no load is called "lmp"; did you mean "lamp"?`},
		{"a list of one", []string{"", "one_at_a_time: [[lamp], lamp]"},
			`14:17: this is not a list of two loads or more; write a list of lists of loads, for example one_at_a_time: [[saw, vacuum]]
14:25: this is not a list of two loads or more; write a list of lists of loads, for example one_at_a_time: [[saw, vacuum]]`},
		{"a list of other things", []string{"", "one_at_a_time: [[lamp, {a: 1}]]"}, `14:24: the name of a load is a group of keys; write the name of one of loads`},
		{"power factor", []string{"60 W", "60 W, power_factor: 1.1"}, `5:45: power_factor: 1.1 is out of range; write more than 0, up to 1`},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, err := openText(changed(t, tt.change...))
			expect(t, err, "cart/scenario.yaml:"+strings.ReplaceAll(tt.want, "\n", "\ncart/scenario.yaml:"))
		})
	}
}

func TestCircuitsAreRead(t *testing.T) {
	s, err := openText(changed(t, "60 W}", "60 W, circuit: bench, power_factor: 0.8}\n  - {name: 42, watts: 3/4 hp, circuit: press}\n  - {name: gauge, watts: 5 W, dc: true}",
		"", circuitsOf, "", "one_at_a_time: [[42, lamp]]", "length: 40 in", "length: 3 ft 4 in", "depth: 20 in", "depth: 19 3/4 in"))
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		name      string
		got, want any
	}{
		{"a load on one circuit", [3]any{s.Loads[0].Circuit, s.Loads[0].Leg, s.Loads[0].PowerFactor}, [3]any{"bench", scenarios.LegAuto, 0.8}},
		{"a load of 240 V", [2]any{s.Loads[1].Leg, s.Loads[1].Watts}, [2]any{scenarios.LegBoth, 559.274903686702665}},
		{"a load of no circuit", [2]any{s.Loads[2].Circuit, s.Loads[2].PowerFactor}, [2]any{"", 1.0}},
		{"dc", [2]any{s.CircuitNamed("gauges").DC, s.CircuitNamed("gauges").Volts}, [2]any{true, 48.0}},
		{"none", s.CircuitNamed("none") == nil, true},
		{"one at a time", [2]int(s.OneAtATime[0]), [2]int{1, 0}},
		{"place of a name", s.Pos("one_at_a_time[0][1]").String(), "cart/scenario.yaml:20:22"},
		{"feet and inches", s.Cart.Shelves[0].LengthM, 1.016},
		{"a fraction", s.Cart.Shelves[0].DepthM, 0.50165},
	} {
		if tt.got != tt.want {
			t.Errorf("%s: got %v, want %v", tt.name, tt.got, tt.want)
		}
	}
}

// What is possible but not plausible is warned of where it stands, and read all the same.
func TestDoubts(t *testing.T) {
	const saws = "60 W, duty: 60 %, circuit: bench}\n  - {name: saw, watts: 2.5 kW, from: 9:00, to: \"17:00\", duty: 60 %, circuit: bench}\n  - {name: pump, watts: 2 hp, circuit: press}"
	s, err := openText(changed(t, "60 W}", saws, "", circuitsOf, "", "one_at_a_time: [[lamp, saw]]", "wheelbase: 40 in", "wheelbase: 40 mm"))
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, w := range s.Warnings {
		got = append(got, strings.TrimPrefix(w.Error(), "cart/scenario.yaml:"))
	}
	want := []string{
		`6:24: the load "saw" draws 20.8 A, and its circuit "bench" has a device of 20 A; check the watts, or name a larger circuit`,
		`7:25: horsepower is what a motor gives at its shaft; it draws more: write the watts on its plate, or its volts times its amperes`,
		`10:14: a wheelbase of 40 mm is too short for a cart; check its unit`,
		`20:17: at 09:00 the duties of these loads add up to 120 %, and never two of them run at once; lower a duty, or take a load off the list`,
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	if s, err := openText(plain); err != nil || len(s.Warnings) > 0 {
		t.Errorf("the plain scenario is doubted: %v, %v", s.Warnings, err)
	}
}
