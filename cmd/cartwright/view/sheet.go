package view

import "strings"

// A sheet is what a person reads from top to bottom.
type sheet []section

// A section is a title with a table, prose, a list and lines of a file below it; each may be missing.
type section struct {
	title   string
	table   *table
	prose   []string // paragraphs
	bullets []string
	text    []string // lines of a file, shown as they are
}

// screen lays the sheet out for a terminal of some columns.
func (s sheet) screen(width int) (string, error) {
	var b strings.Builder
	for i, sec := range s {
		if i > 0 {
			b.WriteString("\n")
		}
		if sec.title != "" {
			b.WriteString(paragraph("", sec.title, width))
		}
		if sec.table != nil {
			t, err := sec.table.screen(width)
			if err != nil {
				return "", err
			}
			b.WriteString(t)
			for _, note := range sec.table.notes {
				b.WriteString(paragraph("", note, width))
			}
		}
		for _, p := range sec.prose {
			b.WriteString(paragraph("  ", p, width))
		}
		for _, p := range sec.bullets {
			b.WriteString(paragraph("  - ", p, width))
		}
		if len(sec.text) > 0 {
			b.WriteString("\n")
		}
		for _, line := range sec.text {
			b.WriteString(strings.TrimRight(clean(line), " ") + "\n")
		}
	}
	return b.String(), nil
}

// markdown lays the sheet out as a document; the first title is the document's.
func (s sheet) markdown() (string, error) {
	var b strings.Builder
	level := "# "
	for i, sec := range s {
		if i > 0 {
			b.WriteString("\n")
		}
		if sec.title != "" {
			b.WriteString(level + markdownText(joined(sec.title)) + "\n")
			level = "## "
		}
		if sec.table != nil {
			t, err := sec.table.markdown()
			if err != nil {
				return "", err
			}
			if sec.title != "" {
				b.WriteString("\n")
			}
			b.WriteString(t)
			for _, note := range sec.table.notes {
				b.WriteString("\n" + markdownText(note) + "\n")
			}
		}
		for _, p := range sec.prose {
			b.WriteString("\n" + markdownText(joined(p)) + "\n")
		}
		if len(sec.bullets) > 0 {
			b.WriteString("\n")
		}
		for _, p := range sec.bullets {
			b.WriteString("- " + markdownText(joined(p)) + "\n")
		}
		if len(sec.text) > 0 { // by indent: no line of a file can end such a block
			b.WriteString("\n")
		}
		for _, line := range sec.text {
			b.WriteString(strings.TrimRight("    "+clean(line), " ") + "\n")
		}
	}
	return b.String(), nil
}
