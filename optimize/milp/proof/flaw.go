package proof

import "fmt"

// Flaw is what is wrong with a program, a point or a certificate, and what would be right.
type Flaw struct {
	Node         *Tree  // where in a certificate; nil where it is not there
	Kind         string // "variable" or "row" where it is about one, which Wrong goes on from; else ""
	Index        int    // which of them
	Wrong, Right string
}

// Error names variables and rows by their numbers, from 0.
func (f *Flaw) Error() string {
	return f.told(fmt.Sprintf("%s %d", f.Kind, f.Index)) + "; " + f.Right
}

// Told says what is wrong with the names of a program.
func (f *Flaw) Told(names Names) string {
	list := names.Columns
	if f.Kind == aRow {
		list = names.Rows
	}
	if f.Index < 0 || f.Index >= len(list) {
		return f.told(fmt.Sprintf("%s %d", f.Kind, f.Index))
	}
	return f.told(fmt.Sprintf("%s %q", f.Kind, list[f.Index]))
}

func (f *Flaw) told(what string) string {
	if f.Kind == "" {
		return f.Wrong
	}
	return what + " " + f.Wrong
}

// The kinds of what flaws are about.
const (
	aVariable = "variable"
	aRow      = "row"
)

// flaw returns what is wrong at a node.
func flaw(t *Tree, wrong, right string) error { return &Flaw{Node: t, Wrong: wrong, Right: right} }

// flawOf returns what is wrong at a node, or nowhere in a tree, with a variable or a row.
func flawOf(t *Tree, kind string, index int, right, wrong string, args ...any) error {
	return &Flaw{Node: t, Kind: kind, Index: index, Wrong: fmt.Sprintf(wrong, args...), Right: right}
}
