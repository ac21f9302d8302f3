package scenarios

import (
	"bytes"
	"fmt"
	"math"
	"strconv"
	"strings"

	"cartwright/catalog/problem"
)

// layout is how the rows of a file of hours are laid out.
type layout struct {
	name    string
	fields  int // of a row, at the least
	stampAt int // where the time stands
	stamp   func(row []string) (hourStamp, bool)
	example string // of a time
	columns []weatherColumn
}

// hourStamp is the hour that a row is for, the first of a day being 0. Month is 0 where the row names no day.
type hourStamp struct{ month, day, hour int }

// weatherColumn is one figure of a row.
type weatherColumn struct {
	name        string
	at          int // which field
	of          func(*Weather) *[]float64
	missing     float64 // the figure that stands for a missing one, as does any beyond it on its side of 0
	least, most float64
}

// Ranges of what is read. The light is more than the sun gives with bright clouds beside it, the air wider than was
// ever measured at the ground; no source.
const (
	brightestWm2 = 2000.0
	coldestAirC  = -90.0
	hottestAirC  = 70.0
)

func light(name string, at int, missing float64, of func(*Weather) *[]float64) weatherColumn {
	return weatherColumn{name: name, at: at, of: of, missing: missing, most: brightestWm2}
}

func air(at int, missing float64) weatherColumn {
	return weatherColumn{"temp_c", at, func(w *Weather) *[]float64 { return &w.TempC }, missing, coldestAirC, hottestAirC}
}

func ghi(w *Weather) *[]float64 { return &w.GHI }
func dni(w *Weather) *[]float64 { return &w.DNI }
func dhi(w *Weather) *[]float64 { return &w.DHI }
func poa(w *Weather) *[]float64 { return &w.POA }

// tmy3 is the layout of NREL/TP-581-43156 (2008): times from 01:00 to 24:00 end their hour; some writers have 00:00
// for the last.
func tmy3() layout {
	return layout{
		name: "TMY3", fields: 32, stampAt: 1, stamp: tmy3Stamp, example: "01/31/1988,01:00",
		columns: []weatherColumn{light("GHI", 4, -9900, ghi), light("DNI", 7, -9900, dni), light("DHI", 10, -9900, dhi), air(31, -9900)},
	}
}

func tmy3Stamp(row []string) (hourStamp, bool) {
	minute, ok := clock(strings.TrimSpace(row[1]))
	if !ok || minute%60 != 0 {
		return hourStamp{}, false
	}
	if minute == 0 { // the date beside it may be the day's or the next one's
		return hourStamp{hour: 23}, true
	}
	date := strings.Split(strings.TrimSpace(row[0]), "/")
	if len(date) != 3 {
		return hourStamp{}, false
	}
	month, err := strconv.Atoi(date[0])
	day, err2 := strconv.Atoi(date[1])
	return hourStamp{month, day, minute/60 - 1}, err == nil && err2 == nil
}

// epw is the layout of the EnergyPlus weather data dictionary: hours from 1 to 24, whatever the minute beside them.
func epw() layout {
	return layout{
		name: "EPW", fields: 16, stampAt: 3, stamp: epwStamp, example: "1988,1,31,1",
		columns: []weatherColumn{light("GHI", 13, 9999, ghi), light("DNI", 14, 9999, dni), light("DHI", 15, 9999, dhi), air(6, 99.9)},
	}
}

func epwStamp(row []string) (hourStamp, bool) {
	var n [3]int
	for i := range n {
		v, err := strconv.Atoi(strings.TrimSpace(row[1+i]))
		if err != nil {
			return hourStamp{}, false
		}
		n[i] = v
	}
	return hourStamp{n[0], n[1], n[2] - 1}, true
}

// head recognises the layout by the first lines and returns what follows them.
func (w *weather) head(data []byte, separator rune) (body []byte, ok bool) {
	first, rest, _ := bytes.Cut(data, []byte("\n"))
	second, afterTwo, _ := bytes.Cut(rest, []byte("\n"))
	switch {
	case bytes.HasPrefix(first, []byte("LOCATION,")):
		w.layout = epw()
		at := bytes.Index(data, []byte("\nDATA PERIODS"))
		if at < 0 {
			w.problems.Add(problem.Pos{File: w.file}, "the EPW file has no line DATA PERIODS", "give the whole file, as it was published")
			return nil, false
		}
		end := len(data)
		if line := bytes.IndexByte(data[at+1:], '\n'); line >= 0 {
			end = at + 1 + line + 1
		}
		w.cut = bytes.Count(data[:end], []byte("\n"))
		return data[end:], w.readSite(first, 6, 7, 8)
	case bytes.HasPrefix(bytes.TrimLeft(second, `"`), []byte("Date (")):
		w.layout, w.cut = tmy3(), 2
		return afterTwo, w.readSite(first, 4, 5, 3) && w.tmy3Titles(second)
	}
	return data, w.ownHead(data, separator)
}

// readSite reads the place from the first line of a public file.
func (w *weather) readSite(line []byte, latitude, longitude, zone int) bool {
	rows := csvReader(line, ',')
	rows.LazyQuotes = true
	record, err := rows.Read()
	w.site = &site{}
	for _, x := range []struct {
		name string
		at   int
		most float64
		v    *float64
	}{{"latitude", latitude, 90, &w.site.latitude}, {"longitude", longitude, 180, &w.site.longitude}, {"time zone", zone, 14, &w.site.zoneH}} {
		ok := err == nil && x.at < len(record)
		if ok {
			*x.v, err = strconv.ParseFloat(strings.TrimSpace(record[x.at]), 64)
			ok = err == nil && math.Abs(*x.v) <= x.most
		}
		if !ok {
			w.site = nil
			w.problems.Add(problem.Pos{File: w.file, Line: 1, Column: 1},
				fmt.Sprintf("field %d of the first line is not a %s", x.at+1, x.name), "give the file as it was published")
			return false
		}
	}
	return true
}

// tmy3Titles checks that the figures stand where the layout has them.
func (w *weather) tmy3Titles(line []byte) bool {
	titles, err := csvReader(line, ',').Read()
	for _, c := range w.layout.columns {
		want := c.name
		if want == "temp_c" {
			want = "Dry-bulb"
		}
		if err != nil || c.at >= len(titles) || !strings.HasPrefix(titles[c.at], want) {
			w.problems.Add(problem.Pos{File: w.file, Line: 2, Column: 1}, fmt.Sprintf("column %d of a TMY3 file is %s, and here it is not", c.at+1, want), "give the file as it was published")
			return false
		}
	}
	return true
}

// The columns of our own: light on the level in three figures, or on the plane of the modules in one.
var (
	ownLevel = []string{"time", "ghi", "dni", "dhi", "temp_c"}
	ownPlane = []string{"time", "poa", "temp_c"}
)

// ownHead reads the names of our own columns. The rows are read on after it, comments and all.
func (w *weather) ownHead(data []byte, separator rune) bool {
	w.rows = csvReader(data, separator)
	w.rows.Comment = '#'
	record, err := w.rows.Read()
	if err != nil {
		w.problems.Add(problem.Pos{File: w.file}, "the file of hours is empty", "begin with a line "+strings.Join(ownLevel, ","))
		return false
	}
	at := map[string]int{}
	for i, name := range record {
		at[strings.TrimSpace(name)] = i
	}
	none := math.Inf(1) // an empty field alone is missing
	switch {
	case len(record) == len(ownLevel) && hasAll(at, ownLevel):
		w.layout.columns = []weatherColumn{light("ghi", at["ghi"], none, ghi), light("dni", at["dni"], none, dni), light("dhi", at["dhi"], none, dhi)}
	case len(record) == len(ownPlane) && hasAll(at, ownPlane):
		w.layout.columns = []weatherColumn{light("poa", at["poa"], none, poa)}
	default:
		w.problems.Add(w.pos(0), fmt.Sprintf("the columns are %s", strings.Join(record, ", ")),
			"write "+strings.Join(ownLevel, ",")+" or "+strings.Join(ownPlane, ",")+", or give a TMY3 or EPW file as it was published")
		return false
	}
	w.layout.columns = append(w.layout.columns, air(at["temp_c"], none))
	w.layout.fields, w.layout.stampAt, w.layout.example = len(record), at["time"], "2026-01-31 00:00"
	w.layout.stamp = func(row []string) (hourStamp, bool) { return ownStamp(row[w.layout.stampAt]) }
	return true
}

func hasAll(at map[string]int, names []string) bool {
	for _, n := range names {
		if _, ok := at[n]; !ok {
			return false
		}
	}
	return true
}

// ownStamp reads YYYY-MM-DD HH:MM, MM-DD HH:MM or HH:MM, the time at which the hour begins.
func ownStamp(text string) (s hourStamp, ok bool) {
	date, hours, dated := strings.Cut(strings.Replace(strings.TrimSpace(text), "T", " ", 1), " ")
	if !dated {
		hours = date
	}
	minute, ok := clock(strings.TrimSpace(hours))
	if !ok || minute%60 != 0 || minute == dayMin {
		return s, false
	}
	s.hour = minute / 60
	if !dated {
		return s, true
	}
	parts := strings.Split(date, "-")
	if len(parts) != 2 && len(parts) != 3 {
		return s, false
	}
	month, err := strconv.Atoi(parts[len(parts)-2])
	day, err2 := strconv.Atoi(parts[len(parts)-1])
	s.month, s.day = month, day
	return s, err == nil && err2 == nil && month >= 1
}
