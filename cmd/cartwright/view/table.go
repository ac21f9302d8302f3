package view

import (
	"bytes"
	"slices"
	"strings"

	"github.com/olekukonko/tablewriter"
	"github.com/olekukonko/tablewriter/pkg/twwidth"
	"github.com/olekukonko/tablewriter/renderer"
	"github.com/olekukonko/tablewriter/tw"
)

// Width is how wide a screen is where nobody says otherwise, in columns; a line is never wider than its screen.
const Width = 80

// The narrowest and the widest screen that lines are laid out for.
const (
	leastWidth = 40
	mostWidth  = 200
)

// The spaces between two columns of a table: the usual number, and the one of a table with numbers that
// would not fit with that, so that its text is broken as little as can be. Columns of prose side by side need the
// wide one.
const (
	wideGap   = 2
	narrowGap = 1
)

// A column is one column of a table. Its heading carries the unit; "\n" in it breaks the line.
type column struct {
	head string
	// number columns are right aligned and keep their width; text columns are left aligned and give way
	// where a table would be wider than the screen.
	number bool
	least  int // width below which a text column is never squeezed, beside narrowest and what its lists need
}

func text(head string) column   { return column{head: head} }
func number(head string) column { return column{head: head, number: true} }

// A table is a heading, rows of cells and footnotes. "\n" breaks a line within a cell.
type table struct {
	columns []column
	rows    [][]string
	notes   []string
}

// row adds one row; the number of cells is that of the columns.
func (t *table) row(cells ...string) { t.rows = append(t.rows, cells) }

// fitted returns heading and rows with the text columns wrapped so that no line is wider than width. The
// widest text column gives way first, so that narrow ones stay whole. Gap is the number of spaces between
// two columns. It reports false where the table does not fit however its text is wrapped.
func (t *table) fitted(width int) (head []string, rows [][]string, gap int, fits bool) {
	head, rows = t.cleaned()
	widths, least := make([]int, len(t.columns)), make([]int, len(t.columns))
	total := 0
	for i := range widths {
		widths[i], least[i] = blockWidth(head[i]), max(narrowest, t.columns[i].least)
		for _, r := range rows {
			widths[i] = max(widths[i], blockWidth(joined(r[i])))
			least[i] = max(least[i], min(narrowestOf(r[i]), widestEntry))
		}
		total += widths[i]
	}
	gap = wideGap
	hasNumbers := slices.ContainsFunc(t.columns, func(c column) bool { return c.number })
	if hasNumbers && total+wideGap*(len(t.columns)-1) > width {
		gap = narrowGap
	}
	for total += gap * (len(t.columns) - 1); total > width; total-- {
		widest := -1
		for i, c := range t.columns {
			if !c.number && widths[i] > least[i] && (widest < 0 || widths[i] > widths[widest]) {
				widest = i
			}
		}
		if widest < 0 {
			break
		}
		widths[widest]--
	}
	for i, c := range t.columns {
		if c.number {
			continue
		}
		head[i] = wrapBlock(head[i], widths[i])
		for _, r := range rows {
			r[i] = wrapBlock(r[i], widths[i])
		}
	}
	return head, rows, gap, total <= width
}

// cleaned returns heading and rows without control characters.
func (t *table) cleaned() (head []string, rows [][]string) {
	for _, c := range t.columns {
		head = append(head, clean(c.head))
	}
	for _, r := range t.rows {
		cells := make([]string, len(t.columns))
		for i := range cells {
			cells[i] = clean(r[i])
		}
		rows = append(rows, cells)
	}
	return head, rows
}

// narrowest is the least width, in columns, that a text column is squeezed to. One that holds a list keeps the
// width of its widest entry, as long as that is no wider than widestEntry.
const (
	narrowest   = 8
	widestEntry = 24
)

// blockWidth returns the width of the widest line.
func blockWidth(s string) int {
	w := 0
	for line := range strings.SplitSeq(s, "\n") {
		w = max(w, twwidth.Width(line))
	}
	return w
}

// screen renders the table for a terminal: no frame, a rule below the heading. Where it does not fit, it is stacked.
func (t *table) screen(width int) (string, error) {
	head, rows, gap, fits := t.fitted(width)
	if !fits {
		return t.stacked(width), nil
	}
	style := renderer.NewBlueprint(tw.Rendition{
		Borders: tw.BorderNone,
		Symbols: tw.NewSymbols(tw.StyleASCII),
		Settings: tw.Settings{
			Separators: tw.Separators{BetweenColumns: tw.Off, BetweenRows: tw.Off},
			Lines:      tw.Lines{ShowTop: tw.Off, ShowBottom: tw.Off, ShowHeaderLine: tw.On},
		},
	})
	return t.render(style, head, rows, tw.Padding{Right: strings.Repeat(" ", gap), Overwrite: true},
		tw.Padding{Overwrite: true})
}

// markdown renders the table for a document: nothing is wrapped, <br> breaks a line within a cell.
func (t *table) markdown() (string, error) {
	var head []string
	for _, c := range t.columns {
		head = append(head, markdownCell(oneLine(c.head)))
	}
	var rows [][]string
	for _, r := range t.rows {
		var cells []string
		for _, cell := range r {
			cells = append(cells, markdownCell(strings.ReplaceAll(cell, soft, "\n")))
		}
		rows = append(rows, cells)
	}
	cell := tw.Padding{Left: " ", Right: " "}
	return t.render(renderer.NewMarkdown(), head, rows, cell, cell)
}

// render has the library lay the table out, the last column padded by itself; line ends carry no spaces.
func (t *table) render(style tw.Renderer, head []string, rows [][]string, padding, last tw.Padding) (string, error) {
	aligns := make([]tw.Align, len(t.columns))
	paddings := make([]tw.Padding, len(t.columns))
	for i, c := range t.columns {
		paddings[i] = padding
		if i == len(t.columns)-1 {
			paddings[i] = last
		}
		aligns[i] = tw.AlignLeft
		if c.number {
			aligns[i] = tw.AlignRight
		}
	}
	cell := tw.CellConfig{
		Formatting: tw.CellFormatting{AutoWrap: tw.WrapNone, AutoFormat: tw.Off},
		Alignment:  tw.CellAlignment{PerColumn: aligns},
		Padding:    tw.CellPadding{PerColumn: paddings},
	}
	var out bytes.Buffer
	w := tablewriter.NewTable(&out,
		tablewriter.WithRenderer(style),
		tablewriter.WithConfig(tablewriter.Config{
			Header:   cell,
			Row:      cell,
			Behavior: tw.Behavior{TrimSpace: tw.Off, TrimLine: tw.Off},
		}),
	)
	w.Header(head)
	if err := w.Bulk(rows); err != nil {
		return "", err
	}
	if err := w.Render(); err != nil {
		return "", err
	}
	lines := strings.Split(strings.TrimRight(out.String(), "\n"), "\n")
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " ")
	}
	return strings.Join(lines, "\n") + "\n", nil
}
