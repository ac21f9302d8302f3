package scenarios

import (
	"fmt"
	"sort"
	"strings"

	"cartwright/catalog/problem"
)

// text is a file's text with its places, and the edits to be made in it. Every byte that no edit covers
// stays as it is.
type text struct {
	file   string
	data   string
	starts []int // of each line
	edits  []edit
}

// edit replaces data[from:to].
type edit struct {
	from, to int
	by       string
}

// LineChange is a place where lines of a file are replaced by others. Line is the number of the first old line, or,
// where there is none, of the line before which the new ones are put.
type LineChange struct {
	Line int
	Old  []string
	New  []string
}

func newText(file, data string) *text {
	t := &text{file: file, data: data, starts: []int{0}}
	for i := range len(data) {
		if data[i] == '\n' {
			t.starts = append(t.starts, i+1)
		}
	}
	return t
}

// newline returns how the file ends its lines.
func (t *text) newline() string {
	if strings.Contains(t.data, "\r\n") {
		return "\r\n"
	}
	return "\n"
}

// at returns the offset of a place.
func (t *text) at(pos problem.Pos) int { return t.starts[pos.Line-1] + pos.Column - 1 }

// lineOf returns the index of the line that an offset is in.
func (t *text) lineOf(offset int) int {
	return sort.SearchInts(t.starts, offset+1) - 1
}

// lineEnd returns the offset just after the line, its line end included.
func (t *text) lineEnd(line int) int {
	if line+1 < len(t.starts) {
		return t.starts[line+1]
	}
	return len(t.data)
}

// indent returns what stands before an offset in its line.
func (t *text) indent(offset int) string { return t.data[t.starts[t.lineOf(offset)]:offset] }

// replace notes an edit, insert one that takes nothing away.
func (t *text) replace(from, to int, by string) { t.edits = append(t.edits, edit{from, to, by}) }

func (t *text) insert(at int, what string) { t.replace(at, at, what) }

// insertLines puts whole lines after the line that an offset is in.
func (t *text) insertLines(offset int, lines ...string) {
	line := t.lineOf(offset)
	end := t.lineEnd(line)
	block := strings.Join(lines, t.newline()) + t.newline()
	if end == len(t.data) && !strings.HasSuffix(t.data, "\n") {
		block = t.newline() + strings.TrimSuffix(block, t.newline())
	}
	t.insert(end, block)
}

// isFlow reports whether a list or mapping is written in brackets.
func (t *text) isFlow(n *node) bool {
	c := t.data[t.at(n.pos)]
	return c == '[' || c == '{'
}

// end returns the offset just after a value. It is an error for text written as a block, of which the reader
// keeps no end.
func (t *text) end(n *node) (int, error) {
	switch {
	case n.kind == isMapping && t.isFlow(n), n.kind == isList && t.isFlow(n):
		return t.closing(t.at(n.pos))
	case n.kind == isMapping && len(n.keys) > 0:
		return t.end(n.keys[len(n.keys)-1].value)
	case n.kind == isList && len(n.items) > 0:
		return t.end(n.items[len(n.items)-1])
	}
	from := t.at(n.pos)
	if n.source == "" || !strings.HasPrefix(t.data[from:], n.source) {
		return 0, t.odd(n.pos)
	}
	return from + len(n.source), nil
}

// closing returns the offset just after the bracket that closes the one at open. Brackets within quotes and
// comments do not count; a quote begins a text only where a value can begin.
func (t *text) closing(open int) (int, error) {
	depth, begins := 0, true
	for i := open; i < len(t.data); i++ {
		switch c := t.data[i]; {
		case c == '[' || c == '{':
			depth++
			begins = true
		case c == ']' || c == '}':
			if depth--; depth == 0 {
				return i + 1, nil
			}
			begins = false
		case c == ',' || c == ':':
			begins = true
		case c == '#' && strings.ContainsRune(" \t\n", rune(t.data[i-1])):
			for i+1 < len(t.data) && t.data[i+1] != '\n' {
				i++
			}
		case (c == '"' || c == '\'') && begins:
			i = t.closingQuote(i)
			begins = false
		case c != ' ' && c != '\t' && c != '\n' && c != '\r':
			begins = false
		}
	}
	line := t.lineOf(open)
	return 0, t.odd(problem.Pos{File: t.file, Line: line + 1, Column: open - t.starts[line] + 1})
}

// closingQuote returns the offset of the quote that closes the one at open, or the end of the text. In double
// quotes a backslash takes the next byte's meaning, in single quotes a quote is written twice.
func (t *text) closingQuote(open int) int {
	quote := t.data[open]
	for i := open + 1; i < len(t.data); i++ {
		switch {
		case quote == '"' && t.data[i] == '\\':
			i++
		case quote == '\'' && t.data[i] == '\'' && i+1 < len(t.data) && t.data[i+1] == '\'':
			i++
		case t.data[i] == quote:
			return i
		}
	}
	return len(t.data)
}

// odd is the error of a place that is written in a way that can be read but not edited.
func (t *text) odd(pos problem.Pos) error {
	var list problem.List
	list.Add(pos, "what stands here can be read, but not edited in place",
		"write it on one line, or each item of have on a line of its own: - {part: lfp-rack-5, count: 2}")
	return list.Err()
}

// apply returns the text with all edits made, and which lines they change. Of two
// insertions at the same place the one noted first comes first.
func (t *text) apply() (string, []LineChange, error) {
	sort.SliceStable(t.edits, func(i, j int) bool {
		a, b := t.edits[i], t.edits[j]
		return a.from < b.from || a.from == b.from && a.to < b.to
	})
	for i := 1; i < len(t.edits); i++ {
		if t.edits[i].from < t.edits[i-1].to {
			return "", nil, fmt.Errorf("internal error: two edits of %s overlap", t.file)
		}
	}
	var changes []LineChange
	for i := 0; i < len(t.edits); {
		first, from, to := i, t.starts[t.lineOf(t.edits[i].from)], 0
		for ; i < len(t.edits) && (i == first || t.edits[i].from <= to); i++ {
			to = max(to, t.wholeLines(t.edits[i]))
		}
		c := change(t.lineOf(from)+1, t.data[from:to], t.made(from, to, t.edits[first:i]))
		if len(c.Old)+len(c.New) > 0 {
			changes = append(changes, c)
		}
	}
	return t.made(0, len(t.data), t.edits), changes, nil
}

// wholeLines returns the end of the lines that an edit touches.
func (t *text) wholeLines(e edit) int {
	if t.isStart(e.to) {
		return e.to
	}
	return t.lineEnd(t.lineOf(e.to))
}

// made returns data[from:to] with edits made.
func (t *text) made(from, to int, edits []edit) string {
	var out strings.Builder
	for _, e := range edits {
		out.WriteString(t.data[from:e.from])
		out.WriteString(e.by)
		from = e.to
	}
	out.WriteString(t.data[from:to])
	return out.String()
}

// isStart reports whether an offset is at the start of a line.
func (t *text) isStart(offset int) bool { return t.starts[t.lineOf(offset)] == offset }

// change tells two pieces of text by lines, without the lines at both ends that stay.
func change(line int, was, is string) LineChange {
	c := LineChange{Line: line, Old: lines(was), New: lines(is)}
	for len(c.Old) > 0 && len(c.New) > 0 && c.Old[0] == c.New[0] {
		c.Old, c.New, c.Line = c.Old[1:], c.New[1:], c.Line+1
	}
	for len(c.Old) > 0 && len(c.New) > 0 && c.Old[len(c.Old)-1] == c.New[len(c.New)-1] {
		c.Old, c.New = c.Old[:len(c.Old)-1], c.New[:len(c.New)-1]
	}
	return c
}

// lines splits text into lines without their ends.
func lines(s string) []string {
	if s == "" {
		return []string{}
	}
	list := strings.Split(strings.TrimSuffix(s, "\n"), "\n")
	for i := range list {
		list[i] = strings.TrimSuffix(list[i], "\r")
	}
	return list
}
