package scenarios

import (
	"slices"
	"strings"
	"testing"

	"cartwright/catalog"
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
		{"a line goes, its comment stays", "have:\n  # the pack\n  - {part: a, count: 1} # sold soon\n  - {part: b, count: 2}\n",
			Owned{Have: []Holding{pieces("b", 2)}},
			"have:\n  # the pack\n  # sold soon\n  - {part: b, count: 2}\n"},
		{"the last line goes, a new one comes", "have:\n  - {part: a, count: 1}\n  - {part: b, count: 2} # gone\nsold: 5\n",
			Owned{Have: []Holding{pieces("a", 1), pieces("c", 1)}, Sold: 500},
			"have:\n  - {part: a, count: 1}\n  # gone\n  - {part: c, count: 1}\nsold: 5\n"},
		{"a part of several lines goes, its comments stay", "have:\n  - part: \"#1\" # old\n    count: 1 # one's enough\n    # and heavy\n    sell: 5\n  - {part: b, count: 2}\n",
			Owned{Have: []Holding{pieces("b", 2)}},
			"have:\n  # old\n  # one's enough\n  # and heavy\n  - {part: b, count: 2}\n"},
		{"all go", "have: # mine\n  - {part: a, count: 1}\n  - {part: b, count: 2}\nsold: 0\n",
			Owned{}, "have: [] # mine\nsold: 0\n"},
		{"all go and others come", "have:\n- {part: a, count: 1}\nsold: 0\n",
			Owned{Have: []Holding{pieces("b", 1)}}, "have:\n- {part: b, count: 1}\nsold: 0\n"},
		{"keys on lines of their own", "have:\n  - part: a # first\n    count: 1 # of two\n    sell: 5\n  -\n    count: 3\n    part: b\n",
			Owned{Have: []Holding{pieces("a", 2), pieces("b", 3), pieces("c", 1)}},
			"have:\n  - part: a # first\n    count: 2 # of two\n    sell: 5\n  -\n    count: 3\n    part: b\n  - part: c\n    count: 1\n"},
		{"a line alone with its dash goes", "have:\n  - # second-hand\n    part: a\n    count: 1\n  - part: b\n    count: 2\n",
			Owned{Have: []Holding{pieces("b", 2)}},
			"have:\n  # second-hand\n  - part: b\n    count: 2\n"},
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
		{"some of brackets over several lines go, their comments stay", "have: [\n  {part: a, count: 1}, # one\n  {part: b, count: 2}, # two\n  {part: c, count: 3} # three\n  ]\nsold: 0\n",
			Owned{Have: []Holding{pieces("b", 2)}},
			"have: [\n  {part: b, count: 2} # three\n  ]\n  # one\n  # two\nsold: 0\n"},
		{"all of brackets over several lines go, their comments stay", "have: [\n  {part: a, count: 1}, # one\n  ]\nsold: 0\n",
			Owned{}, "have: []\n  # one\nsold: 0\n"},
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
