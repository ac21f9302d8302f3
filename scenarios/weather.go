package scenarios

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"io/fs"
	"math"
	"path/filepath"
	"strconv"
	"strings"

	"cartwright/catalog/plaintext"
	"cartwright/catalog/problem"
)

// Bounds of a file of hours.
const (
	maxWeatherBytes    = 8 << 20
	maxWeatherProblems = 20   // of one file: the wrong decimal sign makes one in every row
	mostBridged        = 48   // hours in all that may be missing
	longestBridged     = 6    // hours at a stretch
	brightestWm2       = 2000 // more than the sun gives with bright clouds beside it
)

// layout is how a file of hours is laid out.
type layout struct {
	name     string
	skip     int            // lines before the first hour
	fields   int            // of a row at the least
	at       map[string]int // where each figure stands
	missing  float64        // at or beyond it a figure is missing; below 0: at or below
	hotterC  float64        // a temperature at or beyond it is missing
	date     func(row []string) (month, day int)
	leapRows bool // may have a 29 February, which is left out
}

// The public layouts: NREL/TP-581-43156 (TMY3) and the EnergyPlus weather data dictionary (EPW).
var (
	tmy3 = layout{name: "TMY3", skip: 2, fields: 32, missing: -9900, hotterC: -9900,
		at:   map[string]int{"ghi": 4, "dni": 7, "dhi": 10, "temp_c": 31},
		date: func(row []string) (int, int) { return slashDate(row[0]) }}
	epw = layout{name: "EPW", skip: 8, fields: 16, missing: 9999, hotterC: 99.9, leapRows: true,
		at: map[string]int{"ghi": 13, "dni": 14, "dhi": 15, "temp_c": 6},
		date: func(row []string) (int, int) {
			m, _ := strconv.Atoi(strings.TrimSpace(row[1]))
			d, _ := strconv.Atoi(strings.TrimSpace(row[2]))
			return m, d
		}}
)

// slashDate reads MM/DD/YYYY.
func slashDate(text string) (month, day int) {
	parts := strings.Split(text, "/")
	if len(parts) < 2 {
		return 0, 0
	}
	m, _ := strconv.Atoi(strings.TrimSpace(parts[0]))
	d, _ := strconv.Atoi(strings.TrimSpace(parts[1]))
	return m, d
}

// weather reads a file of hours.
type weather struct {
	problems *problem.List
	warnings *problem.List
	file     string
	layout   layout
	lines    []int // of each hour, for mistakes
	told     int
}

// read reads 8,760 hours: CSV of our own columns, or one of the two public layouts, which are told by their first line.
// Mistakes are added to the list; then it returns nil.
func (w *weather) read(name string, r *reader, named problem.Pos, open opener) *Weather {
	before := w.problems.Len()
	w.file = filepath.ToSlash(name)
	if !filepath.IsAbs(name) {
		w.file = filepath.ToSlash(filepath.Join(filepath.Dir(r.file), name))
	}
	data, ok := readFile(func() (fs.File, error) { return open(name) }, w.file, named, maxWeatherBytes, w.problems)
	if !ok || !checkText(data, w.file, w.problems) {
		return nil
	}
	data, separator := plaintext.Separator(data)
	rows := csv.NewReader(bytes.NewReader(data))
	rows.Comma, rows.FieldsPerRecord, rows.LazyQuotes, rows.TrimLeadingSpace = separator, -1, true, true
	columns, ok := w.head(rows, data)
	if !ok {
		return nil
	}
	figures := w.body(rows, columns)
	if w.problems.Len() > before {
		return nil
	}
	for _, name := range columns {
		w.bridge(name, figures[name])
	}
	if w.problems.Len() > before {
		return nil
	}
	return &Weather{GHI: figures["ghi"], DNI: figures["dni"], DHI: figures["dhi"], POA: figures["poa"], TempC: figures["temp_c"]}
}

// head tells the layout by the first lines, and which figures it has.
func (w *weather) head(rows *csv.Reader, data []byte) (columns []string, ok bool) {
	first, _, _ := strings.Cut(string(data[:min(len(data), 200)]), "\n")
	fields := strings.Split(first, ",")
	switch {
	case strings.HasPrefix(first, "LOCATION,"):
		w.layout = epw
	case len(fields) == 7 && isNumeric(fields[0]) && isNumeric(fields[6]):
		w.layout = tmy3
	default:
		rows.Comment = '#'
		return w.ownHead(rows)
	}
	for range w.layout.skip {
		if _, err := rows.Read(); err != nil {
			w.problems.Add(problem.Pos{File: w.file}, "the "+w.layout.name+" file ends in its head", "give the whole file")
			return nil, false
		}
	}
	return []string{"ghi", "dni", "dhi", "temp_c"}, true
}

func isNumeric(text string) bool {
	_, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
	return err == nil
}

// The columns of our own: light on the level in three figures, or on the plane of the modules in one.
var (
	ownLevel = []string{"time", "ghi", "dni", "dhi", "temp_c"}
	ownPlane = []string{"time", "poa", "temp_c"}
)

// ownHead reads the names of our own columns.
func (w *weather) ownHead(rows *csv.Reader) (columns []string, ok bool) {
	record, err := rows.Read()
	if err != nil {
		w.problems.Add(problem.Pos{File: w.file}, "the file of hours is empty", "begin with a line "+strings.Join(ownLevel, ","))
		return nil, false
	}
	w.layout = layout{name: "hours", fields: len(record), at: map[string]int{}, missing: math.Inf(1), hotterC: math.Inf(1)}
	for i, name := range record {
		w.layout.at[strings.TrimSpace(name)] = i
	}
	for _, want := range [][]string{ownLevel, ownPlane} {
		if len(record) == len(want) && hasAll(w.layout.at, want) {
			timeAt := w.layout.at["time"]
			w.layout.date = func(row []string) (int, int) { return isoDate(row[timeAt]) }
			w.layout.leapRows = true
			return want[1:], true
		}
	}
	line, column := rows.FieldPos(0)
	w.problems.Add(problem.Pos{File: w.file, Line: line, Column: column}, fmt.Sprintf("the columns are %s", strings.Join(record, ", ")),
		"write "+strings.Join(ownLevel, ",")+" or "+strings.Join(ownPlane, ",")+", or give a TMY3 or EPW file as it is")
	return nil, false
}

func hasAll(at map[string]int, names []string) bool {
	for _, n := range names {
		if _, ok := at[n]; !ok {
			return false
		}
	}
	return true
}

// isoDate reads the month and day of YYYY-MM-DD HH:MM or MM-DD HH:MM; 0 where there is none.
func isoDate(text string) (month, day int) {
	date, _, _ := strings.Cut(strings.TrimSpace(text), " ")
	parts := strings.Split(date, "-")
	if len(parts) < 2 {
		return 0, 0
	}
	m, _ := strconv.Atoi(parts[len(parts)-2])
	d, _ := strconv.Atoi(parts[len(parts)-1])
	return m, d
}
