package page

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"
)

// sheet is a CSV file of the catalogue as a table: a heading and rows, comments left out.
type sheet struct {
	Columns []string
	Rows    [][]string
}

// csvReader reads CSV as the catalogue does: lines that begin with # are comments.
func csvReader(text []byte) *csv.Reader {
	r := csv.NewReader(bytes.NewReader(text))
	r.Comment, r.FieldsPerRecord, r.TrimLeadingSpace = '#', -1, false
	return r
}

// readSheet reads a file as a table.
func readSheet(text []byte) (sheet, error) {
	all, err := csvReader(bytes.TrimPrefix(text, []byte("\uFEFF"))).ReadAll()
	if err != nil || len(all) == 0 {
		return sheet{}, errors.Join(err, errIf(len(all) == 0, "the file has no heading"))
	}
	return sheet{Columns: all[0], Rows: all[1:]}, nil
}

func errIf(is bool, words string) error {
	if is {
		return errors.New(words)
	}
	return nil
}

// setCell returns a CSV text with one cell changed, rows and columns counted from 0 without the heading. Every
// other byte stays. What was written is read again before it is returned.
func setCell(text []byte, row, column int, value string) ([]byte, error) {
	const bom = "\uFEFF"
	body := strings.TrimPrefix(string(text), bom)
	from, to, err := cellAt(body, row, column)
	if err != nil {
		return nil, err
	}
	made := body[:from] + cellText(value) + body[to:]
	was, err := readSheet([]byte(body))
	if err != nil {
		return nil, err
	}
	is, err := readSheet([]byte(made))
	if err != nil || len(is.Rows) != len(was.Rows) {
		return nil, errOdd
	}
	for i := range is.Rows {
		for k := range is.Rows[i] {
			want := value
			if i != row || k != column {
				if k >= len(was.Rows[i]) {
					return nil, errOdd
				}
				want = was.Rows[i][k]
			}
			if is.Rows[i][k] != want {
				return nil, errOdd
			}
		}
	}
	return append(bytes.Clone(text[:len(text)-len(body)]), made...), nil
}

// errOdd is the error of a file whose layout can be read but not edited.
var errOdd = errors.New("the layout of this file can be read, but not edited here; edit it in a spreadsheet")

// cellAt returns the offsets where a cell begins and ends.
func cellAt(text string, row, column int) (from, to int, err error) {
	starts := []int{0}
	for i := range len(text) {
		if text[i] == '\n' {
			starts = append(starts, i+1)
		}
	}
	r := csvReader([]byte(text))
	for n := -1; ; n++ { // -1 is the heading
		record, err := r.Read()
		switch {
		case errors.Is(err, io.EOF):
			return 0, 0, fmt.Errorf("there is no row %d", row+1)
		case err != nil:
			return 0, 0, errOdd
		case row < 0:
			return 0, 0, fmt.Errorf("there is no row %d", row+1)
		case n < row:
			continue
		case column < 0 || column >= len(record):
			return 0, 0, fmt.Errorf("row %d has no column %d", row+1, column+1)
		}
		offset := func(field int) int {
			line, col := r.FieldPos(field)
			return starts[line-1] + col - 1
		}
		from = offset(column)
		if column+1 < len(record) {
			return from, offset(column+1) - 1, nil // before the comma
		}
		return from, len(strings.TrimRight(text[:r.InputOffset()], "\r\n")), nil
	}
}

// cellText writes a value as a cell of CSV, in quotes where it needs them.
func cellText(value string) string {
	var b strings.Builder
	w := csv.NewWriter(&b)
	if err := w.Write([]string{value, ""}); err != nil { // the second cell keeps an empty one from being quoted
		return ""
	}
	w.Flush()
	return strings.TrimSuffix(strings.TrimSuffix(b.String(), "\n"), ",")
}

// addRow returns a CSV text with a row added at its end that has an id and is empty otherwise.
func addRow(text []byte, id string) ([]byte, error) {
	s, err := readSheet(text)
	if err != nil {
		return nil, err
	}
	row := cellText(id) + strings.Repeat(",", len(s.Columns)-1) + "\n"
	made := string(text)
	if !strings.HasSuffix(made, "\n") {
		made += "\n"
	}
	if strings.HasSuffix(made, "\r\n") {
		row = strings.TrimSuffix(row, "\n") + "\r\n"
	}
	made += row
	is, err := readSheet([]byte(made))
	if err != nil || len(is.Rows) != len(s.Rows)+1 || is.Rows[len(s.Rows)][0] != id {
		return nil, errOdd
	}
	return []byte(made), nil
}

// removeRow returns a CSV text without one of its rows.
func removeRow(text []byte, row int) ([]byte, error) {
	const bom = "\uFEFF"
	body := strings.TrimPrefix(string(text), bom)
	was, err := readSheet([]byte(body))
	if err != nil {
		return nil, err
	}
	if row < 0 || row >= len(was.Rows) {
		return nil, fmt.Errorf("there is no row %d", row+1)
	}
	from, _, err := cellAt(body, row, 0)
	if err != nil {
		return nil, err
	}
	_, to, err := cellAt(body, row, len(was.Rows[row])-1)
	if err != nil {
		return nil, err
	}
	rest := body[to:]
	rest = strings.TrimPrefix(strings.TrimPrefix(rest, "\r"), "\n")
	made := body[:from] + rest
	is, err := readSheet([]byte(made))
	if err != nil || len(is.Rows) != len(was.Rows)-1 {
		return nil, errOdd
	}
	return append(bytes.Clone(text[:len(text)-len(body)]), made...), nil
}
