// Package lines reads texts of words, line by line, and says where in them a mistake stands.
package lines

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode"

	"cartwright/catalog/problem"
)

// How much is read at the most.
const (
	LongestLine = 1 << 16 // bytes
	mostLines   = 1 << 24
)

// Reader reads a text line by line.
type Reader struct {
	file string
	scan *bufio.Scanner
	line int
	text string
	err  error
}

// New returns a reader before the first line; mistakes name the file.
func New(r io.Reader, file string) *Reader {
	l := &Reader{file: file, scan: bufio.NewScanner(r)}
	l.scan.Buffer(nil, LongestLine)
	return l
}

// Next goes on to the next line and reports whether there is one; Err says whether the text is over where there is none.
func (l *Reader) Next() bool {
	if l.err != nil || !l.scan.Scan() {
		return false
	}
	l.line++
	if l.text = l.scan.Text(); l.line > mostLines {
		l.err = l.Wrong(0, fmt.Sprintf("the text has more than %d lines", mostLines), "end it before that")
		return false
	}
	return true
}

// Err returns what ended the reading other than the end of the text, as a mistake with its place.
func (l *Reader) Err() error {
	if err := l.scan.Err(); err != nil && l.err == nil {
		wrong, right := "it cannot be read: "+err.Error(), "make sure that it may be read"
		if errors.Is(err, bufio.ErrTooLong) {
			wrong, right = fmt.Sprintf("a line of more than %d bytes", LongestLine), "break it up"
		}
		l.line, l.text = l.line+1, ""
		l.err = l.Wrong(0, wrong, right)
	}
	return l.err
}

// Text returns the line.
func (l *Reader) Text() string { return l.text }

// Words returns the words of the line.
func (l *Reader) Words() []string { return strings.Fields(l.text) }

// At returns where a word of the line begins, counted from 0; beyond the last word, where the line ends.
func (l *Reader) At(word int) problem.Pos {
	inside := false
	for i, r := range l.text {
		if begins := !unicode.IsSpace(r) && !inside; begins {
			if word--; word < 0 {
				return l.pos(i)
			}
		}
		inside = !unicode.IsSpace(r)
	}
	return l.pos(len(l.text))
}

func (l *Reader) pos(column int) problem.Pos {
	return problem.Pos{File: l.file, Line: l.line, Column: column + 1}
}

// End returns where the line ends; before the first line, the text as a whole.
func (l *Reader) End() problem.Pos { return l.pos(len(l.text)) }

// Wrong returns a mistake at a word of the line.
func (l *Reader) Wrong(word int, wrong, right string) error { return Mistake(l.At(word), wrong, right) }

// Mistake returns the error of one mistake.
func Mistake(at problem.Pos, wrong, right string) error {
	var list problem.List
	list.Add(at, wrong, right)
	return list.Err()
}
