package view

import (
	"fmt"
	"math"
	"strconv"

	"cartwright/optimize/audit"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// Audit shows how what is owned stands against the limits today.
type Audit struct {
	Scenario *scenarios.Scenario
	Report   audit.Report
	Cautions []string
}

// sheet gives the verdict, then what the parts were taken for, then every check.
func (a Audit) sheet() sheet {
	r, u := a.Report, unitsOf(a.Scenario)
	s := sheet{a.verdict()}
	if len(r.Missing) > 0 {
		s = append(s, section{title: "Missing", bullets: r.Missing})
	}
	if len(r.Parts) > 0 {
		t := &table{columns: []column{text("part"), text("unit"), number("owned"), number("used"), text("taken for")}}
		for _, p := range r.Parts {
			t.row(p.Part, u.unit(p.Unit), short(u.figure(p.Have, p.Unit), 2), short(u.figure(p.Used, p.Unit), 2), p.As)
		}
		s = append(s, section{title: "What is owned", table: t})
	}
	if len(r.Runs) > 0 {
		var runs []plan.Run
		for _, run := range r.Runs {
			runs = append(runs, run.Run)
		}
		s = append(s, section{title: "How it can be wired", table: u.wiringTable(runs), bullets: a.badRuns()})
	}
	if len(r.Checks) > 0 {
		s = append(s, a.checks())
	}
	if failures := a.failures(); len(failures) > 0 {
		s = append(s, section{title: "What fails", bullets: failures})
	}
	if len(r.Notes) > 0 {
		s = append(s, section{title: "Notes", bullets: r.Notes})
	}
	return append(s, cautions(a.Cautions)...)
}

// failed returns how many checks failed.
func (a Audit) failed() int {
	n := 0
	for _, c := range a.Report.Checks {
		if !c.Passed {
			n++
		}
	}
	return n
}

// verdict says whether everything is there and passes.
func (a Audit) verdict() section {
	title := a.Scenario.Name + ": what is owned today "
	switch failed, missing := a.failed(), len(a.Report.Missing); {
	case a.Report.Passed:
		title += "passes all " + count(len(a.Report.Checks), "check", "checks")
	case missing > 0:
		title += fmt.Sprintf("fails %d of %s and lacks %s", failed, count(len(a.Report.Checks), "check", "checks"),
			count(missing, "thing", "things"))
	default:
		title += fmt.Sprintf("fails %d of %s", failed, count(len(a.Report.Checks), "check", "checks"))
	}
	return section{title: title}
}

// badRuns says what each cable path that fails fails at.
func (a Audit) badRuns() []string {
	var bad []string
	for _, run := range a.Report.Runs {
		name := run.Run.Run
		if run.Name != "" {
			name += " " + run.Name
		}
		for _, c := range run.Failed {
			bad = append(bad, fmt.Sprintf("%s fails: %s", name, unitsOf(a.Scenario).failure(c)))
		}
	}
	return bad
}

// failure says what a check found and what it wanted: "core: no inverter" of faults that are counted, "power
// has 3000 W, needs 4680 W", "mass has 340 kg, at most 300 kg is allowed".
func (u units) failure(c plan.Check) string {
	if isFaults(c) && c.Detail != "" {
		return c.Name + ": " + c.Detail
	}
	has, limit := withUnit(u.checked(c, c.Value), u.unit(c.Unit)), withUnit(u.checked(c, c.Limit), u.unit(c.Unit))
	s := fmt.Sprintf("%s has %s, at most %s is allowed", c.Name, has, limit)
	if c.Value < c.Limit {
		s = fmt.Sprintf("%s has %s, needs %s", c.Name, has, limit)
	}
	if c.Detail != "" {
		s += " (" + c.Detail + ")"
	}
	return s
}

// isFaults reports whether a check counts faults, of which there may be none.
func isFaults(c plan.Check) bool {
	return c.Unit == "" && c.Limit == 0 && c.Value >= 0 && c.Value == math.Trunc(c.Value)
}

// checked returns a figure of a check as it is told: counts have no decimals.
func (u units) checked(c plan.Check, v float64) string {
	if c.Unit == "" && c.Value == math.Trunc(c.Value) && c.Limit == math.Trunc(c.Limit) {
		return fixed(v, 0)
	}
	return u.fixed(v, c.Unit)
}

// failures says in words what fails and where the limit comes from.
func (a Audit) failures() []string {
	var failures []string
	for _, c := range a.Report.Checks {
		if c.Passed {
			continue
		}
		words := unitsOf(a.Scenario).failure(c)
		switch {
		case c.Source == "":
		case isFaults(c):
			words += " (" + c.Source + ")"
		default:
			words += "; " + c.Source
		}
		failures = append(failures, words)
	}
	return failures
}

// checks shows every check with by how much it passed or failed.
func (a Audit) checks() section {
	u := unitsOf(a.Scenario)
	t := &table{columns: []column{
		text("check"), text("result"), number("has"), number("limit"), number("margin"), text("unit"),
	}}
	for _, c := range a.Report.Checks {
		result := "pass"
		if !c.Passed {
			result = "FAIL"
		}
		if isFaults(c) {
			found := "no fault"
			if c.Value > 0 {
				found = count(int(c.Value), "fault", "faults")
			}
			t.row(c.Name, result, found, "none", "", "")
			continue
		}
		t.row(c.Name, result, u.checked(c, c.Value), u.checked(c, c.Limit), u.checked(c, margin(c)), u.unit(c.Unit))
	}
	t.notes = []string{"Margin: by how much a check passes or fails; of several things checked alike the worst is shown."}
	return section{title: "Checks", table: t}
}

// margin returns by how much a check passed or failed.
func margin(c plan.Check) float64 { return math.Abs(c.Value - c.Limit) }

// auditRecord is the JSON of the audit command, format 1.
type auditRecord struct {
	heading
	Passed   bool              `json:"passed"`
	Parts    []ownedPartRecord `json:"parts"`
	Core     coreRecord        `json:"core"`
	Runs     []ownedRunRecord  `json:"runs"`
	Shelves  []shelfRecord     `json:"shelves"`
	Missing  []string          `json:"missing"`
	Checks   []checkRecord     `json:"checks"`
	Notes    []string          `json:"notes,omitempty"`
	Cautions []string          `json:"cautions"`
}

// ownedPartRecord is an owned part and what it is taken for.
type ownedPartRecord struct {
	Part string  `json:"part"`
	Kind string  `json:"kind"`
	Have float64 `json:"have"`
	Used float64 `json:"used"`
	Unit string  `json:"unit"`
	As   string  `json:"as"`
}

// ownedRunRecord is a number of equal cable paths of owned parts, and the checks they fail.
type ownedRunRecord struct {
	runRecord
	Passed bool          `json:"passed"`
	Failed []checkRecord `json:"failed,omitempty"`
}

// record holds everything, unrounded.
func (a Audit) record() any {
	r := a.Report
	return auditRecord{
		heading: headingOf("audit", a.Scenario), Passed: r.Passed,
		Parts: each(r.Parts, func(p audit.Owned) ownedPartRecord { return ownedPartRecord(p) }), Core: coreOf(r.Core),
		Runs: each(r.Runs, func(run audit.OwnedRun) ownedRunRecord {
			return ownedRunRecord{runRecord(run.Run), run.Passed, each(run.Failed, checkOf)}
		}),
		Shelves: each(r.Shelves, shelfOf), Missing: listed(r.Missing), Checks: each(r.Checks, checkOf), Notes: r.Notes,
		Cautions: listed(a.Cautions),
	}
}

// records holds one check a row.
func (a Audit) records() [][]string {
	rows := [][]string{{"check", "passed", "value", "limit", "unit", "margin", "source", "detail"}}
	for _, c := range a.Report.Checks {
		rows = append(rows, []string{c.Name, strconv.FormatBool(c.Passed), exact(c.Value), exact(c.Limit), c.Unit,
			exact(margin(c)), c.Source, c.Detail})
	}
	return rows
}
