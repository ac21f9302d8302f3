package scenarios

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math"
	"path/filepath"
	"strconv"
	"strings"

	"cartwright/catalog/plaintext"
	"cartwright/catalog/problem"
	"cartwright/scenarios/sky"
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

// body reads the hours; a figure that is missing is NaN.
func (w *weather) body(rows *csv.Reader, columns []string) map[string][]float64 {
	figures := map[string][]float64{}
	for {
		row, err := rows.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			w.problems.Add(problem.Pos{File: w.file}, "it cannot be read as CSV: "+plain(err), "mend the row, or save the file again")
			return figures
		}
		line, _ := rows.FieldPos(0)
		if len(row) < w.layout.fields {
			w.wrong(line, 1, fmt.Sprintf("the row has %d fields", len(row)), fmt.Sprintf("write %d", w.layout.fields))
			continue
		}
		if month, day := w.layout.date(row); w.layout.leapRows && month == 2 && day == 29 {
			continue
		}
		w.lines = append(w.lines, line)
		for _, name := range columns {
			_, column := rows.FieldPos(w.layout.at[name])
			figures[name] = append(figures[name], w.figure(name, row[w.layout.at[name]], line, column))
		}
	}
	if n := len(w.lines); n != SunHours && w.told == 0 {
		w.problems.Add(problem.Pos{File: w.file}, fmt.Sprintf("there are %d hours", n), fmt.Sprintf("give a whole year: %d rows, 29 February left out", SunHours))
	}
	return figures
}

// wrong tells a mistake in the file, unless as many are told as anybody reads.
func (w *weather) wrong(line, column int, wrong, right string) {
	if w.told++; w.told <= maxWeatherProblems {
		w.problems.Add(problem.Pos{File: w.file, Line: line, Column: column}, wrong, right)
	}
}

// figure reads one figure; NaN where it is missing.
func (w *weather) figure(name, text string, line, column int) float64 {
	text = strings.TrimSpace(text)
	if text == "" {
		return math.NaN()
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		w.wrong(line, column, fmt.Sprintf("%s: %q is not a number", name, text), "write a number, for example 412")
		return math.NaN()
	}
	missing, least, most := w.layout.missing, 0.0, float64(brightestWm2)
	if name == "temp_c" {
		missing, least, most = w.layout.hotterC, minAmbientC-40, maxAmbientC
	}
	if missing < 0 && v <= missing || missing > 0 && v >= missing {
		return math.NaN()
	}
	if v < least || v > most {
		w.wrong(line, column, fmt.Sprintf("%s: %s is out of range", name, text), fmt.Sprintf("write from %g to %g", least, most))
	}
	return v + 0 // -0.00 of some files is 0
}

// bridge fills hours that are missing, if they are few, along a straight line between those beside them, and says so.
func (w *weather) bridge(name string, hours []float64) {
	missing, longest, run, first := 0, 0, 0, -1
	for i, v := range hours {
		if math.IsNaN(v) {
			if first < 0 {
				first = i
			}
			missing++
			run++
			longest = max(longest, run)
		} else {
			run = 0
		}
	}
	if missing == 0 {
		return
	}
	at := problem.Pos{File: w.file, Line: w.lines[first], Column: 1}
	if missing > mostBridged || longest > longestBridged {
		w.problems.Add(at, fmt.Sprintf("%s: %d hours are missing, %d at a stretch; the first is here", name, missing, longest),
			fmt.Sprintf("give a file in which at most %d are, %d at a stretch", mostBridged, longestBridged))
		return
	}
	n := len(hours)
	filled := append([]float64(nil), hours...)
	for i, v := range hours {
		if !math.IsNaN(v) {
			continue
		}
		a, b := 1, 1
		for math.IsNaN(hours[(i-a+n)%n]) {
			a++
		}
		for math.IsNaN(hours[(i+b)%n]) {
			b++
		}
		before, after := hours[(i-a+n)%n], hours[(i+b)%n]
		filled[i] = before + (after-before)*float64(a)/float64(a+b)
	}
	copy(hours, filled)
	w.warnings.Add(at, fmt.Sprintf("%s: %d hours are missing and were bridged from those beside them; the first is here", name, missing), "")
}

// darkWm2 is more light than a clear night has with any moon: twilight apart.
const darkWm2 = 50

// checkNights tells of a file whose sun shines at night: the zone or the place is wrong.
func (w *weather) checkNights(x *Sun, s section) {
	nights, first := 0, -1
	for h, light := range x.Hours.GHI {
		n := h/24 + 1
		from := sky.HourAngle(sky.SolarHour(n, float64(h%24), x.LongitudeDeg, x.ZoneH))
		if light > darkWm2 && !(sky.Hour(x.LatitudeDeg, n, from-15, from+30) > 0) {
			if nights++; first < 0 {
				first = h
			}
		}
	}
	const most = 20 // hours a year at the edge of the day
	if nights > most {
		w.problems.Add(problem.Pos{File: w.file, Line: w.lines[first], Column: 1},
			fmt.Sprintf("in %d hours the sun shines at night; the first is here, with %g W/m2", nights, x.Hours.GHI[first]),
			fmt.Sprintf("see that latitude, longitude and zone are those of the file; zone is %g hours east of Greenwich now", x.ZoneH))
	}
}
