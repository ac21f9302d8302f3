package page

import (
	"errors"
	"fmt"
	"io/fs"
	"math"
	"net/http"
	"regexp"
	"strconv"
	"strings"

	"cartwright/catalog"
	"cartwright/cmd/cartwright/picture/told"
)

// forms is what the fields of the page are made of.
type forms struct {
	Limits []field
	Money  []field
	Loads  grid
	Owned  grid
	Parts  []catalog.Kind // that there are tables of
	IDs    []string       // of all parts, to choose from
	// Measured names the file of measured loads, which are not changed here.
	Measured string
	Editable bool // the catalogue can be changed
}

// field is one value of the scenario.
type field struct {
	Path, Label, Value, Hint string
	Slider                   *slider
}

// slider moves a value that is a number with a unit.
type slider struct {
	Min, Max, Step, Value, Unit string
}

// grid is a list of the scenario as a table.
type grid struct {
	Path    string
	Columns []string
	Rows    []gridRow
}

type gridRow struct {
	Path  string
	Name  string
	Cells []field
}

// limitFields are the limits that have a slider, with an example of what may stand there.
var limitFields = []field{
	{Path: "autonomy", Label: "autonomy", Hint: "18 h"},
	{Path: "recharge.within", Label: "recharge within", Hint: "10 h"},
	{Path: "limits.mass", Label: "mass", Hint: "380 kg"},
	{Path: "limits.budget", Label: "budget", Hint: "4500"},
	{Path: "limits.tilt", Label: "tilt", Hint: "10 deg"},
	{Path: "limits.reserve", Label: "reserve", Hint: "10 %"},
	{Path: "limits.push", Label: "push", Hint: "200 N"},
	{Path: "limits.slope", Label: "slope", Hint: "2 %"},
	{Path: "limits.served", Label: "served by the sun", Hint: "90 %"},
}

var moneyFields = []field{
	{Path: "sold", Label: "money in hand from what was sold", Hint: "0"},
	{Path: "savings.now", Label: "savings now", Hint: "500"},
	{Path: "savings.per_month", Label: "saved every month", Hint: "200"},
	{Path: "money.tax", Label: "tax", Hint: "7 %"},
}

// pathOfLimit returns the path of a limit by its name in an answer; the name where it has no field.
func pathOfLimit(name string) string {
	for _, f := range limitFields {
		if f.Label == name || f.Path == "limits."+name {
			return f.Path
		}
	}
	return name
}

// The columns of the tables, by their keys in the file.
var (
	loadColumns  = []string{"name", "watts", "count", "power_factor", "leg", "circuit", "from", "to", "duty", "start", "dc"}
	ownedColumns = []string{"part", "count", "ends", "keep", "sell"}
)

// forms gathers the fields from the draft. The lock is held.
func (s *session) forms(values map[string]string) *forms {
	f := &forms{
		Loads: gridOf("loads", "name", loadColumns, values), Owned: gridOf("have", "part", ownedColumns, values),
		Measured: values["measured"], Editable: s.opened.folder != "",
	}
	for _, l := range limitFields {
		l.Value = values[l.Path]
		l.Slider = sliderOf(l.Value)
		f.Limits = append(f.Limits, l)
	}
	for _, m := range moneyFields {
		m.Value = values[m.Path]
		f.Money = append(f.Money, m)
	}
	if s.opened.catalog != nil {
		f.IDs = s.opened.catalog.IDs()
	}
	for _, k := range partsFiles {
		f.Parts = append(f.Parts, catalog.Kind(k))
	}
	return f
}

// gridOf makes a table of a list.
func gridOf(path, name string, columns []string, values map[string]string) grid {
	g := grid{Path: path, Columns: columns}
	n, err := strconv.Atoi(values[path+"[]"])
	if err != nil {
		n = 0
	}
	for i := range n {
		row := gridRow{Path: fmt.Sprintf("%s[%d]", path, i), Name: values[fmt.Sprintf("%s[%d].%s", path, i, name)]}
		for _, c := range columns {
			at := row.Path + "." + c
			row.Cells = append(row.Cells, field{Path: at, Label: c + " of " + row.Name, Value: values[at]})
		}
		g.Rows = append(g.Rows, row)
	}
	return g
}

var numberAndUnit = regexp.MustCompile(`^\s*(\d+(?:\.\d+)?)\s*([%°/a-zA-Z]*)\s*$`)

// sliderOf returns the slider of a value from half of it to half as much again, in steps of two digits; nil
// where the value is no number with a unit, or nothing.
func sliderOf(value string) *slider {
	m := numberAndUnit.FindStringSubmatch(value)
	if m == nil {
		return nil
	}
	v, err := strconv.ParseFloat(m[1], 64)
	if err != nil || v <= 0 || math.IsInf(v, 0) {
		return nil
	}
	step := math.Pow(10, math.Floor(math.Log10(v))-1)
	if step < 1 && v == math.Trunc(v) && v >= 5 {
		step = 1
	}
	decimals := int(math.Max(0, -math.Floor(math.Log10(step)+1e-9)))
	low, high := math.Max(step, math.Floor(v/2/step)*step), math.Ceil(1.5*v/step)*step
	text := func(x float64) string { return told.Fixed(x, decimals) }
	return &slider{Min: text(low), Max: text(high), Step: text(step), Value: m[1], Unit: m[2]}
}

// partsFiles are the files of a catalogue that can be changed.
var partsFiles = []string{"batteries", "inverters", "cables", "devices", "busbars", "casters", "solar", "sundries", "conduits", "sections", "offers"}

func isPartsFile(name string) bool {
	for _, f := range partsFiles {
		if name == f+".csv" {
			return true
		}
	}
	return false
}

// mostRows is how many parts are shown at once; the others are found by what they are called.
const mostRows = 100

// partRow is a row of the catalogue, by its place in the file.
type partRow struct {
	Place int
	Cells []string
}

// partsTable serves one file of the catalogue as a table: the rows with the words looked for.
func (s *session) partsTable(w http.ResponseWriter, r *http.Request) {
	name := r.URL.Query().Get("kind") + ".csv"
	if !isPartsFile(name) {
		http.NotFound(w, r)
		return
	}
	s.mu.Lock()
	text, err := s.partsText(name)
	s.mu.Unlock()
	data := struct {
		File, Error string
		Columns     []string
		Rows        []partRow
		More        int
	}{File: name}
	var all sheet
	if err == nil {
		all, err = readSheet(text)
	}
	switch {
	case errors.Is(err, fs.ErrNotExist):
		data.Error = "There is no " + name + "."
	case err != nil:
		data.Error = err.Error()
	}
	data.Columns = all.Columns
	find := strings.ToLower(strings.TrimSpace(r.URL.Query().Get("find")))
	for place, cells := range all.Rows {
		switch {
		case find != "" && !strings.Contains(strings.ToLower(strings.Join(cells, "\x00")), find):
		case len(data.Rows) == mostRows:
			data.More++
		default:
			data.Rows = append(data.Rows, partRow{place, cells})
		}
	}
	html, err := render("parts.html", data)
	if err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	send(w, []byte(html))
}
