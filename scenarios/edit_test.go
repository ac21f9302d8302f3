package scenarios

import (
	"fmt"
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// texts returns the scenario files that come with the program.
func texts(t testing.TB) map[string][]byte {
	t.Helper()
	all := map[string][]byte{}
	for _, name := range DemoNames() {
		data, err := fs.ReadFile(DemoFS(), path.Join(name, FileName))
		if err != nil {
			t.Fatal(err)
		}
		all[name] = data
	}
	starter, err := fs.ReadFile(Starter(NEC), FileName)
	if err != nil {
		t.Fatal(err)
	}
	all["starter"] = starter
	return all
}

// Every value of every file can be replaced, and nothing else changes: one line of the text, one value of its
// meaning.
func TestEveryValueIsReplacedInPlace(t *testing.T) {
	for name, data := range texts(t) {

		values, err := ValuesOf(data, name)
		if err != nil {
			t.Fatal(err)
		}
		for _, at := range slices.Sorted(maps.Keys(values)) {
			if strings.HasSuffix(at, "[]") {
				continue
			}
			for _, value := range []string{"12 kg", "a name, with: marks #1"} {
				made, err := EditValues(data, name, Edit{Path: at, Value: value})
				if err != nil {
					t.Errorf("%s, %s: %v", name, at, err)
					continue
				}
				if n := linesThatDiffer(string(data), string(made)); n > 1 {
					t.Errorf("%s, %s: %d lines changed", name, at, n)
				}
				after, err := ValuesOf(made, name)
				if err != nil || after[at] != value {
					t.Errorf("%s, %s: it says %q, want %q; %v", name, at, after[at], value, err)
				}
				delete(after, at)
				for k, v := range values {
					if k != at && after[k] != v {
						t.Errorf("%s, %s: %s became %q, was %q", name, at, k, after[k], v)
					}
				}
			}
		}
	}
}

func linesThatDiffer(a, b string) int {
	x, y := strings.Split(a, "\n"), strings.Split(b, "\n")
	if len(x) != len(y) {
		return max(len(x), len(y))
	}
	n := 0
	for i := range x {
		if x[i] != y[i] {
			n++
		}
	}
	return n
}

func TestItemsComeAndGo(t *testing.T) {
	for name, data := range texts(t) {
		values, err := ValuesOf(data, name)
		if err != nil {
			t.Fatal(err)
		}
		for at, count := range values {
			list, isList := strings.CutSuffix(at, "[]")
			if !isList || strings.Contains(list, "[") || list == "one_at_a_time" {
				continue
			}
			pairs := []Pair{{"name", "new one"}, {"watts", "50 W"}, {"from", "09:00"}}
			made, err := EditValues(data, name, Edit{Path: list, Add: pairs})
			if err != nil {
				t.Errorf("%s, %s: %v", name, list, err)
				continue
			}
			if !strings.Contains(string(made), `{name: new one, watts: 50 W, from: "09:00"}`) {
				t.Errorf("%s, %s: the item is not there", name, list)
			}
			back, err := EditValues(made, name, Edit{Path: fmt.Sprintf("%s[%s]", list, count), Remove: true})
			if err != nil {
				t.Errorf("%s, %s: %v", name, list, err)
			} else if string(back) != string(data) {
				t.Errorf("%s, %s: added and taken away again, the text differs", name, list)
			}
		}
	}
}

func TestEdits(t *testing.T) {
	const text = "# a cart\nname: x\nlimits: {mass: 10 kg, tilt: 5 deg} # of it\nbus:\n  nominal: 48 V\n  low: 46 V # least\nhave:\n  - {part: a, count: 1}\n"
	for _, c := range []struct {
		name string
		e    Edit
		want string // the line that is new, or - and the one that goes
	}{
		{"a key is added in brackets", Edit{Path: "limits.push", Value: "200 N"}, "limits: {mass: 10 kg, tilt: 5 deg, push: 200 N} # of it"},
		{"a key is added to a block", Edit{Path: "bus.high", Value: "58 V"}, "  high: 58 V"},
		{"a key is added to the file", Edit{Path: "autonomy", Value: "18 h"}, "autonomy: 18 h"},
		{"a section is begun", Edit{Path: "money.tax", Value: "7 %"}, "money: {tax: 7 %}"},
		{"a key goes from brackets", Edit{Path: "limits.mass"}, "limits: {tilt: 5 deg} # of it"},
		{"the last key goes from brackets", Edit{Path: "limits.tilt"}, "limits: {mass: 10 kg} # of it"},
		{"a key goes from a block", Edit{Path: "bus.low"}, "-  low: 46 V # least"},
		{"the last item takes its list along", Edit{Path: "have[0]", Remove: true}, "-have:"},
		{"a word that means something is quoted", Edit{Path: "have[0].part", Value: "no"}, `  - {part: "no", count: 1}`},
		{"a number as a name is quoted", Edit{Path: "name", Value: "12"}, `name: "12"`},
		{"marks are quoted", Edit{Path: "name", Value: `}, evil: {`}, `name: "}, evil: {"`},
	} {
		made, err := EditValues([]byte(text), "x.yaml", c.e)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if gone, ok := strings.CutPrefix(c.want, "-"); ok {
			if slices.Contains(strings.Split(string(made), "\n"), gone) {
				t.Errorf("%s: %q is still there in\n%s", c.name, gone, made)
			}
		} else if !slices.Contains(strings.Split(string(made), "\n"), c.want) {
			t.Errorf("%s: no line %q in\n%s", c.name, c.want, made)
		}
	}
	for _, bad := range []string{"", "[0]", "a..b", "limits", "have[9].part", "evil\npath", "name.x"} {
		if made, err := EditValues([]byte(text), "x.yaml", Edit{Path: bad, Value: "1"}); err == nil {
			t.Errorf("path %q was edited:\n%s", bad, made)
		}
	}
}

// Whatever somebody types into a field, the file says just that there, or the edit is refused.
func TestAnyTextIsWrittenAsItIs(t *testing.T) {
	all := texts(t)
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.SampledFrom(slices.Sorted(maps.Keys(all))).Draw(t, "file")
		value := rapid.OneOf(rapid.String(), rapid.StringMatching(`[a-z0-9:#{}\[\],&*!|>'"%@ -]{1,12}`)).Draw(t, "value")
		at := rapid.SampledFrom([]string{"name", "limits.mass", "loads[0].name", "have[0].count", "autonomy"}).Draw(t, "path")
		if value == "" {
			return
		}
		made, err := EditValues(all[name], name, Edit{Path: at, Value: value})
		if err != nil {
			return // refused: nothing is written
		}
		after, err := ValuesOf(made, name)
		if err != nil || after[at] != value {
			t.Errorf("%q at %s became %q, %v", value, at, after[at], err)
		}
	})
}
