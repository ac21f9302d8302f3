package catalog_test

import (
	"slices"
	"strings"
	"testing"
)

func TestWrongOptionalCells(t *testing.T) {
	batteries := func(column, value string) string {
		return strings.NewReplacer("height_mm\n", "height_mm,"+column+"\n", ",133\n", ",133,"+value+"\n").Replace(smallest["batteries.csv"])
	}
	inverters := func(columns, values string) string {
		return strings.NewReplacer("idle_w\n", "idle_w,"+columns+"\n", ",40\n", ",40,"+values+"\n").Replace(smallest["inverters.csv"])
	}
	for _, test := range []struct{ name, file, data, want string }{
		{"round trip", "batteries.csv", batteries("round_trip", "1.1"),
			`2:69: round_trip 1.1 is too large; write a fraction from 0.001 to 1, for example 0.93 for 93 %`},
		{"peak", "batteries.csv", batteries("peak_discharge_a", "80"),
			`2:69: peak_discharge_a 80 is below max_discharge_a 100; leave it empty where only one current is known`},
		{"short circuit in kiloamperes", "batteries.csv", batteries("short_circuit_a", "2.5"),
			`2:69: short_circuit_a 2.5 is below max_discharge_a 100; write amperes, or leave it empty for max_v / resistance`},
		{"part of a string", "batteries.csv", batteries("max_parallel", "1.5"),
			`2:69: max_parallel "1.5" is not a whole number; write a whole number from 1 to 10000`},
		{"no cycles", "batteries.csv", batteries("cycle_life", "0"),
			`2:69: cycle_life 0 is zero; write cycles from 1 to 1000000, for example 4000`},
		{"leg", "inverters.csv", inverters("leg_w", "7000"),
			`2:35: continuous_w 6000 is below leg_w 7000; leg_w is what one leg can carry, a part of continuous_w`},
		{"tracker window", "inverters.csv", inverters("mppt_min_v,mppt_max_v", "400,90"),
			`2:58: mppt_max_v 90 is below mppt_min_v 400; the window runs from mppt_min_v to mppt_max_v`},
		{"charger", "inverters.csv", inverters("charger_a", "-60"),
			`2:54: charger_a -60 is negative; write amperes from 0 to 1000000, for example 100`},
	} {
		t.Run(test.name, func(t *testing.T) {
			got := mistakes(t, with(map[string]string{test.file: test.data}))
			if want := "cart/" + test.file + ":" + test.want; len(got) != 1 || got[0] != want {
				t.Errorf("got:\n%s\nwant:\n%s", strings.Join(got, "\n"), want)
			}
		})
	}
}

// A rule between two cells keeps quiet where one of them is wrong in itself.
func TestRulesNeedTheirCells(t *testing.T) {
	data := strings.Replace(smallest["inverters.csv"], "42,62", "x,62", 1)
	got := mistakes(t, with(map[string]string{"inverters.csv": data}))
	want := []string{`cart/inverters.csv:2:21: dc_min_v "x" is not a number; write volts, for example 51.2`}
	if !slices.Equal(got, want) {
		t.Errorf("got %q", got)
	}
}

// All mistakes of all files come at once, in the order of files, lines and columns.
func TestAllAtOnce(t *testing.T) {
	got := mistakes(t, with(map[string]string{
		"busbars.csv":  strings.Replace(smallest["busbars.csv"], "40,1,250,6", "-1,y,250,z", 1),
		"devices.csv":  "\xff\xfe",
		"sundries.csv": "",
		"sundry.csv":   smallest["sundries.csv"],
		"loads.csv":    "time,watts\n",
	}))
	want := []string{
		`cart/busbars.csv:2:11: price -1 is negative; write units of currency from 0 to 1000000000, for example 1290.50`,
		`cart/busbars.csv:2:14: mass_kg "y" is not a number; write kilograms, for example 45`,
		`cart/busbars.csv:2:20: studs "z" is not a whole number; write a whole number from 1 to 10000`,
		`cart/devices.csv:1:1: the text is UTF-16; save the file as CSV in UTF-8`,
		`cart/sundry.csv: this is not the name of a catalogue file; call it sundries.csv, or keep it in another folder`,
	}
	if !slices.Equal(got, want) {
		t.Errorf("got:\n%s\nwant:\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}
