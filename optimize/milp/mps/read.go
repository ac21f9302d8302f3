package mps

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"cartwright/catalog/problem"
	"cartwright/optimize/milp/lines"
	"cartwright/optimize/milp/proof"
)

// Read reads a program as Write writes it. What readers of MPS take in different ways, or what Write never writes, is
// a *problem.Error that names the file.
func Read(r io.Reader, file string) (*File, error) {
	s := &reader{Reader: lines.New(r, file), f: new(File), rows: map[string]int{}, columns: map[string]int{}}
	for s.section != "ENDATA" && s.Next() {
		text := s.Text()
		if strings.HasPrefix(text, "*") {
			s.f.Comments = append(s.f.Comments, strings.TrimPrefix(strings.TrimPrefix(text, "*"), " "))
			continue
		}
		if words := s.Words(); len(words) > 0 {
			if err := s.take(words, text[0] == ' '); err != nil {
				return nil, err
			}
		}
	}
	if err := s.Err(); err != nil {
		return nil, err
	}
	if s.section != "ENDATA" {
		return nil, lines.Mistake(s.End(), "the program ends here", "its last line is ENDATA")
	}
	return s.f, s.done()
}

type reader struct {
	*lines.Reader
	f             *File
	section       string
	inside        bool           // between markers of integers
	kinds         []string       // of the rows
	rows, columns map[string]int // -1 for the objective
	bounded       []int          // how many bounds were given, by column
	at            []problem.Pos  // where each column begins
}

// sections are the sections in their order.
var sections = []string{"", "NAME", "ROWS", "COLUMNS", "RHS", "BOUNDS", "ENDATA"}

func (s *reader) take(words []string, indented bool) error {
	if !indented {
		if at := slices.Index(sections, words[0]); at <= 0 || sections[at-1] != s.section {
			next := sections[slices.Index(sections, s.section)+1]
			return s.Wrong(0, fmt.Sprintf("%q where the section %s has to begin", words[0], next), "write "+strings.Join(sections[1:], ", ")+" in this order")
		}
		if s.section = words[0]; s.section == "NAME" && len(words) > 1 {
			s.f.Name = words[1]
		}
		return nil
	}
	switch s.section {
	case "ROWS":
		return s.row(words)
	case "COLUMNS":
		return s.cell(words)
	case "RHS":
		return s.side(words)
	case "BOUNDS":
		return s.bound(words)
	}
	return s.Wrong(0, fmt.Sprintf("%q outside of a section", words[0]), "begin a section first")
}

func (s *reader) row(words []string) error {
	if len(words) != 2 || !slices.Contains([]string{"N", "L", "G", "E"}, words[0]) {
		return s.Wrong(0, fmt.Sprintf("%q is no row", strings.Join(words, " ")), "write N, L, G or E and a name")
	}
	kind, name := words[0], words[1]
	if _, taken := s.rows[name]; taken {
		return s.Wrong(1, fmt.Sprintf("a second row %q", name), "give each a name of its own")
	}
	if kind == "N" {
		if _, taken := s.rows[Objective]; taken || name != Objective {
			return s.Wrong(1, fmt.Sprintf("the objective is named %q", name), fmt.Sprintf("write %s, once", Objective))
		}
		s.rows[name] = -1
		return nil
	}
	if err := s.clean(words, 1); err != nil {
		return err
	}
	s.rows[name] = len(s.kinds)
	s.kinds, s.f.Rows = append(s.kinds, kind), append(s.f.Rows, name)
	s.f.Program.Rows = append(s.f.Program.Rows, proof.Row{})
	return nil
}

func (s *reader) cell(words []string) error {
	if len(words) != 3 {
		return s.Wrong(len(words), fmt.Sprintf("%d words", len(words)), "write a column, a row and a number")
	}
	if words[1] == "'MARKER'" {
		if words[2] != "'INTORG'" && words[2] != "'INTEND'" || (words[2] == "'INTEND'") != s.inside {
			return s.Wrong(2, fmt.Sprintf("marker %s out of turn", words[2]), "'INTORG' begins integers, 'INTEND' ends them")
		}
		s.inside = !s.inside
		return nil
	}
	p, n := &s.f.Program, len(s.f.Columns)
	j, known := s.columns[words[0]]
	switch {
	case known && j != n-1:
		return s.Wrong(0, fmt.Sprintf("column %q goes on after another", words[0]), "put its lines together")
	case !known:
		if err := s.clean(words, 0); err != nil {
			return err
		}
		j = n
		s.columns[words[0]] = j
		s.f.Columns, s.bounded = append(s.f.Columns, words[0]), append(s.bounded, 0)
		s.at = append(s.at, s.At(0))
		p.Cost, p.Integer = append(p.Cost, 0), append(p.Integer, s.inside)
		p.Lower, p.Upper = append(p.Lower, 0), append(p.Upper, math.Inf(1))
	}
	i, found := s.rows[words[1]]
	if !found {
		return s.Wrong(1, fmt.Sprintf("there is no row %q", words[1]), "name one of the section ROWS")
	}
	v, err := s.finite(words, 2)
	if err != nil {
		return err
	}
	if i < 0 {
		if p.Cost[j] != 0 {
			return s.Wrong(0, fmt.Sprintf("a second cost of %q", words[0]), "take one out")
		}
		p.Cost[j] = v
		return nil
	}
	r := &p.Rows[i]
	if slices.Contains(r.Cols[max(0, len(r.Cols)-1):], j) {
		return s.Wrong(1, fmt.Sprintf("a second coefficient of %q in %q", words[0], words[1]), "take one out")
	}
	r.Cols, r.Coefs = append(r.Cols, j), append(r.Coefs, v)
	return nil
}

// clean refuses a name that Write would change.
func (s *reader) clean(words []string, word int) error {
	if c := cleanName(words[word]); c != words[word] {
		return s.Wrong(word, fmt.Sprintf("the name %q", words[word]), fmt.Sprintf("write such as %q", c))
	}
	return nil
}

// finite returns the number that a word is.
func (s *reader) finite(words []string, word int) (float64, error) {
	v, err := strconv.ParseFloat(words[word], 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, s.Wrong(word, fmt.Sprintf("%q is no finite number", words[word]), "write one, such as 0.25")
	}
	return v, nil
}
