package scenarios

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"cartwright/catalog"
	"cartwright/catalog/problem"
)

// Owned is what is owned and the money in hand, to be written into a scenario's file.
type Owned struct {
	// Have is all that is owned, each part once. Of a holding the part, the count (ByLength: metres) and the
	// ends are written; what it may be sold for stays as the file has it.
	Have []Holding
	Sold catalog.Cents
	// SavingsNow is the money put aside; nil leaves the savings as they are.
	SavingsNow *catalog.Cents
}

// mark is the byte order mark that spreadsheets and some editors write.
const mark = "\uFEFF"

// EditOwned returns a scenario file's text with what is owned and the money in hand changed in place, and the lines
// that change: counts and amounts are rewritten where they differ, lines of parts that are no longer owned
// go, lines of new parts come after the others in the style of the last. All other bytes stay, comments,
// order and line ends included. File is the name in messages.
//
// The new text is read again before it is returned: it is an error where it would mean anything but what is
// wanted, or where the file is written in a way that can be read but not edited.
func EditOwned(data []byte, file string, want Owned) ([]byte, []LineChange, error) {
	body, marked := strings.CutPrefix(string(data), mark)
	root, err := reparse(body, file)
	if err != nil {
		return nil, nil, err
	}
	t := newText(file, body)
	if err := t.editOwned(root, want); err != nil {
		return nil, nil, err
	}
	out, changes, err := t.apply()
	if err != nil {
		return nil, nil, err
	}
	if err := confirm(root, out, file, want); err != nil {
		return nil, nil, err
	}
	if marked {
		out = mark + out
	}
	return []byte(out), changes, nil
}

// reparse reads text into nodes; it has to be a mapping.
func reparse(body, file string) (*node, error) {
	var list problem.List
	if !checkText([]byte(body), file, &list) {
		return nil, list.Err()
	}
	root := parseTree([]byte(body), file, &list)
	if err := list.Err(); err != nil {
		return nil, err
	}
	if root.kind != isMapping || len(root.keys) == 0 {
		noScenario(root, &list)
		return nil, list.Err()
	}
	return root, nil
}

// child returns the entry of a key, nil where there is none.
func (n *node) child(key string) *entry {
	for i := range n.keys {
		if n.keys[i].key == key {
			return &n.keys[i]
		}
	}
	return nil
}

// editOwned notes the edits that make a file say what is wanted.
func (t *text) editOwned(root *node, want Owned) error {
	if err := t.editHave(root, want.Have); err != nil {
		return err
	}
	if err := t.editAmount(root, "sold", want.Sold); err != nil {
		return err
	}
	if want.SavingsNow == nil {
		return nil
	}
	savings := root.child("savings")
	if savings == nil || savings.value.kind != isMapping {
		return fmt.Errorf("%s has no savings to change", t.file)
	}
	return t.editAmount(savings.value, "now", *want.SavingsNow)
}

// editAmount makes a key of a mapping an amount of money. One that is absent stands for 0 and is added only
// where it is more: to the file after all else, to a section before all else.
func (t *text) editAmount(in *node, key string, amount catalog.Cents) error {
	e := in.child(key)
	switch {
	case e == nil && amount == 0:
		return nil
	case e == nil && len(in.keys) == 0:
		return t.odd(in.pos)
	case e == nil:
		t.addKey(in, key, amountText(amount))
		return nil
	case readAmount(e.value) == amount:
		return nil
	}
	end, err := t.end(e.value)
	if err != nil {
		return err
	}
	t.replace(t.at(e.value.pos), end, amountText(amount))
	return nil
}

// addKey adds a key with a single value to a mapping.
func (t *text) addKey(in *node, key, value string) {
	first := t.at(in.keys[0].pos)
	switch indent := in.keys[0].pos.Column - 1; {
	case t.isFlow(in):
		t.insert(first, t.keyText(in, key)+": "+value+", ")
	case indent == 0:
		t.insertLines(len(t.data), key+": "+value)
	default:
		t.insert(first, key+": "+value+t.newline()+strings.Repeat(" ", indent))
	}
}

// confirm reads the new text and compares what it says with what is wanted, and everything else with what the old
// text said.
func confirm(before *node, made, file string, want Owned) error {
	after, err := reparse(made, file)
	if err != nil {
		return fmt.Errorf("%s cannot be edited in place: %w", file, err)
	}
	r := &reader{file: file, problems: &problem.List{}, places: map[string]problem.Pos{}}
	top := r.newSection(after, "", "the scenario", topKeys)
	have, sold := top.holdings(), top.money("sold", 0)
	ok := sold == want.Sold && sameHoldings(have, want.Have)
	was := r.newSection(before, "", "the scenario", topKeys)
	ok = ok && sameSales(was.holdings(), have) && sameBut(before, after, "have", "sold", "savings")
	switch a, b := before.child("savings"), after.child("savings"); {
	case a == nil || b == nil:
		ok = ok && a == b
	case want.SavingsNow == nil:
		ok = ok && alike(a.value, b.value)
	default:
		v, _ := top.sub("savings", "savings", false, savingsKeys)
		ok = ok && v.money("now", 0) == *want.SavingsNow && sameBut(a.value, b.value, "now")
	}
	if err := r.problems.Err(); err != nil {
		return fmt.Errorf("%s cannot be edited in place: %w", file, err)
	}
	if !ok {
		return fmt.Errorf("%s cannot be edited in place: the new text would mean something else; write have as a list with a line for each part", file)
	}
	return nil
}

// lengthHair is how many metres more than there are may be written, so that the figure has few digits: less than the
// width of a hair.
const lengthHair = 5e-5

// sameHoldings reports whether two lists say the same of what is owned, in whatever order.
func sameHoldings(have, want []Holding) bool {
	if len(have) != len(want) {
		return false
	}
	for _, w := range want {
		i := slices.IndexFunc(have, func(h Holding) bool { return h.PartID == w.PartID })
		if i < 0 || have[i].ByLength != w.ByLength || have[i].Ends != w.Ends {
			return false
		}
		more := have[i].Count - w.Count
		if more != 0 && !(w.ByLength && math.Abs(more) <= lengthHair) {
			return false
		}
	}
	return true
}

// sameSales reports whether everything still owned may be sold for what it could be before, and nothing new
// may.
func sameSales(before, after []Holding) bool {
	for _, h := range after {
		price := catalog.Cents(-1)
		for _, b := range before {
			if b.PartID == h.PartID && b.Sell != nil {
				price = *b.Sell
			}
		}
		if (h.Sell == nil) != (price < 0) || h.Sell != nil && *h.Sell != price {
			return false
		}
	}
	return true
}

// alike reports whether two values mean the same.
func alike(a, b *node) bool {
	if a.kind != b.kind || a.value != b.value || len(a.items) != len(b.items) {
		return false
	}
	for i := range a.items {
		if !alike(a.items[i], b.items[i]) {
			return false
		}
	}
	return sameBut(a, b)
}

// sameBut reports whether two mappings have the same keys in the same order with the same values, but for some
// keys.
func sameBut(a, b *node, aside ...string) bool {
	keep := func(n *node) []entry {
		return slices.DeleteFunc(slices.Clone(n.keys), func(e entry) bool { return contains(aside, e.key) })
	}
	x, y := keep(a), keep(b)
	return slices.EqualFunc(x, y, func(p, q entry) bool { return p.key == q.key && alike(p.value, q.value) })
}
