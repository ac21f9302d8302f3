package scenarios

import (
	"bytes"
	"encoding/csv"
	"io/fs"
	"path/filepath"

	"cartwright/catalog/plaintext"
	"cartwright/catalog/problem"
)

// Bounds of a file of hours.
const (
	maxWeatherBytes    = 8 << 20 // the public files have about 2 MB
	maxWeatherProblems = 20      // of one file: the wrong decimal sign makes one in every row
)

// site is what the header of a public file says of its place.
type site struct{ latitude, longitude, zoneH float64 }

// weather reads a file of hours.
type weather struct {
	problems *problem.List
	warnings *problem.List
	file     string
	layout   layout
	site     *site // nil: the file does not say

	rows    *csv.Reader
	cut     int         // lines before those that rows reads
	lines   []int       // of each hour
	figures [][]float64 // of each column, hour by hour; NaN: missing
	leap    bool        // a 29 February was left out
}

// readWeather reads 8,760 hours: CSV with our own columns or one of the two public layouts, which are recognised by
// their first lines. Mistakes are added to the reader's list; then there is no Weather.
func readWeather(name string, r *reader, named problem.Pos, open opener) (*weather, *Weather) {
	w := &weather{problems: r.problems, warnings: &r.warnings, file: filepath.ToSlash(name)}
	if !filepath.IsAbs(name) {
		w.file = filepath.ToSlash(filepath.Join(filepath.Dir(r.file), name))
	}
	before := r.problems.Len()
	data, ok := readFile(func() (fs.File, error) { return open(name) }, w.file, named, maxWeatherBytes, w.problems)
	if !ok || !checkText(data, w.file, w.problems) {
		return w, nil
	}
	data, separator := plaintext.Separator(data)
	body, ok := w.head(data, separator)
	if !ok {
		return w, nil
	}
	w.readRows(body, before)
	if w.problems.Len() == before {
		w.mend()
	}
	if w.problems.Len() > before {
		return w, nil
	}
	out := &Weather{}
	for i, c := range w.layout.columns {
		*c.of(out) = w.figures[i]
	}
	return w, out
}

// csvReader returns a reader of rows of any number of fields.
func csvReader(data []byte, separator rune) *csv.Reader {
	rows := csv.NewReader(bytes.NewReader(data))
	rows.Comma, rows.FieldsPerRecord, rows.TrimLeadingSpace = separator, -1, true
	return rows
}

// pos returns the place of a field of the row read last.
func (w *weather) pos(field int) problem.Pos {
	line, column := w.rows.FieldPos(field)
	return problem.Pos{File: w.file, Line: w.cut + line, Column: column}
}

// row returns the place of an hour's row.
func (w *weather) row(hour int) problem.Pos {
	return problem.Pos{File: w.file, Line: w.lines[hour], Column: 1}
}
