package catalog

import (
	"fmt"
	"slices"
	"strings"

	"cartwright/catalog/problem"
)

// table is the format of one file: its columns, and the rules that hold between cells of a row.
type table[T any] struct {
	file    string
	columns []column[T]
	rules   []rule[T]
	pos     func(*T) *problem.Pos // where the first column's cell stands
	finish  func(*T)              // may be nil; runs after the cells are read
	doubts  func(*doubts[T])      // may be nil; warns of what is possible, but not plausible
}

// rule is something that must hold between the cells of a row.
type rule[T any] struct {
	at     string   // the column that is blamed
	uses   []string // the other columns it looks at
	broken func(v *T, at func(column string) entry) *flaw
}

// seat says which cells of a row belong to a column: that under its metric name and that under its US name. -1: the
// file has no such header.
type seat struct{ metric, us int }

// rows hands out the rows of a file; empty ones and comments are passed over.
type rows interface {
	next() ([]cell, bool)
	report() *report
}

// read returns the rows of a file. What is wrong goes to the sheet's report; a row with a mistake in it is
// returned as far as it goes, so that its id is known to the files that are read after.
func (t table[T]) read(from rows) []T {
	to := from.report()
	head, ok := from.next()
	if !ok {
		if to.list.Len() == 0 {
			to.add(to.whole(), to.noun()+" is empty", "name the columns in the first line: "+strings.Join(t.names(true), ","))
		}
		return nil
	}
	if separated(head, to) {
		return nil
	}
	f := &form{head, t.seats(head, to), map[string]int{}, to}
	for i, c := range t.columns {
		f.columns[c.name] = i
	}
	d := &doubts[T]{t: t, f: f}
	for {
		cells, ok := from.next()
		if !ok {
			if t.doubts != nil && to.list.Len() == 0 {
				t.doubts(d)
			}
			return d.rows
		}
		d.rows = append(d.rows, t.row(f, cells))
		if t.doubts != nil {
			d.cells = append(d.cells, cells)
		}
	}
}

// form is how the rows of one file are laid out.
type form struct {
	head    []cell
	seats   []seat         // of each column of the table
	columns map[string]int // from names to seats
	to      *report
}

// at returns the cell of a column in a row.
func (t table[T]) at(f *form, name string, cells []cell) entry {
	k := f.columns[name]
	in, _ := t.columns[k].filled(f.seats[k], cells)
	return in
}

// separated reports a header whose cells are not separated by commas.
func separated(head []cell, to *report) bool {
	if len(head) > 1 {
		return false
	}
	for _, s := range []struct{ mark, name string }{{";", "semicolons"}, {"\t", "tabs"}} {
		if strings.Contains(head[0].text, s.mark) {
			to.add(head[0].pos, "the cells are separated by "+s.name, "save the file with commas between the cells")
			return true
		}
	}
	return false
}

// names returns the names of the columns, of all or of those that must be there.
func (t table[T]) names(onlyNeeded bool) []string {
	var names []string
	for _, c := range t.columns {
		if c.need || !onlyNeeded {
			names = append(names, c.name)
		}
	}
	return names
}

// seats finds each column in the header, and reports names that are doubled, missing or nearly right. A name that is
// none of the table's is a person's own column.
func (t table[T]) seats(head []cell, to *report) []seat {
	seats := make([]seat, len(t.columns))
	for i := range seats {
		seats[i] = seat{-1, -1}
	}
	for i, h := range head {
		if h.text == "" { // a spreadsheet's empty columns; table.row checks that they are
			continue
		}
		k := slices.IndexFunc(t.columns, func(c column[T]) bool { return h.text == c.name || h.text == c.us })
		if k < 0 {
			t.unknown(h, to)
			continue
		}
		at := &seats[k].metric
		if h.text == t.columns[k].us {
			at = &seats[k].us
		}
		if *at >= 0 {
			to.add(h.pos, fmt.Sprintf("column %q stands twice", h.text), "keep one of them")
			continue
		}
		*at = i
	}
	for i, c := range t.columns {
		if c.need && seats[i].metric < 0 && seats[i].us < 0 {
			to.lost = to.lost || i == 0
			to.add(head[0].pos, fmt.Sprintf("column %q is missing", c.name), "add it: "+c.expected)
		}
	}
	return seats
}

// unknown reports a header that is nearly a column's name, and notes any other as a person's own column.
func (t table[T]) unknown(h cell, to *report) {
	known := t.names(false)
	for _, c := range t.columns {
		if c.us != "" {
			known = append(known, c.us)
		}
	}
	if near := problem.Nearest(h.text, known); near != "" {
		to.add(h.pos, "unknown column "+quote(h.text), fmt.Sprintf("did you mean %q?", near))
		return
	}
	to.own = append(to.own, OwnColumn{Name: h.text, Pos: h.pos})
}

// row reads one row, as far as its cells can be read.
func (t table[T]) row(f *form, cells []cell) T {
	var v T
	id := f.seats[0].metric
	*t.pos(&v) = cells[0].pos
	if id >= 0 && id < len(cells) {
		*t.pos(&v) = cells[id].pos
	}
	if len(cells) != len(f.head) {
		f.to.add(cells[min(len(f.head), len(cells)-1)].pos,
			fmt.Sprintf("the row has %d cells, the header has %d", len(cells), len(f.head)),
			"give each column one cell, and quote a cell with a comma in it")
		if id >= 0 && id < len(cells) {
			t.columns[0].read(&v, entry{cells[id], t.columns[0].name, false})
		}
		return v
	}
	for i, h := range f.head {
		if h.text == "" && cells[i].text != "" {
			f.to.add(cells[i].pos, "the cell "+quote(cells[i].text)+" stands under no header", "name its column or empty it")
		}
	}
	wrong := make([]bool, len(t.columns))
	for i, c := range t.columns {
		wrong[i] = !c.cell(&v, f.seats[i], cells, f.to)
	}
	t.check(&v, f, cells, wrong)
	if t.finish != nil {
		t.finish(&v)
	}
	return v
}

// cell reads the cell of one column into v. It is false where that cannot be done.
func (c column[T]) cell(v *T, s seat, cells []cell, to *report) bool {
	in, ok := c.entry(s, cells, to)
	switch {
	case !ok:
		return false
	case in.text == "":
		if c.derive != nil {
			c.derive(v)
		}
		return true
	}
	bad := c.read(v, in)
	if bad != nil {
		to.add(in.pos, bad.wrong, bad.right)
	}
	return bad == nil
}

// filled returns the cell a column has in a row, under whichever of its names it is filled, and whether it has any.
// Where both are, it is that of the second name.
func (c column[T]) filled(s seat, cells []cell) (entry, bool) {
	switch {
	case s.metric < 0 && s.us < 0:
		return entry{cell{"", cells[0].pos}, c.name, false}, false
	case s.metric < 0 || s.us >= 0 && cells[s.us].text != "":
		return entry{cells[s.us], c.us, true}, true
	}
	return entry{cells[s.metric], c.name, false}, true
}

// entry returns the text a column has in a row: the cell's, or what an empty one stands for. It is false
// where the column needs a cell and has none, or has one under each of its names.
func (c column[T]) entry(s seat, cells []cell, to *report) (entry, bool) {
	in, there := c.filled(s, cells)
	switch {
	case !there:
		in.text = c.fill
		return in, !c.need
	case in.us && s.metric >= 0 && cells[s.metric].text != "":
		to.add(in.pos, fmt.Sprintf("%s says again what %s says", c.us, c.name), "fill one of the two in a row")
		return in, false
	case in.text != "":
		return in, true
	case c.need && !c.sometimes:
		to.add(in.pos, in.header+" is empty", "write "+c.expected)
		return in, false
	}
	return entry{cell{c.fill, in.pos}, c.name, false}, true
}

// check tries the rules whose cells could all be read.
func (t table[T]) check(v *T, f *form, cells []cell, wrong []bool) {
	at := func(name string) entry { return t.at(f, name, cells) }
	unread := func(name string) bool { return wrong[f.columns[name]] }
	for _, r := range t.rules {
		if unread(r.at) || slices.ContainsFunc(r.uses, unread) {
			continue
		}
		if bad := r.broken(v, at); bad != nil {
			f.to.add(at(r.at).pos, bad.wrong, bad.right)
		}
	}
}
