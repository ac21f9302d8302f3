package proof

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
)

// longestLine and mostLines bound what Read takes in.
const (
	longestLine = 1 << 16
	mostLines   = 1 << 24
)

// Read reads a certificate in its text form. An error names the line. What is read is well formed, not yet checked.
func Read(r io.Reader, names Names) (*Certificate, error) {
	s := &reader{lines: bufio.NewScanner(r), columns: places(names.Columns), rows: places(names.Rows)}
	s.lines.Buffer(nil, longestLine)
	c, err := s.certificate(len(names.Columns))
	if err != nil {
		return nil, fmt.Errorf("line %d: %w", s.line, err)
	}
	return c, nil
}

type reader struct {
	lines         *bufio.Scanner
	line          int
	columns, rows map[string]int
}

// places returns where each name stands; one that stands twice is nowhere.
func places(names []string) map[string]int {
	at := make(map[string]int, len(names))
	for i, name := range names {
		if _, twice := at[name]; twice {
			i = -1
		}
		at[name] = i
	}
	return at
}

// next returns the words of the next line that is no comment.
func (s *reader) next() ([]string, error) {
	for s.lines.Scan() {
		if s.line++; s.line > mostLines {
			return nil, fmt.Errorf("more than %d lines", mostLines)
		}
		if words := strings.Fields(s.lines.Text()); len(words) > 0 && words[0][0] != '#' {
			return words, nil
		}
	}
	if err := s.lines.Err(); err != nil {
		return nil, err
	}
	return nil, fmt.Errorf("the certificate ends here; want %q on its last line", lastLine)
}

func (s *reader) certificate(columns int) (*Certificate, error) {
	c := new(Certificate)
	words, err := s.next()
	if err != nil {
		return nil, err
	}
	if strings.Join(words, " ") != firstLine {
		return nil, fmt.Errorf("the first line is %q; want %q", strings.Join(words, " "), firstLine)
	}
	if c.Bound, err = s.claim(); err != nil {
		return nil, err
	}
	if words, err = s.next(); err != nil {
		return nil, err
	}
	if words[0] == "point" {
		c.Point = make([]float64, columns)
		if err = s.values(words, s.columns, func(j int, v float64) { c.Point[j] = v }); err != nil {
			return nil, err
		}
		if words, err = s.next(); err != nil {
			return nil, err
		}
	}
	if c.Tree, err = s.tree(words); err != nil {
		return nil, err
	}
	if words, err = s.next(); err != nil {
		return nil, err
	}
	if strings.Join(words, " ") != lastLine {
		return nil, fmt.Errorf("%q after the last leaf; want %q", words[0], lastLine)
	}
	return c, s.rest()
}

// claim reads the bound.
func (s *reader) claim() (float64, error) {
	words, err := s.next()
	switch {
	case err != nil:
		return 0, err
	case len(words) == 2 && words[0] == "claim" && words[1] == "impossible":
		return math.Inf(1), nil
	case len(words) == 3 && words[0] == "claim" && words[1] == "least":
		return finite(words[2])
	}
	return 0, fmt.Errorf("%q; want \"claim least\" and a number, or \"claim impossible\"", strings.Join(words, " "))
}

// rest refuses whatever comes after the end but comments.
func (s *reader) rest() error {
	for s.lines.Scan() {
		s.line++
		if words := strings.Fields(s.lines.Text()); len(words) > 0 && words[0][0] != '#' {
			return fmt.Errorf("%q after the end", words[0])
		}
	}
	return s.lines.Err()
}

// tree reads a tree that begins with the words of a line already read.
func (s *reader) tree(words []string) (*Tree, error) {
	root := new(Tree)
	for open := []*Tree{root}; ; {
		t := open[len(open)-1]
		open = open[:len(open)-1]
		if err := s.node(t, words); err != nil {
			return nil, err
		}
		if t.Below != nil {
			open = append(open, t.Above, t.Below)
		}
		if len(open) == 0 {
			return root, nil
		}
		var err error
		if words, err = s.next(); err != nil {
			return nil, err
		}
	}
}

// node reads one split, or one leaf with its multipliers.
func (s *reader) node(t *Tree, words []string) (err error) {
	switch {
	case words[0] == "split" && len(words) == 3:
		if t.Column, err = place(s.columns, words[1]); err != nil {
			return err
		}
		if t.At, err = strconv.ParseInt(words[2], 10, 64); err != nil {
			return fmt.Errorf("%q is no whole number of 64 bits", words[2])
		}
		t.Below, t.Above = new(Tree), new(Tree)
		return nil
	case words[0] == "leaf", words[0] == "impossible":
		t.Impossible = words[0] == "impossible"
		return s.values(words, s.rows, func(i int, v float64) {
			t.Multipliers = append(t.Multipliers, Multiplier{Row: i, Value: v})
		})
	}
	return fmt.Errorf("%q; want \"split\" with a variable and a number, \"leaf\" or \"impossible\"", strings.Join(words, " "))
}

// values reads as many names with numbers as the second word says.
func (s *reader) values(words []string, at map[string]int, take func(int, float64)) error {
	if len(words) != 2 {
		return fmt.Errorf("%q; want how many lines follow", strings.Join(words, " "))
	}
	count, err := strconv.Atoi(words[1])
	if err != nil || count < 0 {
		return fmt.Errorf("%q is no number of lines", words[1])
	}
	for range count {
		pair, err := s.next()
		if err != nil {
			return err
		}
		if len(pair) != 2 {
			return fmt.Errorf("%q; want a name and a number", strings.Join(pair, " "))
		}
		i, err := place(at, pair[0])
		if err != nil {
			return err
		}
		v, err := finite(pair[1])
		if err != nil {
			return err
		}
		take(i, v)
	}
	return nil
}

func place(at map[string]int, name string) (int, error) {
	switch i, found := at[name]; {
	case !found:
		return 0, fmt.Errorf("the program has no %q", name)
	case i < 0:
		return 0, fmt.Errorf("the program has several %q", name)
	default:
		return i, nil
	}
}

func finite(text string) (float64, error) {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, fmt.Errorf("%q is no finite number", text)
	}
	return v, nil
}
