package mps

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"cartwright/optimize/milp/proof"
)

// longestLine and mostLines bound what Read takes in.
const (
	longestLine = 1 << 16
	mostLines   = 1 << 24
)

// Read reads a program as Write writes it. What readers of MPS take in different ways, or what Write never writes, is
// an error that names the line.
func Read(r io.Reader) (*File, error) {
	s := &reader{f: new(File), rows: map[string]int{}, columns: map[string]int{}}
	lines := bufio.NewScanner(r)
	lines.Buffer(nil, longestLine)
	for lines.Scan() && s.section != "ENDATA" {
		if s.line++; s.line > mostLines {
			return nil, fmt.Errorf("more than %d lines", mostLines)
		}
		text := lines.Text()
		if strings.HasPrefix(text, "*") {
			s.f.Comments = append(s.f.Comments, strings.TrimPrefix(strings.TrimPrefix(text, "*"), " "))
			continue
		}
		if words := strings.Fields(text); len(words) > 0 {
			if err := s.take(words, text[0] == ' '); err != nil {
				return nil, fmt.Errorf("line %d: %w", s.line, err)
			}
		}
	}
	if err := lines.Err(); err != nil {
		return nil, fmt.Errorf("line %d: %w", s.line+1, err)
	}
	if s.section != "ENDATA" {
		return nil, fmt.Errorf("line %d: the file ends here; want ENDATA", s.line)
	}
	return s.f, s.done()
}

type reader struct {
	f             *File
	line          int
	section       string
	inside        bool           // between markers of integers
	kinds         []string       // of the rows
	rows, columns map[string]int // -1 for the objective
	bounded       []int          // how many bounds were given, by column
}

// sections are the sections in their order.
var sections = []string{"", "NAME", "ROWS", "COLUMNS", "RHS", "BOUNDS", "ENDATA"}

func (s *reader) take(words []string, indented bool) error {
	if !indented {
		if at := slices.Index(sections, words[0]); at <= 0 || sections[at-1] != s.section {
			return fmt.Errorf("section %s after section %s", words[0], s.section)
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
	return fmt.Errorf("%q outside of a section", words[0])
}

func (s *reader) row(words []string) error {
	if len(words) != 2 || !slices.Contains([]string{"N", "L", "G", "E"}, words[0]) {
		return fmt.Errorf("%q; want N, L, G or E and a name", strings.Join(words, " "))
	}
	kind, name := words[0], words[1]
	if _, taken := s.rows[name]; taken {
		return fmt.Errorf("a second row %q", name)
	}
	if kind == "N" {
		if _, taken := s.rows[Objective]; taken || name != Objective {
			return fmt.Errorf("the objective is named %q; want %s, once", name, Objective)
		}
		s.rows[name] = -1
		return nil
	}
	if err := clean(name); err != nil {
		return err
	}
	s.rows[name] = len(s.kinds)
	s.kinds, s.f.Rows = append(s.kinds, kind), append(s.f.Rows, name)
	s.f.Program.Rows = append(s.f.Program.Rows, proof.Row{})
	return nil
}

func (s *reader) cell(words []string) error {
	if len(words) != 3 {
		return fmt.Errorf("%d words; want a column, a row and a number", len(words))
	}
	if words[1] == "'MARKER'" {
		if words[2] != "'INTORG'" && words[2] != "'INTEND'" || (words[2] == "'INTEND'") != s.inside {
			return fmt.Errorf("marker %s out of turn", words[2])
		}
		s.inside = !s.inside
		return nil
	}
	p, n := &s.f.Program, len(s.f.Columns)
	j, known := s.columns[words[0]]
	switch {
	case known && j != n-1:
		return fmt.Errorf("column %q goes on after another", words[0])
	case !known:
		if err := clean(words[0]); err != nil {
			return err
		}
		j = n
		s.columns[words[0]] = j
		s.f.Columns, s.bounded = append(s.f.Columns, words[0]), append(s.bounded, 0)
		p.Cost, p.Integer = append(p.Cost, 0), append(p.Integer, s.inside)
		p.Lower, p.Upper = append(p.Lower, 0), append(p.Upper, math.Inf(1))
	}
	i, found := s.rows[words[1]]
	if !found {
		return fmt.Errorf("there is no row %q", words[1])
	}
	v, err := finite(words[2])
	if err != nil {
		return err
	}
	if i < 0 {
		if p.Cost[j] != 0 {
			return fmt.Errorf("a second cost of %q", words[0])
		}
		p.Cost[j] = v
		return nil
	}
	r := &p.Rows[i]
	if slices.Contains(r.Cols[max(0, len(r.Cols)-1):], j) {
		return fmt.Errorf("a second coefficient of %q in %q", words[0], words[1])
	}
	r.Cols, r.Coefs = append(r.Cols, j), append(r.Coefs, v)
	return nil
}

// clean refuses a name that Write would change.
func clean(name string) error {
	if c := cleanName(name); c != name {
		return fmt.Errorf("the name %q; want such as %q", name, c)
	}
	return nil
}

func finite(text string) (float64, error) {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, fmt.Errorf("%q is no finite number", text)
	}
	return v, nil
}
