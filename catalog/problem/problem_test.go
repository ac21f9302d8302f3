package problem_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"cartwright/catalog/problem"

	"pgregory.net/rapid"
)

func TestErrorText(t *testing.T) {
	at := problem.Pos{File: "batteries.csv", Line: 14, Column: 32}
	for _, test := range []struct {
		name string
		p    problem.Problem
		want string
	}{
		{"all of it", problem.Problem{Pos: at, Wrong: "max_v is empty", Right: "write volts"}, "batteries.csv:14:32: max_v is empty; write volts"},
		{"nothing to advise", problem.Problem{Pos: at, Wrong: "max_v is empty"}, "batteries.csv:14:32: max_v is empty"},
		{"the file as a whole", problem.Problem{Pos: problem.Pos{File: "a.csv"}, Wrong: "is a folder", Right: "put a file there"}, "a.csv: is a folder; put a file there"},
		{"a cell of a workbook", problem.Problem{Pos: problem.Pos{File: "parts.xlsx", Sheet: "batteries", Line: 7, Column: 3}, Wrong: "x", Right: "y"}, "parts.xlsx:batteries!C7: x; y"},
		{"a column past Z", problem.Problem{Pos: problem.Pos{File: "parts.xlsx", Sheet: "batteries", Line: 1, Column: 34}, Wrong: "x"}, "parts.xlsx:batteries!AH1: x"},
		{"the last column of two letters", problem.Problem{Pos: problem.Pos{File: "p", Sheet: "s", Line: 1, Column: 702}, Wrong: "x"}, "p:s!ZZ1: x"},
		{"a sheet as a whole", problem.Problem{Pos: problem.Pos{File: "parts.xlsx", Sheet: "batteries"}, Wrong: "x", Right: "y"}, "parts.xlsx:batteries: x; y"},
		{"no file at all", problem.Problem{Wrong: "no casters", Right: "add some"}, "no casters; add some"},
	} {
		t.Run(test.name, func(t *testing.T) {
			if got := test.p.Error(); got != test.want {
				t.Errorf("got %q, want %q", got, test.want)
			}
		})
	}
}

func TestNoMistakesAreNoError(t *testing.T) {
	var l problem.List
	if err := l.Err(); err != nil || l.Len() != 0 {
		t.Errorf("an empty list is the error %v, length %d", err, l.Len())
	}
	l.AddAll(&problem.List{})
	if err := l.Err(); err != nil {
		t.Errorf("two empty lists are the error %v", err)
	}
}

func ExampleList() {
	var l, other problem.List
	l.Add(problem.Pos{File: "cart.yaml", Line: 9, Column: 3}, "unknown key", "did you mean hours?")
	l.Add(problem.Pos{File: "cart.yaml", Line: 2, Column: 1}, "no bus", "add one")
	other.Add(problem.Pos{File: "a.csv", Line: 1, Column: 1}, "no price", "add one")
	l.AddAll(&other)
	fmt.Println(l.Err())
	// Output:
	// a.csv:1:1: no price; add one
	// cart.yaml:2:1: no bus; add one
	// cart.yaml:9:3: unknown key; did you mean hours?
}

// An error keeps each mistake, in the order of files, lines and columns; those of one place in the order in
// which they were found. Asking for it does not disturb the list.
func TestErrIsOrdered(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var l problem.List
		n := rapid.IntRange(1, 20).Draw(t, "mistakes")
		for i := range n {
			l.Add(problem.Pos{
				File:   rapid.SampledFrom([]string{"", "a", "b"}).Draw(t, "file"),
				Line:   rapid.IntRange(0, 3).Draw(t, "line"),
				Column: rapid.IntRange(0, 3).Draw(t, "column"),
			}, fmt.Sprintf("%03d", i), "")
		}
		var e *problem.Error
		if err := l.Err(); !errors.As(err, &e) || len(e.Problems) != n || l.Len() != n {
			t.Fatalf("%d mistakes are the error %v", n, err)
		}
		for i := 1; i < n; i++ {
			a, b := e.Problems[i-1], e.Problems[i]
			ka := fmt.Sprintf("%-1s%d%d%s", a.Pos.File, a.Pos.Line, a.Pos.Column, a.Wrong)
			kb := fmt.Sprintf("%-1s%d%d%s", b.Pos.File, b.Pos.Line, b.Pos.Column, b.Wrong)
			if ka >= kb {
				t.Fatalf("%v stands before %v", a, b)
			}
		}
		if first, again := l.Err().Error(), l.Err().Error(); first != again || strings.Count(first, "\n") != n-1 {
			t.Fatalf("got %q, then %q", first, again)
		}
	})
}
