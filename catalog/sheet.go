package catalog

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"

	"cartwright/catalog/plaintext"
	"cartwright/catalog/problem"
)

// maxRow is how many bytes are read for one row, the comments before it included. A row of a catalogue has
// some 30 cells; a lost quote or another kind of file may make millions, which only eat memory.
const maxRow = 1 << 20

// maxMistakes is how many mistakes are reported for one file before reading stops: more than anyone corrects
// in one go, and few enough to read where the file is something else altogether.
const maxMistakes = 200

// report collects what is wrong with one file, or with one sheet of a workbook.
type report struct {
	file, sheet string // sheet: "" of a CSV file
	list        problem.List
	warnings    problem.List
	own         []OwnColumn
	lost        bool // there were rows whose ids are not known
}

// whole returns the place of the file or sheet as a whole.
func (r *report) whole() problem.Pos { return problem.Pos{File: r.file, Sheet: r.sheet} }

// noun returns what it is called.
func (r *report) noun() string {
	if r.sheet != "" {
		return "the sheet"
	}
	return "the file"
}

// add records a mistake; the one past maxMistakes is replaced by a note that reading has stopped.
func (r *report) add(pos problem.Pos, wrong, right string) {
	switch n := r.list.Len(); {
	case n < maxMistakes:
		r.list.Add(pos, wrong, right)
	case n == maxMistakes:
		r.lost = true
		r.list.Add(pos, fmt.Sprintf("there are more than %d mistakes; the rest is not listed", maxMistakes), "correct those first")
	}
}

// full reports whether reading of the file is to stop.
func (r *report) full() bool { return r.list.Len() > maxMistakes }

// cell is one cell with the space around it taken off.
type cell struct {
	text string
	pos  problem.Pos
}

// sheet reads a CSV file row by row. Comments, empty lines and rows of empty cells are passed over.
//
// It stands on encoding/csv alone: a header here may carry either unit of a pair, an empty cell takes a
// default that may hang on other cells, and each mistake is told with the place of its cell. A reader
// that maps rows to structs by tags knows one name for a field and stops at the first bad cell.
type sheet struct {
	data  []byte
	lines *lines
	csv   *csv.Reader
	to    *report
}

func (s *sheet) report() *report { return s.to }

// openSheet checks a file's bytes before any row is read, and reports what is wrong with the file as a whole.
// It returns false where reading rows would be of no use.
func openSheet(data []byte, to *report) (*sheet, bool) {
	if plaintext.UTF16(data) {
		to.add(problem.Pos{File: to.file, Line: 1, Column: 1}, "the text is UTF-16", "save the file as CSV in UTF-8")
		return nil, false
	}
	if at := plaintext.BadByte(data); at >= 0 {
		to.add(place(to.file, data, at), fmt.Sprintf("byte 0x%02x is not UTF-8", data[at]), "save the file as CSV in UTF-8")
		return nil, false
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	if !bytes.ContainsRune(data, '\n') { // some spreadsheets still end lines with a bare CR
		data = bytes.ReplaceAll(data, []byte("\r"), []byte("\n"))
	}
	data, separator := plaintext.Separator(data)
	lines := &lines{rest: data}
	r := csv.NewReader(lines)
	r.Comma, r.Comment = separator, '#'
	r.FieldsPerRecord = -1 // counted in table.read, with a better message
	r.TrimLeadingSpace = true
	return &sheet{data, lines, r, to}, true
}

// place returns the line and column of a byte.
func place(file string, data []byte, at int) problem.Pos {
	line := 1 + bytes.Count(data[:at], []byte("\n"))
	return problem.Pos{File: file, Line: line, Column: at - bytes.LastIndexByte(data[:at], '\n')}
}

// lines hands out data at most a line at a time, so that encoding/csv reads no further than it must, and
// no more than left bytes.
type lines struct {
	rest []byte
	left int
}

// errLongRow says that a row is longer than maxRow.
var errLongRow = errors.New("catalog: the row is too long")

func (l *lines) Read(p []byte) (int, error) {
	switch {
	case len(l.rest) == 0:
		return 0, io.EOF
	case l.left <= 0:
		return 0, errLongRow
	}
	n := min(len(p), len(l.rest))
	if end := bytes.IndexByte(l.rest[:n], '\n'); end >= 0 {
		n = end + 1
	}
	copy(p, l.rest[:n])
	l.rest, l.left = l.rest[n:], l.left-n
	return n, nil
}

// next returns the next row that says something, or false at the end of the file. A row whose quotes are
// wrong is reported and passed over.
func (s *sheet) next() ([]cell, bool) {
	for !s.to.full() {
		from := s.csv.InputOffset()
		s.lines.left = maxRow
		record, err := s.csv.Read()
		switch {
		case err == io.EOF:
			return nil, false
		case errors.Is(err, errLongRow):
			s.to.lost = true
			s.to.add(place(s.to.file, s.data, int(from)), fmt.Sprintf("the row is longer than %d bytes", maxRow), "look for a lost quote")
			return nil, false
		case err != nil:
			s.quoting(err, s.data[from:s.csv.InputOffset()])
			continue
		}
		row := make([]cell, len(record))
		blank := true
		for i, text := range record {
			line, column := s.csv.FieldPos(i)
			row[i] = cell{strings.TrimSpace(text), problem.Pos{File: s.to.file, Line: line, Column: column}}
			blank = blank && row[i].text == ""
		}
		// A spreadsheet puts quotes round a comment that has quotes or commas in it.
		if blank || strings.HasPrefix(row[0].text, "#") {
			continue
		}
		return row, true
	}
	return nil, false
}

// quoting reports a row that encoding/csv could not split into cells, and the lines it read for it.
func (s *sheet) quoting(err error, lines []byte) {
	s.to.lost = true
	var bad *csv.ParseError
	errors.As(err, &bad) // the only other errors are those of lines
	pos := problem.Pos{File: s.to.file, Line: bad.Line, Column: bad.Column}
	switch {
	case errors.Is(bad.Err, csv.ErrBareQuote):
		s.to.add(pos, `a " stands inside a cell that is not quoted`, `quote the whole cell and write "" for each " in it`)
	case bytes.Count(lines, []byte(`"`))%2 == 1:
		pos.Line, pos.Column = bad.StartLine, 1
		s.to.add(pos, `the row opens a quoted cell and does not close it`, `put a " before the comma, or write "" for a " in the cell`)
	default:
		s.to.add(pos, `a quoted cell does not end at this "`, `put a comma after it, or write "" for a " in the cell`)
	}
}
