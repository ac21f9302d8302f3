package scenarios

import (
	"slices"
	"strconv"
	"strings"
)

// editHave notes the edits that make the list of what is owned say what is wanted.
func (t *text) editHave(root *node, want []Holding) error {
	have := root.child("have")
	unit := lengthUnit(root)
	var items []*node
	if have != nil {
		if have.value.kind != isList {
			return t.odd(have.value.pos)
		}
		items = have.value.items
	}
	var gone []int // indices of items
	known := map[string]bool{}
	for i, item := range items {
		part := item.child("part")
		if part == nil || item.child("count") == nil {
			return t.odd(item.pos)
		}
		known[part.value.value] = true
		at := slices.IndexFunc(want, func(h Holding) bool { return h.PartID == part.value.value })
		if at < 0 {
			gone = append(gone, i)
			continue
		}
		if err := t.editHolding(item, want[at], unit); err != nil {
			return err
		}
	}
	fresh := slices.DeleteFunc(slices.Clone(want), func(h Holding) bool { return known[h.PartID] })
	switch {
	case len(gone)+len(fresh) == 0:
		return nil
	case have == nil:
		return t.startHave(root, fresh, unit)
	case t.isFlow(have.value):
		return t.editFlow(root, have.value, gone, fresh, unit)
	}
	return t.editBlock(have, gone, fresh, unit)
}

// editHolding makes one item say how much of its part is owned.
func (t *text) editHolding(item *node, want Holding, unit string) error {
	count := item.child("count").value
	end, err := t.end(count)
	if err != nil {
		return err
	}
	if now, byLength := countOf(count); now != want.Count || byLength != want.ByLength {
		if own := unitOf(count); own != "" {
			unit = own
		}
		t.replace(t.at(count.pos), end, inQuotesOf(count, countText(want, unit)))
	}
	return t.editEnds(item, end, want.Ends)
}

// countOf reads a count as pieces or metres; below 0 where it is none.
func countOf(n *node) (count float64, byLength bool) {
	if n.kind == isText {
		return lengthOf(n.value), true
	}
	v, err := strconv.ParseFloat(n.value, 64)
	if err != nil {
		return -1, false
	}
	return v, false
}

// editEnds makes an item say how many crimped ends are owned. The key comes after the count, which ends at
// an offset.
func (t *text) editEnds(item *node, count, want int) error {
	e := item.child("ends")
	switch {
	case e == nil && want == 0:
		return nil
	case e != nil && e.value.value == strconv.Itoa(want):
		return nil
	case e != nil:
		end, err := t.end(e.value)
		if err != nil {
			return err
		}
		t.replace(t.at(e.value.pos), end, strconv.Itoa(want))
	case t.isFlow(item):
		t.insert(count, ", "+t.keyText(item, "ends")+": "+strconv.Itoa(want))
	default:
		indent := strings.Repeat(" ", item.child("count").pos.Column-1)
		t.insertLines(count, indent+t.keyText(item, "ends")+": "+strconv.Itoa(want))
	}
	return nil
}

// startHave adds the list to a file that has none, after all else.
func (t *text) startHave(root *node, fresh []Holding, unit string) error {
	if t.isFlow(root) {
		end, err := t.end(root.keys[len(root.keys)-1].value)
		if err != nil {
			return err
		}
		quoted := t.keyText(root, "have") != "have"
		t.insert(end, ", "+t.keyText(root, "have")+": ["+strings.Join(flowItems(fresh, unit, quoted), ", ")+"]")
		return nil
	}
	indent := strings.Repeat(" ", root.keys[0].pos.Column-1)
	lines := []string{"", indent + "have:"}
	for _, item := range flowItems(fresh, unit, false) {
		lines = append(lines, indent+"  - "+item)
	}
	t.insertLines(len(t.data), lines...)
	return nil
}

// flowItems writes holdings in braces.
func flowItems(list []Holding, unit string, quoted bool) []string {
	var items []string
	for _, h := range list {
		count := newCountText(h, unit)
		if h.ByLength && quoted {
			count = strconv.Quote(count)
		}
		item := wordText("part", quoted) + ": " + wordText(h.PartID, quoted) + ", " + wordText("count", quoted) + ": " + count
		if h.Ends > 0 {
			item += ", " + wordText("ends", quoted) + ": " + strconv.Itoa(h.Ends)
		}
		items = append(items, "{"+item+"}")
	}
	return items
}
