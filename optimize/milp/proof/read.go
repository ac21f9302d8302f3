package proof

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"cartwright/catalog/problem"
	"cartwright/optimize/milp/lines"
)

// Places says where in its text the parts of a certificate stand.
type Places struct {
	Claim, Point problem.Pos
	Nodes        map[*Tree]problem.Pos
}

// Read reads a certificate in its text form, and where its parts stand. What is read is well formed, not yet checked; what
// is not is a *problem.Error that names the file.
func Read(r io.Reader, file string, names Names) (*Certificate, *Places, error) {
	s := &reader{Reader: lines.New(r, file), columns: places(names.Columns), rows: places(names.Rows),
		at: &Places{Nodes: map[*Tree]problem.Pos{}}}
	c, err := s.certificate(len(names.Columns))
	if err != nil {
		return nil, nil, err
	}
	return c, s.at, nil
}

type reader struct {
	*lines.Reader
	columns, rows map[string]int
	at            *Places
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
	for s.Next() {
		if words := s.Words(); len(words) > 0 && words[0][0] != '#' {
			return words, nil
		}
	}
	if err := s.Err(); err != nil {
		return nil, err
	}
	return nil, lines.Mistake(s.End(), "the certificate ends here", fmt.Sprintf("its last line is %q", lastLine))
}

func (s *reader) certificate(columns int) (*Certificate, error) {
	c := new(Certificate)
	words, err := s.next()
	if err != nil {
		return nil, err
	}
	if strings.Join(words, " ") != firstLine {
		return nil, s.Wrong(0, fmt.Sprintf("the first line is %q", strings.Join(words, " ")), fmt.Sprintf("write %q", firstLine))
	}
	if c.Bound, err = s.claim(); err != nil {
		return nil, err
	}
	if words, err = s.next(); err != nil {
		return nil, err
	}
	if words[0] == "point" {
		s.at.Point = s.At(0)
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
		return nil, s.Wrong(0, fmt.Sprintf("%q after the last leaf", words[0]), fmt.Sprintf("write %q", lastLine))
	}
	return c, s.rest()
}

// claim reads the bound.
func (s *reader) claim() (float64, error) {
	words, err := s.next()
	if err != nil {
		return 0, err
	}
	s.at.Claim = s.At(0)
	switch {
	case len(words) == 2 && words[0] == "claim" && words[1] == "impossible":
		return math.Inf(1), nil
	case len(words) == 3 && words[0] == "claim" && words[1] == "least":
		return s.finite(words, 2)
	}
	return 0, s.Wrong(0, fmt.Sprintf("%q is no claim", strings.Join(words, " ")), `write "claim least" and a number, or "claim impossible"`)
}

// rest refuses whatever comes after the end but comments.
func (s *reader) rest() error {
	for s.Next() {
		if words := s.Words(); len(words) > 0 && words[0][0] != '#' {
			return s.Wrong(0, fmt.Sprintf("%q after the end", words[0]), "take it out")
		}
	}
	return s.Err()
}

// tree reads a tree that begins with the words of a line already read.
func (s *reader) tree(words []string) (*Tree, error) {
	root := new(Tree)
	for open := []*Tree{root}; ; {
		t := open[len(open)-1]
		open = open[:len(open)-1]
		s.at.Nodes[t] = s.At(0)
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
		if t.Column, err = s.place(s.columns, words, 1); err != nil {
			return err
		}
		if t.At, err = strconv.ParseInt(words[2], 10, 64); err != nil {
			return s.Wrong(2, fmt.Sprintf("%q is no whole number of 64 bits", words[2]), "write one, such as 3")
		}
		t.Below, t.Above = new(Tree), new(Tree)
		return nil
	case words[0] == "leaf", words[0] == "impossible":
		t.Impossible = words[0] == "impossible"
		return s.values(words, s.rows, func(i int, v float64) {
			t.Multipliers = append(t.Multipliers, Multiplier{Row: i, Value: v})
		})
	}
	return s.Wrong(0, fmt.Sprintf("%q is no split and no leaf", strings.Join(words, " ")),
		`write "split" with a variable and a number, or "leaf" or "impossible" with how many lines follow`)
}

// values reads as many names with numbers as the second word says.
func (s *reader) values(words []string, at map[string]int, take func(int, float64)) error {
	const howMany = "write how many lines with a name and a number follow"
	if len(words) != 2 {
		return s.Wrong(1, fmt.Sprintf("%q does not say just how many lines follow", strings.Join(words, " ")), howMany)
	}
	count, err := strconv.Atoi(words[1])
	if err != nil || count < 0 {
		return s.Wrong(1, fmt.Sprintf("%q is no number of lines", words[1]), howMany)
	}
	for range count {
		pair, err := s.next()
		if err != nil {
			return err
		}
		if len(pair) != 2 {
			return s.Wrong(0, fmt.Sprintf("%q is no name with a number", strings.Join(pair, " ")), "write as many of them as were said to follow")
		}
		i, err := s.place(at, pair, 0)
		if err != nil {
			return err
		}
		v, err := s.finite(pair, 1)
		if err != nil {
			return err
		}
		take(i, v)
	}
	return nil
}

// place returns which variable or row a word names.
func (s *reader) place(at map[string]int, words []string, word int) (int, error) {
	switch i, found := at[words[word]]; {
	case !found:
		return 0, s.Wrong(word, fmt.Sprintf("the program has no %q", words[word]), "write a name that it has, of a row in a leaf, else of a variable")
	case i < 0:
		return 0, s.Wrong(word, fmt.Sprintf("the program has several %q", words[word]), "give each a name of its own")
	default:
		return i, nil
	}
}

// finite returns the number that a word is.
func (s *reader) finite(words []string, word int) (float64, error) {
	v, err := strconv.ParseFloat(words[word], 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, s.Wrong(word, fmt.Sprintf("%q is no finite number", words[word]), "write one, such as 0.25")
	}
	return v, nil
}
