package lines

import (
	"strings"
	"testing"

	"cartwright/catalog/problem"
)

func TestPlaces(t *testing.T) {
	l := New(strings.NewReader("a  b\n\n\tü c \r\n"), "x")
	if got := l.End(); got != (problem.Pos{File: "x", Column: 1}) || got.String() != "x" {
		t.Errorf("before the first line: %v", got)
	}
	var words []string
	for l.Next() {
		for i, w := range append(l.Words(), "|") {
			words = append(words, w+" "+strings.TrimPrefix(l.At(i).String(), "x:"))
		}
	}
	if got, want := strings.Join(words, ", "), "a 1:1, b 1:4, | 1:5, | 2:1, ü 3:2, c 3:5, | 3:7"; got != want || l.Err() != nil {
		t.Errorf("%s, %v; want %s", got, l.Err(), want)
	}
}

func TestTooMuch(t *testing.T) {
	l := New(strings.NewReader("one\n"+strings.Repeat("x", LongestLine+1)), "x")
	for l.Next() {
	}
	if err := l.Err(); err == nil || err.Error() != "x:2:1: a line of more than 65536 bytes; break it up" {
		t.Error(err)
	}
	l = New(endless{}, "x")
	for l.Next() {
	}
	if err := l.Err(); err == nil || !strings.HasPrefix(err.Error(), "x:16777217:1: the text has more than") || l.Next() {
		t.Error(err)
	}
}

// endless is a text of empty lines without end.
type endless struct{}

func (endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = '\n'
	}
	return len(p), nil
}
