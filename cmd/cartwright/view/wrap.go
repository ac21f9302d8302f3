package view

import (
	"strings"
	"unicode"

	"github.com/olekukonko/tablewriter/pkg/twwidth"
)

// clean replaces control characters, which a file may hold and a terminal would act on, by spaces; line
// breaks and the marks between the entries of a list stay.
func clean(s string) string {
	return strings.Map(func(r rune) rune {
		if r != '\n' && string(r) != soft && unicode.IsControl(r) {
			return ' '
		}
		return r
	}, s)
}

// markdownText keeps prose from being read as markup.
func markdownText(s string) string {
	return markdownMarks.Replace(strings.ReplaceAll(clean(s), "\n", " "))
}

var markdownMarks = strings.NewReplacer(`\`, `\\`, "*", `\*`, "_", `\_`, "`", "\\`", "<", "&lt;", "[", `\[`, "#", `\#`)

// markdownCell keeps a cell within its column: a bar would end it, a line break would end the row.
func markdownCell(s string) string {
	var lines []string
	for line := range strings.SplitSeq(s, "\n") {
		lines = append(lines, strings.ReplaceAll(markdownText(line), "|", `\|`))
	}
	return strings.Join(lines, "<br>")
}

// Wrapped breaks every line of a text at spaces, to the width of a screen.
func Wrapped(text string, width int) string { return wrapBlock(text, width) }

// wrapBlock wraps every line of s to the width.
func wrapBlock(s string, width int) string {
	var lines []string
	for line := range strings.SplitSeq(s, "\n") {
		lines = append(lines, packed(line, width)...)
	}
	return strings.Join(lines, "\n")
}

// wrap breaks one line at spaces into lines of at most width columns; a word that is wider is broken after
// a hyphen where it has one, else anywhere.
func wrap(line string, width int) []string {
	if twwidth.Width(line) <= width {
		return []string{line}
	}
	return wrapWords(strings.Fields(line), width)
}

// wrapWords puts as many words on a line as have room.
func wrapWords(words []string, width int) []string {
	var lines []string
	current := ""
	for _, word := range words {
		if current != "" && twwidth.Width(current)+1+twwidth.Width(word) <= width {
			current += " " + word
			continue
		}
		if current != "" {
			lines = append(lines, current)
		}
		for twwidth.Width(word) > width {
			head, tail := splitWord(word, width)
			lines = append(lines, head)
			word = tail
		}
		current = word
	}
	return append(lines, current)
}

// splitWord cuts a word that is wider than width into a head that fits and the rest; neither is empty.
func splitWord(word string, width int) (head, tail string) {
	cut, hyphen, w := 0, 0, 0
	for i, r := range word {
		rw := twwidth.Width(string(r))
		if i > 0 && w+rw > width {
			break
		}
		w += rw
		cut = i + len(string(r))
		if r == '-' {
			hyphen = cut
		}
	}
	if hyphen > 0 && hyphen < len(word) {
		cut = hyphen
	}
	return word[:cut], word[cut:]
}

// paragraph wraps prose to the width, later lines indented like the text after the bullet.
func paragraph(bullet, prose string, width int) string {
	var b strings.Builder
	indent := strings.Repeat(" ", len(bullet))
	for i, line := range wrap(clean(joined(prose)), width-len(bullet)) {
		if i == 0 {
			b.WriteString(bullet)
		} else {
			b.WriteString(indent)
		}
		b.WriteString(line + "\n")
	}
	return b.String()
}
