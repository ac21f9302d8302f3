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

// kept is what every file of these tests has beside what is owned.
const kept = "name: Cart # ours\nruns:\n  - {run: string, length: 3 ft}\n"

func pieces(part string, n float64) Holding { return Holding{PartID: part, Count: n} }

func metres(part string, m float64, ends int) Holding {
	return Holding{PartID: part, Count: m, ByLength: true, Ends: ends}
}

// Whatever style a list is written in, what has to change does, and nothing else.
func TestEditOwned(t *testing.T) {
	now := func(c catalog.Cents) *catalog.Cents { return &c }
	for _, c := range []struct {
		name, text string
		want       Owned
		after      string
	}{
		{"nothing changes", "have: # what is there\n  - {part: a, count: 1}\n",
			Owned{Have: []Holding{pieces("a", 1)}},
			"have: # what is there\n  - {part: a, count: 1}\n"},
		{"more and fewer of lines in braces", "have:\n  - {part: a, count: 1, sell: 5}   # one\n  - { count: 3 , part: b }\n",
			Owned{Have: []Holding{pieces("a", 4), pieces("b", 2)}},
			"have:\n  - {part: a, count: 4, sell: 5}   # one\n  - { count: 2 , part: b }\n"},
		{"a new line after the last, its comment kept", "have:\n    - {part: a, count: 1} # one\n\n# money\nsold: 0\n",
			Owned{Have: []Holding{pieces("a", 1), pieces("b", 2), metres("c", 3, 4)}},
			"have:\n    - {part: a, count: 1} # one\n    - {part: b, count: 2}\n    - {part: c, count: 3 m, ends: 4}\n\n# money\nsold: 0\n"},
		{"a line goes with its comment, one of its own stays", "have:\n  # the pack\n  - {part: a, count: 1} # sold soon\n  - {part: b, count: 2}\n",
			Owned{Have: []Holding{pieces("b", 2)}},
			"have:\n  # the pack\n  - {part: b, count: 2}\n"},
		{"the last line goes, a new one comes", "have:\n  - {part: a, count: 1}\n  - {part: b, count: 2} # gone\nsold: 5\n",
			Owned{Have: []Holding{pieces("a", 1), pieces("c", 1)}, Sold: 500},
			"have:\n  - {part: a, count: 1}\n  - {part: c, count: 1}\nsold: 5\n"},
		{"all go", "have: # mine\n  - {part: a, count: 1}\n  - {part: b, count: 2}\nsold: 0\n",
			Owned{}, "have: [] # mine\nsold: 0\n"},
		{"all go and others come", "have:\n- {part: a, count: 1}\nsold: 0\n",
			Owned{Have: []Holding{pieces("b", 1)}}, "have:\n- {part: b, count: 1}\nsold: 0\n"},
		{"keys on lines of their own", "have:\n  - part: a # first\n    count: 1 # of two\n    sell: 5\n  -\n    count: 3\n    part: b\n",
			Owned{Have: []Holding{pieces("a", 2), pieces("b", 3), pieces("c", 1)}},
			"have:\n  - part: a # first\n    count: 2 # of two\n    sell: 5\n  -\n    count: 3\n    part: b\n  - part: c\n    count: 1\n"},
		{"a line alone with its dash goes", "have:\n  - # second-hand\n    part: a\n    count: 1\n  - part: b\n    count: 2\n",
			Owned{Have: []Holding{pieces("b", 2)}},
			"have:\n  - part: b\n    count: 2\n"},
		{"ends on lines of their own", "have:\n  - part: a\n    count: 6 ft # left over\n    sell: 1\n",
			Owned{Have: []Holding{metres("a", 1.8288, 8), metres("b", 3.048, 2)}},
			"have:\n  - part: a\n    count: 6 ft # left over\n    ends: 8\n    sell: 1\n  - part: b\n    count: 10 ft\n    ends: 2\n"},
		{"ends added, changed, taken to nothing", "have:\n  - {part: a, count: 6 ft}\n  - {part: b, count: 1 m, ends: 2}\n  - {part: c, count: 1 m, ends: 3} # worn\n",
			Owned{Have: []Holding{metres("a", 1.8288, 4), metres("b", 1, 6), metres("c", 1, 0)}},
			"have:\n  - {part: a, count: 6 ft, ends: 4}\n  - {part: b, count: 1 m, ends: 6}\n  - {part: c, count: 1 m, ends: 0} # worn\n"},
		{"lengths in their own unit and quotes", "have:\n  - {part: a, count: \"14 ft\"}\n  - {part: b, count: '30 in'}\n  - {part: c, count: 2.5 m}\n",
			Owned{Have: []Holding{metres("a", 6.096, 0), metres("b", 1.524, 0), metres("c", 10.25, 0)}},
			"have:\n  - {part: a, count: \"20 ft\"}\n  - {part: b, count: '60 in'}\n  - {part: c, count: 10.25 m}\n"},
		{"a length that no feet give is rounded up", "have:\n  - {part: a, count: 14 ft}\n",
			Owned{Have: []Holding{metres("a", 10, 0)}},
			"have:\n  - {part: a, count: 32.8084 ft}\n"},
		{"brackets on one line", "have: [{part: a, count: 1}, {part: b, count: 2}, {part: c, count: 3}] # all\n",
			Owned{Have: []Holding{pieces("a", 5), pieces("c", 3), pieces("d", 1)}},
			"have: [{part: a, count: 5}, {part: c, count: 3}, {part: d, count: 1}] # all\n"},
		{"the last in brackets goes", "have: [ {part: a, count: 1}, {part: b, count: 2}, {part: c, count: 2}, ]\n",
			Owned{Have: []Holding{pieces("a", 1)}},
			"have: [ {part: a, count: 1}, ]\n"},
		{"brackets over several lines", "have: [\n  {part: a, count: 1}, # one\n  {part: \"b]\", count: 2} # it's ]\n  ]\n",
			Owned{Have: []Holding{pieces("a", 1), pieces("b]", 3), pieces("d", 1)}},
			"have: [\n  {part: a, count: 1}, # one\n  {part: \"b]\", count: 3},\n  {part: d, count: 1} # it's ]\n  ]\n"},
		{"all in brackets go", "have: [{part: a, count: 1}]\n", Owned{}, "have: []\n"},
		{"all in brackets go and others come", "have: [{part: a, count: 1}]\n",
			Owned{Have: []Holding{pieces("b", 1), pieces("c", 1)}}, "have: [{part: b, count: 1}, {part: c, count: 1}]\n"},
		{"an empty list", "have: [ ]   # nothing yet\n\nsold: 0\n",
			Owned{Have: []Holding{pieces("a", 1), metres("b", 3.048, 6)}},
			"have:    # nothing yet\n  - {part: a, count: 1}\n  - {part: b, count: 10 ft, ends: 6}\n\nsold: 0\n"},
		{"no list at all, money too", "savings: {per_month: 5}\n",
			Owned{Have: []Holding{pieces("a", 1)}, Sold: 1250, SavingsNow: now(700)},
			"savings: {now: 7, per_month: 5}\n\nhave:\n  - {part: a, count: 1}\nsold: 12.50\n"},
		{"no list, no line end", "sold: 3", Owned{Have: []Holding{pieces("a", 1)}}, "sold: 0\n\nhave:\n  - {part: a, count: 1}"},
		{"money on lines of its own", "sold: 1150.50   # the old pack\nsavings:\n  now: 900 # in the tin\n  per_month: 5\n",
			Owned{SavingsNow: now(1234)},
			"sold: 0   # the old pack\nsavings:\n  now: 12.34 # in the tin\n  per_month: 5\n"},
		{"nothing put aside so far", "savings:\n  per_month: 5\n",
			Owned{SavingsNow: now(100)}, "savings:\n  now: 1\n  per_month: 5\n"},
		{"savings left as they are", "savings: {now: 5, per_month: 5}\n", Owned{}, "savings: {now: 5, per_month: 5}\n"},
		{"names that need quotes", "have:\n  - {part: \"a b\", count: 1}\n",
			Owned{Have: []Holding{pieces("a b", 2), pieces("12", 1), pieces("no", 1), pieces("c: d", 1)}},
			"have:\n  - {part: \"a b\", count: 2}\n  - {part: \"12\", count: 1}\n  - {part: \"no\", count: 1}\n  - {part: \"c: d\", count: 1}\n"},
	} {
		for _, form := range []struct{ name, newline, mark string }{{"", "\n", ""}, {" with CRLF and a mark", "\r\n", mark}} {
			t.Run(c.name+form.name, func(t *testing.T) {
				in := form.mark + strings.ReplaceAll(kept+c.text, "\n", form.newline)
				want := form.mark + strings.ReplaceAll(kept+c.after, "\n", form.newline)
				got, changes, err := EditOwned([]byte(in), "scenario.yaml", c.want)
				if err != nil {
					t.Fatal(err)
				}
				if string(got) != want {
					t.Fatalf("got\n%q\nwant\n%q", got, want)
				}
				tellsAll(t, in, want, changes)
			})
		}
	}
}

// tellsAll checks that the changes told are those that were made: with them the old lines become the new.
func tellsAll(t interface {
	Helper()
	Errorf(string, ...any)
}, in, out string, changes []LineChange) {
	t.Helper()
	old := lines(strings.TrimPrefix(in, mark))
	var told []string
	at := 0
	for _, c := range changes {
		told = append(append(told, old[at:c.Line-1]...), c.New...)
		for i, line := range c.Old {
			if old[c.Line-1+i] != line {
				t.Errorf("line %d is told as %q, it is %q", c.Line+i, line, old[c.Line-1+i])
			}
		}
		at = c.Line - 1 + len(c.Old)
	}
	told = append(told, old[at:]...)
	if want := lines(strings.TrimPrefix(out, mark)); !slices.Equal(told, want) {
		t.Errorf("the changes make\n%q\nof it, not\n%q", told, want)
	}
	if (len(changes) == 0) != (in == out) {
		t.Errorf("%d changes told", len(changes))
	}
}

// JSON is YAML: a file written so stays so.
func TestEditOwnedInJSON(t *testing.T) {
	in := `{"name": "Cart", "have": [{"part": "a", "count": 1}], "savings": {"per_month": 5}}`
	saved := catalog.Cents(700)
	got, _, err := EditOwned([]byte(in), "f", Owned{Have: []Holding{pieces("a", 2), metres("b", 2, 4)}, Sold: 100, SavingsNow: &saved})
	if err != nil {
		t.Fatal(err)
	}
	want := `{"sold": 1, "name": "Cart", "have": [{"part": "a", "count": 2}, {"part": "b", "count": "2 m", "ends": 4}], "savings": {"now": 7, "per_month": 5}}`
	if string(got) != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	got, _, err = EditOwned([]byte(`{"name": "Cart"}`), "f", Owned{Have: []Holding{pieces("a", 2)}})
	if want := `{"name": "Cart", "have": [{"part": "a", "count": 2}]}`; err != nil || string(got) != want {
		t.Errorf("got  %s, %v\nwant %s", got, err, want)
	}
}

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
			want := Owned{Have: slices.Clone(s.Have[1:]), Sold: 99, SavingsNow: &now}
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
