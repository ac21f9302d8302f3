package scenarios

import (
	"slices"
	"strconv"
	"strings"
)

// editBlock removes items from, and adds new ones to, a list whose items each begin with a dash. Comments stay: one
// after an item that is removed gets a line of its own.
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
		from, to := t.starts[t.lineOf(dash)], t.lineEnd(t.lineOf(end))
		t.replace(from, to, t.commentLines(t.comments(from, to), t.indent(dash)))
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

// editFlow removes items from, and adds new ones to, a list in brackets.
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
			told := t.comments(open+1, closed-1)
			t.replace(open+1, closed-1, strings.Join(added, ", "))
			t.commentsAfter(closed, told)
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
	var told []string
	for _, i := range gone {
		from, to := t.at(list.items[i].pos), 0
		if i < kept {
			to = t.at(list.items[i+1].pos)
		} else {
			from, to = ends[i-1], ends[i]
		}
		told = append(told, t.comments(from, to)...)
		t.replace(from, to, "")
	}
	t.commentsAfter(closed, told)
	return nil
}
