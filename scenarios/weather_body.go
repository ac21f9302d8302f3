package scenarios

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"cartwright/catalog/problem"
	"cartwright/scenarios/sky"
)

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
