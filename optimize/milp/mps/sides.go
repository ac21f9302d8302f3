package mps

import (
	"fmt"
	"math"
	"slices"

	"cartwright/optimize/milp/lines"
)

// side reads a right-hand side; Lower keeps it until done.
func (s *reader) side(words []string) error {
	if len(words) != 3 {
		return s.Wrong(len(words), fmt.Sprintf("%d words", len(words)), "write a name, a row and a number")
	}
	i, found := s.rows[words[1]]
	if !found || i < 0 {
		return s.Wrong(1, fmt.Sprintf("%q is no row with a right-hand side", words[1]), "name a row of kind L, G or E")
	}
	v, err := s.finite(words, 2)
	if err == nil && s.f.Program.Rows[i].Lower != 0 {
		err = s.Wrong(1, fmt.Sprintf("a second right-hand side of %q", words[1]), "take one out")
	}
	s.f.Program.Rows[i].Lower = v
	return err
}

func (s *reader) bound(words []string) error {
	if len(words) < 3 {
		return s.Wrong(len(words), fmt.Sprintf("%d words", len(words)), "write a kind of bound, a name and a column")
	}
	j, found := s.columns[words[2]]
	if !found {
		return s.Wrong(2, fmt.Sprintf("there is no column %q", words[2]), "name one of the section COLUMNS")
	}
	p, v, want := &s.f.Program, 0.0, 3
	if slices.Contains([]string{"LO", "UP", "FX"}, words[0]) {
		want = 4
	}
	if len(words) != want {
		return s.Wrong(3, fmt.Sprintf("%d words for a bound of kind %s", len(words), words[0]), "LO, UP and FX have a number, the others have none")
	}
	if want == 4 {
		var err error
		if v, err = s.finite(words, 3); err != nil {
			return err
		}
	}
	const lower, upper = 1, 2
	gives := map[string]int{"LO": lower, "MI": lower, "UP": upper, "PL": upper, "FX": lower | upper, "FR": lower | upper}[words[0]]
	switch {
	case gives == 0:
		return s.Wrong(0, fmt.Sprintf("a bound of kind %q", words[0]), "write LO, UP, FX, MI, PL or FR")
	case s.bounded[j]&gives != 0:
		return s.Wrong(2, fmt.Sprintf("a second bound of %q", words[2]), "take one out")
	case words[0] == "UP" && v < 0 && s.bounded[j]&lower == 0:
		return s.Wrong(3, fmt.Sprintf("an upper bound of %v for %q, of which readers make different lower bounds", v, words[2]), "write a lower bound first")
	}
	s.bounded[j] |= gives
	switch words[0] {
	case "LO":
		p.Lower[j] = v
	case "UP":
		p.Upper[j] = v
	case "FX":
		p.Lower[j], p.Upper[j] = v, v
	case "MI":
		p.Lower[j] = math.Inf(-1)
	case "FR":
		p.Lower[j], p.Upper[j] = math.Inf(-1), math.Inf(1)
	}
	return nil
}

// done gives rows their sides, and refuses integers without both bounds, of which readers make different ones.
func (s *reader) done() error {
	p := &s.f.Program
	for i, kind := range s.kinds {
		r := &p.Rows[i]
		if r.Upper = r.Lower; kind == "L" {
			r.Lower = math.Inf(-1)
		} else if kind == "G" {
			r.Upper = math.Inf(1)
		}
	}
	for j, name := range s.f.Columns {
		if p.Integer[j] && s.bounded[j] != 3 {
			return lines.Mistake(s.at[j], fmt.Sprintf("the integer %q lacks a bound", name), "give it a lower and an upper one")
		}
	}
	return nil
}
