// Package problem collects what is wrong with the files a person keeps: every mistake at once, each
// with the place it stands and what would be right there.
//
// A reader adds to a List as it goes on reading, so that one run shows every mistake; whoever called
// the reader asks the List for its error at the end.
package problem

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Pos is a place in a file. Line and Column count from 1; Column counts bytes, as encoding/csv does.
// A Line of 0 means the file as a whole. In a workbook Line and Column are those of a cell of the Sheet.
type Pos struct {
	File         string
	Sheet        string // "" for a text file
	Line, Column int
}

// String returns file:line:column, of a workbook file:sheet!C7, or just the file where no line is known.
func (p Pos) String() string {
	switch {
	case p.Sheet != "" && p.Line == 0:
		return p.File + ":" + p.Sheet
	case p.Sheet != "":
		return fmt.Sprintf("%s:%s!%s%d", p.File, p.Sheet, letters(p.Column), p.Line)
	case p.Line == 0:
		return p.File
	}
	return fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Column)
}

// letters returns the name of a column of a spreadsheet, counted from 1: A to Z, AA, AB and so on.
func letters(column int) string {
	name := ""
	for ; column > 0; column = (column - 1) / 26 {
		name = string(rune('A'+(column-1)%26)) + name
	}
	return name
}

// Problem is one mistake: where it is, what is wrong, and what would be right.
type Problem struct {
	Pos   Pos
	Wrong string
	Right string
}

// Error returns "file:line:column: what is wrong; what would be right".
func (p Problem) Error() string {
	s := p.Wrong
	if p.Pos != (Pos{}) {
		s = p.Pos.String() + ": " + s
	}
	if p.Right != "" {
		s += "; " + p.Right
	}
	return s
}

// List is every mistake found so far. The zero List is empty and ready to use.
type List struct {
	problems []Problem
}

// Add records a mistake at pos.
func (l *List) Add(pos Pos, wrong, right string) {
	l.problems = append(l.problems, Problem{Pos: pos, Wrong: wrong, Right: right})
}

// AddAll records every mistake of another list.
func (l *List) AddAll(other *List) {
	l.problems = append(l.problems, other.problems...)
}

// Len returns how many mistakes were recorded.
func (l *List) Len() int { return len(l.problems) }

// Sorted returns every mistake in the order of files, sheets, lines and columns; those of one place in the order in
// which they were found.
func (l *List) Sorted() []Problem {
	sorted := slices.Clone(l.problems)
	slices.SortStableFunc(sorted, func(a, b Problem) int {
		return cmp.Or(cmp.Compare(a.Pos.File, b.Pos.File), cmp.Compare(a.Pos.Sheet, b.Pos.Sheet),
			cmp.Compare(a.Pos.Line, b.Pos.Line), cmp.Compare(a.Pos.Column, b.Pos.Column))
	})
	return sorted
}

// Err returns nil for an empty list, else an error that prints one mistake a line, in file order.
func (l *List) Err() error {
	if len(l.problems) == 0 {
		return nil
	}
	return &Error{Problems: l.Sorted()}
}

// Error is a non-empty, ordered list of mistakes.
type Error struct {
	Problems []Problem
}

// Error prints one mistake a line.
func (e *Error) Error() string {
	lines := make([]string, len(e.Problems))
	for i, p := range e.Problems {
		lines[i] = p.Error()
	}
	return strings.Join(lines, "\n")
}
