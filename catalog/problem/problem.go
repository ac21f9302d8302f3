// Package problem collects what is wrong with the files a person keeps: every mistake at once, each
// with the place it stands and what would be right there.
//
// A reader adds to a List as it goes on reading, so that one run shows every mistake; whoever called
// the reader asks the List for its error at the end.
package problem

import (
	"fmt"
	"sort"
	"strings"
)

// Pos is a place in a file. Line and Column count from 1; Column counts bytes, as encoding/csv does.
// A Line of 0 means the file as a whole.
type Pos struct {
	File         string
	Line, Column int
}

// String returns file:line:column, or just the file where no line is known.
func (p Pos) String() string {
	if p.Line == 0 {
		return p.File
	}
	return fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Column)
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

// Err returns nil for an empty list, else an error that prints one mistake a line, in file order.
func (l *List) Err() error {
	if len(l.problems) == 0 {
		return nil
	}
	sorted := append([]Problem(nil), l.problems...)
	sort.SliceStable(sorted, func(i, j int) bool {
		a, b := sorted[i].Pos, sorted[j].Pos
		if a.File != b.File {
			return a.File < b.File
		}
		if a.Line != b.Line {
			return a.Line < b.Line
		}
		return a.Column < b.Column
	})
	return &Error{Problems: sorted}
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
