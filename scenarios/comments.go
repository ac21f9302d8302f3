package scenarios

import "strings"

// comments returns the comments in data[from:to], each from its # on. A # within a text begins none.
func (t *text) comments(from, to int) []string {
	var list []string
	begins := true // a value can begin here, and with it a quote
	for i := from; i < to; i++ {
		switch c := t.data[i]; {
		case c == '#' && (i == 0 || strings.ContainsRune(" \t\n", rune(t.data[i-1]))):
			end := i
			for end < len(t.data) && t.data[end] != '\n' {
				end++
			}
			list = append(list, strings.TrimRight(t.data[i:min(end, to)], " \t\r"))
			i = end
			begins = true
		case c == ',' || c == ':' || c == '[' || c == '{' || c == '\n' || c == '-' && begins:
			begins = true
		case (c == '"' || c == '\'') && begins:
			i = t.closingQuote(i)
			begins = false
		case c != ' ' && c != '\t' && c != '\r':
			begins = false
		}
	}
	return list
}

// commentLines writes comments on lines of their own.
func (t *text) commentLines(comments []string, indent string) string {
	var out strings.Builder
	for _, c := range comments {
		out.WriteString(indent + c + t.newline())
	}
	return out.String()
}

// commentsAfter puts comments on lines of their own after the line that an offset is in.
func (t *text) commentsAfter(offset int, comments []string) {
	if len(comments) == 0 {
		return
	}
	lead := t.data[t.starts[t.lineOf(offset)]:offset]
	indent := lead[:len(lead)-len(strings.TrimLeft(lead, " "))]
	for i := range comments {
		comments[i] = indent + comments[i]
	}
	t.insertLines(offset, comments...)
}
