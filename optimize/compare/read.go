package compare

import (
	"fmt"
	"strconv"
	"strings"

	"cartwright/catalog"
	"cartwright/catalog/problem"
)

// Misread is what is wrong with the words of a choice, and what would be right.
type Misread struct{ Wrong, Right string }

// Read reads a choice from words: a count and a part, several separated by commas ("2 lfp-rack-5, 1 other"). It returns
// nil instead of a Misread where all is well.
func Read(c *catalog.Catalog, text string) ([]Line, *Misread) {
	const example = `write for example "2 lfp-rack-5"`
	var list []Line
	for _, item := range strings.Split(text, ",") {
		item = strings.TrimSpace(item)
		rest := strings.TrimLeft(item, "0123456789")
		n, err := strconv.Atoi(item[:len(item)-len(rest)])
		if err != nil || n < 1 {
			return nil, &Misread{fmt.Sprintf("%q does not begin with a count", text), example}
		}
		l := Line{Part: strings.TrimSpace(rest), Count: n}
		if after, times := strings.CutPrefix(l.Part, "x"); times { // "2 x lfp-rack-5", unless that begins the part's name
			if _, known := c.Find(l.Part); !known {
				l.Part = strings.TrimSpace(after)
			}
		}
		if err := Check(c, l); err != nil {
			hint := example
			if near := problem.Nearest(l.Part, c.IDs()); near != "" && near != l.Part {
				hint = fmt.Sprintf("did you mean %q?", near)
			}
			return nil, &Misread{fmt.Sprintf("%q: %v", text, err), hint}
		}
		list = append(list, l)
	}
	return list, nil
}
