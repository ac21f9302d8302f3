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

// editBlock takes items out of, and puts new ones into, a list of which every item begins with a dash. A
// comment on a line of its own stays, one behind an item goes with it.
func (t *text) editBlock(have *entry, gone []int, fresh []Holding, unit string) error {
	items := have.value.items
	last := items[len(items)-1]
	lastEnd, err := t.end(last)
	if err != nil {
		return err
	}
	for _, i := range gone {
		end, err := t.end(items[i])
		if err != nil {
			return err
		}
		dash, err := t.dash(items[i])
		if err != nil {
			return err
		}
		t.replace(t.starts[t.lineOf(dash)], t.lineEnd(t.lineOf(end)), "")
	}
	if len(fresh) == 0 {
		if len(gone) == len(items) { // a list of nothing is written in brackets
			colon := t.at(have.pos) + strings.IndexByte(t.data[t.at(have.pos):], ':')
			t.insert(colon+1, " []")
		}
		return nil
	}
	dash, err := t.dash(last)
	if err != nil {
		return err
	}
	lead := t.indent(dash) + "- "
	var lines []string
	for i, item := range flowItems(fresh, unit, false) {
		if t.isFlow(last) {
			lines = append(lines, lead+item)
			continue
		}
		inner := strings.Repeat(" ", len(lead))
		lines = append(lines, lead+"part: "+wordText(fresh[i].PartID, false), inner+"count: "+newCountText(fresh[i], unit))
		if fresh[i].Ends > 0 {
			lines = append(lines, inner+"ends: "+strconv.Itoa(fresh[i].Ends))
		}
	}
	t.insertLines(lastEnd, lines...)
	return nil
}

// dash returns the offset of the dash that an item of a list begins with: in its line, or alone above it.
func (t *text) dash(item *node) (int, error) {
	for line := item.pos.Line - 1; line >= 0; line-- {
		content := strings.TrimLeft(t.data[t.starts[line]:t.lineEnd(line)], " ")
		if strings.HasPrefix(content, "-") {
			return t.lineEnd(line) - len(content), nil
		}
		if line < item.pos.Line-1 && strings.TrimSpace(content) != "" && !strings.HasPrefix(content, "#") {
			break
		}
	}
	return 0, t.odd(item.pos)
}

// editFlow takes items out of, and puts new ones into, a list in brackets.
func (t *text) editFlow(root, list *node, gone []int, fresh []Holding, unit string) error {
	open := t.at(list.pos)
	closed, err := t.end(list)
	if err != nil {
		return err
	}
	quoted := t.keyText(root, "have") != "have"
	added := flowItems(fresh, unit, quoted)
	if len(gone) == len(list.items) {
		if len(list.items) > 0 || t.isFlow(root) || t.lineOf(open) != t.lineOf(closed) {
			t.replace(open+1, closed-1, strings.Join(added, ", "))
			return nil
		}
		// An empty list gives way to one with a line for each part.
		lead := strings.Repeat(" ", root.keys[0].pos.Column-1) + "  - "
		for i := range added {
			added[i] = lead + added[i]
		}
		t.replace(open, closed, "")
		t.insertLines(closed, added...)
		return nil
	}
	ends := make([]int, len(list.items))
	for i := range list.items {
		if ends[i], err = t.end(list.items[i]); err != nil {
			return err
		}
	}
	kept := -1 // the last that stays
	for i := range list.items {
		if !slices.Contains(gone, i) {
			kept = i
		}
	}
	for i, item := range added {
		between := ", "
		if from := t.at(list.items[kept].pos); t.lineOf(from) != t.lineOf(open) && strings.TrimSpace(t.indent(from)) == "" {
			between = "," + t.newline() + t.indent(from)
		}
		added[i] = between + item
	}
	t.insert(ends[kept], strings.Join(added, ""))
	for _, i := range gone {
		if i < kept {
			t.replace(t.at(list.items[i].pos), t.at(list.items[i+1].pos), "")
		} else {
			t.replace(ends[i-1], ends[i], "")
		}
	}
	return nil
}
