package page

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

const somePrices = "# kept by hand\nid,name,price\nslab,\"Slab, large\",10 # not a comment\n\n# second hand\n\"a\"\"b\",plain,\"20\"\nlast,x,"

func TestACellIsChangedAndNothingElse(t *testing.T) {
	for _, c := range []struct {
		name        string
		row, column int
		value, want string // what stands there instead
		was         string
	}{
		{"a plain cell", 0, 0, "brick", "brick,\"Slab", "slab,\"Slab"},
		{"a quoted cell", 0, 1, "Slab", "slab,Slab,10", "slab,\"Slab, large\",10"},
		{"the last of a row", 0, 2, "11", "large\",11\n", "large\",10 # not a comment\n"},
		{"one with quotes in it", 1, 0, "ab", "ab,plain", "\"a\"\"b\",plain"},
		{"an empty one at the file's end", 2, 2, "5", "last,x,5", "last,x,"},
		{"to one that needs quotes", 1, 1, "a, \"b\"", "\"a, \"\"b\"\"\",\"20\"", "plain,\"20\""},
		{"to nothing", 1, 2, "", "plain,\n", "plain,\"20\"\n"},
	} {
		made, err := setCell([]byte(somePrices), c.row, c.column, c.value)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if want := strings.Replace(somePrices, c.was, c.want, 1); string(made) != want {
			t.Errorf("%s:\n%s\nwant\n%s", c.name, made, want)
		}
	}
	for _, bad := range [][2]int{{-2, 0}, {3, 0}, {0, 3}, {0, -1}} {
		if _, err := setCell([]byte(somePrices), bad[0], bad[1], "x"); err == nil {
			t.Errorf("row %d, column %d was changed", bad[0], bad[1])
		}
	}
}

func TestRowsComeAndGo(t *testing.T) {
	for name, text := range map[string]string{"as it is": somePrices, "with a line end": somePrices + "\n", "of a spreadsheet": strings.ReplaceAll("\uFEFF"+somePrices+"\n", "\n", "\r\n")} {
		made, err := addRow([]byte(text), "new, one")
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		s, err := readSheet(made)
		if err != nil || len(s.Rows) != 4 || s.Rows[3][0] != "new, one" || len(s.Rows[3]) != 3 {
			t.Errorf("%s: %q, %v", name, s.Rows, err)
		}
		if !strings.HasPrefix(string(made), text) {
			t.Errorf("%s: what was there changed", name)
		}
		back, err := removeRow(made, 3)
		if err != nil || strings.TrimRight(string(back), "\r\n") != strings.TrimRight(text, "\r\n") {
			t.Errorf("%s: added and taken away again it is %q, %v", name, back, err)
		}
	}
	if made, err := removeRow([]byte(somePrices), 1); err != nil || string(made) != strings.Replace(somePrices, "\"a\"\"b\",plain,\"20\"\n", "", 1) {
		t.Errorf("the second gone: %q, %v", made, err)
	}
	for _, bad := range []int{-1, 3} {
		if _, err := removeRow([]byte(somePrices), bad); err == nil {
			t.Errorf("row %d went", bad)
		}
	}
}

func TestAnyTextInACellIsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		value := rapid.OneOf(rapid.String(), rapid.StringMatching(`[#",a \n-]{0,8}`)).Draw(t, "value")
		row, column := rapid.IntRange(0, 2).Draw(t, "row"), rapid.IntRange(0, 2).Draw(t, "column")
		made, err := setCell([]byte(somePrices), row, column, value)
		if err != nil {
			return // refused: nothing is written
		}
		s, err := readSheet(made)
		if err != nil || len(s.Rows) != 3 || s.Rows[row][column] != value {
			t.Errorf("%q became %q, %v", value, s.Rows, err)
		}
	})
}

func TestSlidersGoFromHalfToHalfAsMuchAgain(t *testing.T) {
	for value, want := range map[string]slider{
		"840 lb": {"420", "1260", "10", "840", "lb"},
		"18 h":   {"9", "27", "1", "18", "h"},
		"10 %":   {"5", "15", "1", "10", "%"},
		"4500":   {"2200", "6800", "100", "4500", ""},
		"2.5 kW": {"1.2", "3.8", "0.1", "2.5", "kW"},
	} {
		if got := sliderOf(value); got == nil || *got != want {
			t.Errorf("%s: %+v, want %+v", value, got, want)
		}
	}
	for _, none := range []string{"", "heavy", "3 ft 6 in", "-5 kg", "0", "1e99 kg"} {
		if got := sliderOf(none); got != nil {
			t.Errorf("%q has a slider: %+v", none, got)
		}
	}
}

// What a step of a limit costs stands at its field, whichever the names that an answer has for limits.
func TestEveryLeverHasItsField(t *testing.T) {
	for name, want := range map[string]string{
		"autonomy": "autonomy", "recharge within": "recharge.within", "mass": "limits.mass", "budget": "limits.budget", "tilt": "limits.tilt",
		"reserve": "limits.reserve", "push": "limits.push", "slope": "limits.slope", "served": "limits.served",
	} {
		if got := pathOfLimit(name); got != want {
			t.Errorf("%s is at %q, want %q", name, got, want)
		}
	}
}
