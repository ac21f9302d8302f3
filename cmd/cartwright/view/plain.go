package view

import (
	"strings"

	"github.com/olekukonko/tablewriter/pkg/twwidth"
)

// Plain lays a plain text out for a screen of width columns. A paragraph is wrapped anew. An indented line stands by
// itself: where it is too wide, it goes on below its words, or below its second column where it has two. A command line
// goes on after a backslash, as a shell reads it.
func Plain(text string, width int) string {
	width = min(max(width, leastWidth), mostWidth)
	var out, prose []string
	paragraph := func() {
		if len(prose) > 0 {
			out = append(out, wrap(strings.Join(prose, " "), width)...)
			prose = nil
		}
	}
	for line := range strings.SplitSeq(clean(strings.ReplaceAll(text, "\t", "  ")), "\n") {
		line = strings.TrimRight(line, " ")
		if line != "" && !strings.HasPrefix(line, " ") {
			prose = append(prose, line)
			continue
		}
		paragraph()
		out = append(out, entry(line, width)...)
	}
	paragraph()
	return strings.Join(out, "\n")
}

const (
	commandLead = "  cartwright " // begins an example in a help text
	backslash   = " \\"
)

// entry wraps an indented line.
func entry(line string, width int) []string {
	if twwidth.Width(line) <= width {
		return []string{line}
	}
	words := strings.TrimLeft(line, " ")
	lead := line[:len(line)-len(words)]
	if strings.HasPrefix(line, commandLead) {
		return hung(lead, commandWords(words), len(lead)+2, width-len(backslash), backslash)
	}
	if name, about, two := strings.Cut(words, "  "); two {
		about = strings.TrimLeft(about, " ")
		if indent := len(line) - len(about); indent <= width/2 {
			return hung(line[:indent], strings.Fields(about), indent, width, "")
		}
		return hung(lead, strings.Fields(name+": "+about), len(lead)+2, width, "")
	}
	if number, step, ok := strings.Cut(words, ". "); ok && len(number) == 1 {
		return hung(lead+number+". ", strings.Fields(step), len(lead)+3, width, "")
	}
	return hung(lead, strings.Fields(words), len(lead)+2, width, "")
}

// hung wraps words to lines of at most width columns. The first begins with lead, the others are indented;
// all but the last end in goesOn.
func hung(lead string, words []string, indent, width int, goesOn string) []string {
	lines := wrapWords(words, width-max(indent, twwidth.Width(lead)))
	for i := range lines {
		if i == 0 {
			lines[i] = lead + lines[i]
		} else {
			lines[i] = strings.Repeat(" ", indent) + lines[i]
		}
		if i < len(lines)-1 {
			lines[i] += goesOn
		}
	}
	return lines
}

// commandWords returns the words of a command line, each flag with its value.
func commandWords(line string) []string {
	var words []string
	for _, w := range strings.Fields(line) {
		last := len(words) - 1
		if last >= 0 && strings.HasPrefix(words[last], "--") && !strings.HasPrefix(w, "--") && !strings.Contains(words[last], " ") {
			words[last] += " " + w
		} else {
			words = append(words, w)
		}
	}
	return words
}
