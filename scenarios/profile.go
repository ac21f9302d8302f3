package scenarios

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
	"time"

	"cartwright/catalog/plaintext"
	"cartwright/catalog/problem"
)

// Columns of a load profile: a time and either of the two ways to give watts.
var (
	profileWatts = []string{"time", "watts"}
	profileLegs  = []string{"time", "watts_a", "watts_b"}
)

// maxProfileProblems is how many mistakes of one profile are reported: a file with the wrong decimal mark has one in
// every row, and nobody reads a hundred thousand of them.
const maxProfileProblems = 20

// profile collects the rows of a load profile.
type profile struct {
	file     string
	problems *problem.List
	reader   *csv.Reader
	columns  []string

	rows     []profileRow
	measured Measured
}

// profileRow is the time of one row.
type profileRow struct {
	minute int // of the day, or since 1970 where dated
	dated  bool
	text   string
	pos    problem.Pos
}

// readProfile reads a measured load profile: CSV with the columns time and watts, or time, watts_a and
// watts_b, where '#' lines are comments. Times are "HH:MM" or "YYYY-MM-DD HH:MM", in a constant step of 1
// to 60 minutes that divides the day, and cover whole days; watts are the mean over the step that begins
// at the time. Mistakes are added to the reader's list; then it returns nil.
func readProfile(name string, r *reader, named problem.Pos, open opener) *Measured {
	before := r.problems.Len()
	shown := filepath.ToSlash(name)
	if !filepath.IsAbs(name) {
		shown = filepath.ToSlash(filepath.Join(filepath.Dir(r.file), name))
	}
	data, ok := readFile(func() (fs.File, error) { return open(name) }, shown, named, maxProfileBytes, r.problems)
	if !ok || !checkText(data, shown, r.problems) {
		return nil
	}
	data, separator := plaintext.Separator(data)
	p := &profile{file: shown, problems: r.problems, reader: csv.NewReader(bytes.NewReader(data))}
	p.reader.Comma, p.reader.Comment = separator, '#'
	p.reader.FieldsPerRecord = -1
	p.reader.ReuseRecord = true
	p.reader.TrimLeadingSpace = true
	if p.header() {
		p.body(before)
	}
	if r.problems.Len() == before {
		p.steps()
	}
	if r.problems.Len() > before {
		return nil
	}
	return &p.measured
}

// header reads the column names.
func (p *profile) header() bool {
	record, err := p.reader.Read()
	if err != nil {
		if errors.Is(err, io.EOF) {
			p.problems.Add(problem.Pos{File: p.file}, "the load profile is empty", "begin with a line time,watts")
		} else {
			p.malformed(err)
		}
		return false
	}
	names := make([]string, len(record))
	known := append([]string{}, profileLegs...)
	known = append(known, "watts")
	ok := true
	for i, name := range record {
		names[i] = strings.TrimSpace(name)
		right := "the columns are time and watts, or time, watts_a and watts_b, with commas between"
		switch {
		case contains(names[:i], names[i]):
			p.wrong(i, fmt.Sprintf("column %q stands twice", names[i]), "keep one")
			ok = false
		case !contains(known, names[i]):
			if near := problem.Nearest(names[i], known); near != "" && !strings.ContainsAny(names[i], ";\t") {
				right = fmt.Sprintf("did you mean %q?", near)
			}
			p.wrong(i, fmt.Sprintf("unknown column %q", names[i]), right)
			ok = false
		}
	}
	if !ok {
		return false
	}
	p.columns = names
	p.measured.ByLeg = contains(names, "watts_a") || contains(names, "watts_b")
	want := profileWatts
	if p.measured.ByLeg {
		want = profileLegs
	}
	if len(names) == len(want) && containsAll(names, want) {
		return true
	}
	p.wrong(0, "the columns are "+strings.Join(names, ", "), "write time and watts, or time, watts_a and watts_b")
	return false
}

func containsAll(names, want []string) bool {
	for _, w := range want {
		if !contains(names, w) {
			return false
		}
	}
	return true
}

// body reads the rows.
func (p *profile) body(before int) {
	for {
		record, err := p.reader.Read()
		if errors.Is(err, io.EOF) {
			return
		}
		if err != nil {
			p.malformed(err)
			return
		}
		if p.problems.Len()-before >= maxProfileProblems {
			p.wrong(0, fmt.Sprintf("after %d mistakes reading of the load profile stopped", maxProfileProblems), "correct those above first")
			return
		}
		if len(record) != len(p.columns) {
			p.wrong(0, fmt.Sprintf("the row has %d fields", len(record)),
				fmt.Sprintf("write %d: %s", len(p.columns), strings.Join(p.columns, ", ")))
			continue
		}
		for i, column := range p.columns {
			field := strings.TrimSpace(record[i])
			switch column {
			case "time":
				p.time(i, field)
			case "watts", "watts_a":
				p.measured.LegA = append(p.measured.LegA, p.watts(i, column, field))
			case "watts_b":
				p.measured.LegB = append(p.measured.LegB, p.watts(i, column, field))
			}
		}
	}
}

// watts reads an amount of watts, never negative.
func (p *profile) watts(i int, column, field string) float64 {
	v, err := strconv.ParseFloat(field, 64)
	switch {
	case !plainNumber.MatchString(field) || err != nil:
		p.wrong(i, fmt.Sprintf("%s: %q is not a number", column, field), "write watts without a unit, for example 115")
	case v < 0:
		p.wrong(i, fmt.Sprintf("%s: %s is negative", column, field), "write what the loads draw, at least 0")
	case v > maxPowerW:
		p.wrong(i, fmt.Sprintf("%s: %s is out of range", column, field), "write at most "+amperes(maxPowerW))
	}
	return v
}

// time reads a time of day, with or without its date.
func (p *profile) time(i int, field string) {
	date, hours, dated := strings.Cut(field, " ")
	if !dated {
		hours = field
	}
	row := profileRow{dated: dated, text: field, pos: p.pos(i)}
	minute, ok := clock(hours)
	if ok && dated {
		day, err := time.Parse(time.DateOnly, date)
		row.minute = int(day.Unix() / 60)
		ok = err == nil
	}
	if !ok || minute == dayMin {
		p.wrong(i, fmt.Sprintf("time: %q is not a time", field), "write 06:30, or 2026-08-14 06:30")
	}
	row.minute += minute
	p.rows = append(p.rows, row)
}

// pos returns the place of a field of the row read last.
func (p *profile) pos(field int) problem.Pos {
	line, column := p.reader.FieldPos(field)
	return problem.Pos{File: p.file, Line: line, Column: column}
}

func (p *profile) wrong(field int, wrong, right string) {
	p.problems.Add(p.pos(field), wrong, right)
}

// malformed reports text that is no CSV.
func (p *profile) malformed(err error) {
	pos := problem.Pos{File: p.file}
	var pe *csv.ParseError
	if errors.As(err, &pe) {
		pos.Line, pos.Column = pe.Line, pe.Column
		err = pe.Err
	}
	p.problems.Add(pos, "this cannot be read as CSV: "+err.Error(), "write fields with commas between, without quotes")
}
