package view

import "strings"

// oneLine returns a heading on one line: a word that was broken after a hyphen is whole again.
func oneLine(head string) string {
	return strings.TrimSpace(headJoins.Replace(head))
}

var headJoins = strings.NewReplacer("-\n", "", "/\n", "/", "\n", " ")

// stacked lays the table out for a screen that is too narrow for it: the cells of a row stand below each other, each
// after its heading; the first text is the row's own heading.
func (t *table) stacked(width int) string {
	head, rows := t.cleaned()
	title := 0
	for title < len(t.columns)-1 && t.columns[title].number {
		title++
	}
	var b strings.Builder
	for n, r := range rows {
		if n > 0 {
			b.WriteString("\n")
		}
		name := stackedCell(r[title])
		if title > 0 && r[0] != "" {
			name = strings.TrimRight(stackedCell(r[0])+"  "+name, " ")
		}
		if name != "" {
			b.WriteString(paragraph("", name, width))
		}
		for i, cell := range r {
			if i == title || i == 0 || strings.TrimSpace(cell) == "" {
				continue
			}
			label := oneLine(head[i])
			if label != "" {
				label += ": "
			}
			b.WriteString(paragraph("  ", label+stackedCell(cell), width))
		}
	}
	return b.String()
}

// stackedCell returns a cell on one line.
func stackedCell(cell string) string {
	return strings.TrimSpace(strings.ReplaceAll(joined(cell), "\n", "  "))
}
