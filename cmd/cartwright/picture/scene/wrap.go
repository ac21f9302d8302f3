package scene

import (
	"strings"
	"unicode"
)

// Stuck is a space at which no line is broken.
const Stuck = "\u00a0"

// Wrap breaks words into lines that are no wider than width; a word that is wider itself is broken, too.
// What is past the given number of lines is cut off with an ellipsis; 0 lines is no limit.
func Wrap(words string, size float64, bold bool, width float64, lines int) []string {
	var out []string
	line := ""
	space := func(r rune) bool { return unicode.IsSpace(r) && string(r) != Stuck }
	for _, word := range strings.FieldsFunc(words, space) {
		longer := word
		if line != "" {
			longer = line + " " + word
		}
		if Width(longer, size, bold) <= width {
			line = longer
			continue
		}
		if line != "" {
			out = append(out, line)
		}
		line = word
		for Width(line, size, bold) > width {
			head := fit(line, size, bold, width)
			out = append(out, line[:head])
			line = line[head:]
		}
	}
	if line != "" {
		out = append(out, line)
	}
	if lines > 0 && len(out) > lines {
		out = out[:lines]
		out[lines-1] = Cut(out[lines-1]+"…", size, bold, width)
	}
	return out
}

// Cut returns the words, or as many of their letters as fit in width with an ellipsis after them.
func Cut(words string, size float64, bold bool, width float64) string {
	if Width(words, size, bold) <= width {
		return words
	}
	letters := []rune(strings.TrimSuffix(words, "…"))
	for len(letters) > 0 && Width(string(letters)+"…", size, bold) > width {
		letters = letters[:len(letters)-1]
	}
	return string(letters) + "…"
}

// fit returns how many bytes of a word fit in width; at least its first letter's.
func fit(word string, size float64, bold bool, width float64) int {
	last := len(word)
	for i := range word {
		if i > 0 && Width(word[:i], size, bold) > width {
			return last
		}
		if i > 0 {
			last = i
		}
	}
	first := len(string([]rune(word)[:1]))
	return max(first, min(last, len(word)))
}
