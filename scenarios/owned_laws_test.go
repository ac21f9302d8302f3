package scenarios

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"cartwright/catalog"
	"cartwright/catalog/problem"
)

// styles write the same holdings in different ways.
var styles = []func(list []Holding, draw func(n int) int) string{
	func(list []Holding, draw func(int) int) string { // in braces, a line each
		b := "have:" + note(draw) + "\n"
		for _, h := range list {
			b += "  - {" + strings.Join(pairs(h), ", ") + "}" + note(draw) + "\n"
			if draw(4) == 0 {
				b += "  # by itself\n\n"
			}
		}
		return b
	},
	func(list []Holding, draw func(int) int) string { // a line for each key
		b := "have:\n"
		for _, h := range list {
			b += "- " + strings.Join(pairs(h), note(draw)+"\n  ") + note(draw) + "\n"
		}
		return b
	},
	func(list []Holding, draw func(int) int) string { // in brackets
		between := ", "
		if draw(2) == 0 {
			between = ",\n  "
		}
		var items []string
		for _, h := range list {
			items = append(items, "{"+strings.Join(pairs(h), ", ")+"}")
		}
		return "have: [" + strings.TrimLeft(between, ", ") + strings.Join(items, between) + "]" + note(draw) + "\n"
	},
}

// note is a comment, or none.
func note(draw func(int) int) string { return []string{"", " # [it's, \"so\"}: ok", "   "}[draw(3)] }

// pairs writes the keys of a holding with their values.
func pairs(h Holding) []string {
	list := []string{"part: " + h.PartID, "count: " + countText(h, "ft")}
	if h.Ends > 0 {
		list = append(list, fmt.Sprintf("ends: %d", h.Ends))
	}
	if h.Sell != nil {
		list = append(list, "sell: "+amountText(*h.Sell))
	}
	return list
}

// Any holdings in any style can be made any others: the text says so when it is read, the changes told are
// those made, and editing once more changes nothing.
func TestEditOwnedLaws(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		draw := func(n int) int { return rapid.IntRange(0, n-1).Draw(r, "choice") }
		holding := func(part string) Holding {
			if draw(2) == 0 {
				return pieces(part, float64(draw(30)))
			}
			return metres(part, float64(draw(4000))/100, draw(3)*draw(9))
		}
		var before, after []Holding
		for _, part := range []string{"a", "b", "c", "d", "e", "f"} {
			had := draw(2) == 0
			h := holding(part)
			if had {
				if draw(3) == 0 {
					price := catalog.Cents(draw(100000))
					h.Sell = &price
				}
				before = append(before, h)
			}
			if draw(2) == 0 {
				w := holding(part)
				if had {
					w.ByLength = h.ByLength // what a part is stays
				}
				if !w.ByLength {
					w.Count, w.Ends = math.Trunc(w.Count), 0
				}
				after = append(after, w)
			}
		}
		text := kept
		if len(before) > 0 {
			text += styles[draw(len(styles))](before, draw)
		}
		if draw(2) == 0 {
			text += "sold: 5" + note(draw) + "\n"
		}
		want := Owned{Have: after, Sold: catalog.Cents(draw(3) * 250)}
		got, changes, err := EditOwned([]byte(text), "f", want)
		if err != nil {
			r.Fatalf("%q: %v", text, err)
		}
		root, err := reparse(string(got), "f")
		if err != nil {
			r.Fatalf("%q became %q: %v", text, got, err)
		}
		read := &reader{file: "f", problems: &problem.List{}, places: map[string]problem.Pos{}}
		top := read.newSection(root, "", "the scenario", topKeys)
		if have := top.holdings(); !sameHoldings(have, after) || top.money("sold", 0) != want.Sold || read.problems.Len() > 0 {
			r.Fatalf("%q became %q, which says %+v, %v", text, got, have, read.problems.Err())
		}
		tellsAll(r, text, string(got), changes)
		again, more, err := EditOwned(got, "f", want)
		if err != nil || string(again) != string(got) || len(more) > 0 {
			r.Fatalf("%q became %q, then %q, %v", text, got, again, err)
		}
	})
}

// FuzzEditOwned asks of any text that it is edited truly or not at all.
func FuzzEditOwned(f *testing.F) {
	f.Add("have:\n  - {part: a, count: 1}\nsold: 5\n")
	f.Add("have: [{part: a, count: 1 ft}, ]")
	f.Add("{have: [{part: \"a\", count: 1}], savings: {per_month: 5}}")
	f.Add("? have\n: - part: a\n")
	f.Add("have:\n  -\n    part: a\n    count: 3 # x\nsavings:\n   now: 3\n")
	f.Fuzz(func(t *testing.T, in string) {
		now := catalog.Cents(4200)
		want := Owned{Have: []Holding{pieces("a", 2), metres("b", 1.5, 2)}, Sold: 100, SavingsNow: &now}
		got, changes, err := EditOwned([]byte(in), "f", want)
		if err != nil {
			return
		}
		tellsAll(t, in, string(got), changes)
		if again, _, err := EditOwned(got, "f", want); err != nil || string(again) != string(got) {
			t.Errorf("%q became %q, then %q, %v", in, got, again, err)
		}
	})
}

// What cannot be done without a guess is refused, and so is a file that cannot be read.
func TestEditOwnedRefuses(t *testing.T) {
	saved := catalog.Cents(700)
	for _, c := range []struct {
		name, text string
		want       Owned
		err        string
	}{
		{"no YAML", "have: [", Owned{}, "f:1:7: this cannot be read as YAML"},
		{"no mapping", "- a", Owned{}, "f:1:1: the scenario is a list"},
		{"nothing", "# nothing yet\n", Owned{}, "f:1:1: the scenario is empty; write keys and values, beginning with name: and rules:"},
		{"no keys", "{}", Owned{}, "f:1:1: the scenario is empty; write keys and values"},
		{"not UTF-8", "name: \xff", Owned{}, "f:1:7: the byte 0xff is not UTF-8 text"},
		{"a count as a block", "have:\n  - part: a\n    count: |-\n      1 m\n", Owned{Have: []Holding{metres("a", 2, 0)}},
			"f:3:12: what stands here can be read, but not edited in place"},
		{"no savings to change", "name: a", Owned{SavingsNow: &saved}, "f has no savings to change"},
		{"after the end mark", "name: a\n...\n", Owned{Have: []Holding{pieces("a", 1)}}, "f cannot be edited in place"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, _, err := EditOwned([]byte(c.text), "f", c.want)
			if err == nil || !strings.HasPrefix(err.Error(), c.err) {
				t.Errorf("got %q, error %v; want an error that begins with %q", got, err, c.err)
			}
		})
	}
}

// The demos take what is bought without losing a byte of the rest.
func TestEditOwnedOfDemos(t *testing.T) {
	for _, name := range DemoNames() {
		t.Run(name, func(t *testing.T) {
			s, err := Demo(name)
			if err != nil {
				t.Fatal(err)
			}
			data, err := demoFiles.ReadFile("demos/" + name + "/" + FileName)
			if err != nil {
				t.Fatal(err)
			}
			now := catalog.Cents(12345)
			first := min(1, len(s.Have)-1) // what goes, where more is owned
			want := Owned{Have: slices.Clone(s.Have[first:]), Sold: 99, SavingsNow: &now}
			want.Have[0].Count++
			want.Have = append(want.Have, pieces("new-one", 3), metres("new-cable", 4.5, 6))
			got, changes, err := EditOwned(data, "f", want)
			if err != nil {
				t.Fatal(err)
			}
			tellsAll(t, string(data), string(got), changes)
			again, more, err := EditOwned(got, "f", want)
			if err != nil || string(again) != string(got) || len(more) != 0 {
				t.Errorf("edited again: %d changes, %v", len(more), err)
			}
			lost := 0
			for _, c := range changes {
				lost += len(c.Old)
			}
			if lost > 4 {
				t.Errorf("%d lines change: %s", lost, fmt.Sprint(changes))
			}
		})
	}
}
