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

// readRows reads the hours. Before is how many mistakes there were.
func (w *weather) readRows(body []byte, before int) {
	if w.rows == nil {
		w.rows = csvReader(body, ',')
		w.rows.LazyQuotes = true
	}
	w.figures = make([][]float64, len(w.layout.columns))
	for {
		row, err := w.rows.Read()
		switch {
		case errors.Is(err, io.EOF):
			if n := len(w.lines); n != SunHours && w.problems.Len() == before {
				w.problems.Add(problem.Pos{File: w.file}, fmt.Sprintf("the file has %d hours", n), fmt.Sprintf("give a whole year, %d", SunHours))
			}
			return
		case err != nil:
			w.malformed(err)
			return
		case w.problems.Len()-before >= maxWeatherProblems:
			w.problems.Add(w.pos(0), fmt.Sprintf("after %d mistakes reading of the file stopped", maxWeatherProblems), "correct those above first")
			return
		case len(row) < w.layout.fields:
			w.problems.Add(w.pos(0), fmt.Sprintf("the row has %d fields", len(row)), fmt.Sprintf("write %d", w.layout.fields))
			return // hours can no longer be told apart
		}
		if !w.readRow(row) {
			return
		}
	}
}

// readRow reads one hour. It reports whether the row is of the hour that is due.
func (w *weather) readRow(row []string) bool {
	s, ok := w.layout.stamp(row)
	if !ok || s.hour < 0 || s.hour > 23 {
		w.problems.Add(w.pos(w.layout.stampAt), fmt.Sprintf("%q is not the time of an hour", strings.TrimSpace(row[w.layout.stampAt])), "write for example "+w.layout.example)
		return false
	}
	if len(w.lines) == SunHours {
		w.problems.Add(w.pos(0), "there are rows after the end of the year", fmt.Sprintf("give a whole year, %d hours", SunHours))
		return false
	}
	due := dueStamp(len(w.lines))
	if s.month == 2 && s.day == 29 || s.month == 0 && w.leap && due.month == 3 && due.day == 1 && due.hour == 0 && s.hour == 23 {
		w.leap = true
		return true // the last hour of 29 February may be stamped 00:00
	}
	if s.hour != due.hour || s.month != 0 && (s.month != due.month || s.day != due.day) {
		is := fmt.Sprintf("%02d:00", s.hour)
		if s.month != 0 {
			is = fmt.Sprintf("%02d-%02d ", s.month, s.day) + is
		}
		w.problems.Add(w.pos(w.layout.stampAt), fmt.Sprintf("the hour from %s is where the hour from %02d-%02d %02d:00 should be", is, due.month, due.day, due.hour),
			"give each hour of a year one row, the first from 01-01 00:00")
		return false
	}
	w.lines = append(w.lines, w.pos(0).Line)
	for i, c := range w.layout.columns {
		w.figures[i] = append(w.figures[i], w.figure(c, strings.TrimSpace(row[c.at])))
	}
	return true
}

// dueStamp returns the hour that comes after some hours of a year, less than all.
func dueStamp(hours int) hourStamp {
	day := hours / 24
	for m := range months {
		if day < sky.DaysOfMonth(m) {
			return hourStamp{m + 1, day + 1, hours % 24}
		}
		day -= sky.DaysOfMonth(m)
	}
	return hourStamp{}
}

// figure reads one figure; NaN where it is missing.
func (w *weather) figure(c weatherColumn, text string) float64 {
	if text == "" {
		return math.NaN()
	}
	v, err := strconv.ParseFloat(text, 64)
	switch {
	case err != nil || math.IsNaN(v) || math.IsInf(v, 0):
		w.problems.Add(w.pos(c.at), fmt.Sprintf("%s: %q is not a number", c.name, text), "write a number, for example 412")
		return math.NaN()
	case c.missing > 0 && v >= c.missing, c.missing < 0 && v <= c.missing:
		return math.NaN()
	case !(v >= c.least && v <= c.most):
		w.problems.Add(w.pos(c.at), fmt.Sprintf("%s: %s is out of range", c.name, text), fmt.Sprintf("write from %g to %g", c.least, c.most))
	}
	return v + 0 // some files have -0.00
}

// malformed reports text that is no CSV.
func (w *weather) malformed(err error) {
	pos := problem.Pos{File: w.file}
	var pe *csv.ParseError
	if errors.As(err, &pe) {
		pos.Line, pos.Column = w.cut+pe.Line, pe.Column
		err = pe.Err
	}
	w.problems.Add(pos, "this cannot be read as CSV: "+err.Error(), "write fields with commas between, without quotes")
}
