package view

import (
	"regexp"
	"strings"

	"github.com/olekukonko/tablewriter/pkg/twwidth"
)

// Manual lays a manual out for a screen of width columns. The text is Markdown as our manuals are written: headings,
// prose, lists, tables, blocks of code. Prose is wrapped anew; a table that does not fit is stacked; a line of code is
// broken where it is too wide, so that nothing is cut. Of a link only the words are shown: nobody can follow it here.
func Manual(text string, width int) (string, error) {
	width = min(max(width, leastWidth), mostWidth)
	var out strings.Builder
	lines := strings.Split(strings.TrimRight(text, "\n"), "\n")
	for len(lines) > 0 {
		n := blockLength(lines)
		block, err := manualBlock(lines[:n], width)
		if err != nil {
			return "", err
		}
		out.WriteString(block)
		lines = lines[n:]
	}
	return out.String(), nil
}

const (
	fence    = "```"
	codeLead = "    " // begins a line of code that has no fence
)

// blockLength returns how many lines, from the first on, belong together.
func blockLength(lines []string) int {
	first := lines[0]
	within := prose
	switch {
	case first == "", strings.HasPrefix(first, "#"), strings.HasPrefix(first, codeLead):
		return 1
	case strings.HasPrefix(first, fence):
		for n, line := range lines[1:] {
			if line == fence {
				return n + 2
			}
		}
		return len(lines)
	case strings.HasPrefix(first, "|"):
		within = func(line string) bool { return strings.HasPrefix(line, "|") }
	}
	n := 1
	for n < len(lines) && within(lines[n]) {
		n++
	}
	return n
}

// prose reports whether a line goes on with the prose above it.
func prose(line string) bool {
	return line != "" && bulletOf(line) == "" && !strings.HasPrefix(line, "#") && !strings.HasPrefix(line, "|") &&
		!strings.HasPrefix(line, fence)
}

// bulletOf returns what a line of a list begins with, "" where it is none.
func bulletOf(line string) string {
	for _, bullet := range []string{"- ", "* "} {
		if strings.HasPrefix(line, bullet) {
			return bullet
		}
	}
	return ""
}

// manualBlock lays out lines that belong together.
func manualBlock(lines []string, width int) (string, error) {
	switch first := lines[0]; {
	case first == "":
		return "\n", nil
	case strings.HasPrefix(first, fence), strings.HasPrefix(first, codeLead):
		var b strings.Builder
		for _, line := range lines {
			b.WriteString(foldedCode(line, width))
		}
		return b.String(), nil
	case strings.HasPrefix(first, "|"):
		return manualTable(lines).screen(width)
	default:
		bullet := bulletOf(first)
		text := strings.Join(strings.Fields(strings.TrimPrefix(strings.Join(lines, " "), bullet)), " ")
		return paragraph(bullet, links.ReplaceAllString(text, "$1"), width), nil
	}
}

// links are the links of a text, the words of each in its first group.
var links = regexp.MustCompile(`\[([^\]]+)\]\([^)\s]+\)`)

// proseWidth is the width below which the last column of a manual's table, which is prose, can hardly be read.
const proseWidth = 24

// manualTable reads a table. The words of its first column, which are names, stay whole.
func manualTable(lines []string) *table {
	t := &table{}
	head := manualCells(lines[0])
	for _, h := range head {
		t.columns = append(t.columns, text(h))
	}
	for _, line := range lines[2:] { // the second line is the rule
		cells := make([]string, len(head))
		copy(cells, manualCells(line))
		for _, word := range strings.Fields(cells[0]) {
			t.columns[0].least = max(t.columns[0].least, twwidth.Width(word))
		}
		last := &t.columns[len(head)-1]
		last.least = max(last.least, min(twwidth.Width(cells[len(head)-1]), proseWidth))
		t.row(cells...)
	}
	return t
}

// manualCells returns the cells of a row, without the marks that set names off in Markdown.
func manualCells(line string) []string {
	var cells []string
	for cell := range strings.SplitSeq(strings.Trim(line, "|"), "|") {
		cells = append(cells, strings.ReplaceAll(strings.TrimSpace(cell), "`", ""))
	}
	return cells
}

// foldedCode breaks a line of code into lines of at most width columns; those after the first are indented further.
func foldedCode(line string, width int) string {
	code := strings.TrimLeft(line, " ")
	indent := strings.Repeat(" ", min(len(line)-len(code), width/2))
	lead := indent
	var b strings.Builder
	for twwidth.Width(lead+code) > width {
		head, tail := cutCode(code, width-len(lead))
		b.WriteString(lead + strings.TrimRight(head, " ") + "\n")
		code, lead = strings.TrimLeft(tail, " "), indent+"  "
	}
	b.WriteString(lead + code + "\n")
	return b.String()
}

// cutCode cuts code into a head of at most width columns and the rest: JSON after a comma where one stands in the second
// half, other code at the last space, either anywhere where it has none.
func cutCode(code string, width int) (head, tail string) {
	comma, space := 0, 0
	for i, r := range code {
		if r != ' ' || i == 0 {
			continue
		}
		if twwidth.Width(code[:i]) > width {
			break
		}
		space = i
		if code[i-1] == ',' {
			comma = i
		}
	}
	switch {
	case comma > width/2 && strings.ContainsAny(code[:1], `{["`):
		return code[:comma], code[comma:]
	case space > 0:
		return code[:space], code[space:]
	}
	return splitWord(code, width)
}
