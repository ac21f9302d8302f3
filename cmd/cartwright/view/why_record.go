package view

import (
	"strconv"

	"cartwright/optimize/plan"
)

// whyRecord is the JSON of the why command, format 1:
//
//	{"format":1,"command":"why","scenario":"…","currency":"USD","rules":"nec",
//	 "complete":true,"best":{…},"binding":["mass"],
//	 "effects":[{"limit":"mass","from":172,"to":182,"unit":"kg","looser":true,"saves":0,"plan":{…}}],
//	 "conflict":[{"name":"mass","limit":172,"unit":"kg"}],
//	 "ways_out":[{"change":[{"name":"mass","from":100,"to":131.2,"unit":"kg"}],"plan":{…}}],
//	 "reasons":["…"],"cautions":["…"]}
//
// Best is a whole plan as the plan command has it; the other plans are brief: cost, usable_kwh, autonomy_h,
// mass_kg, cost_per_usable_kwh, core. An effect without a plan has none; saves is what the best plan then
// costs less, negative for more. Complete is false where it was stopped before every limit was looked into.
// Where no plan is possible there is no best, and conflict, ways_out (the
// cheapest plan first) and reasons (what the catalogue has nothing for) say why; otherwise these are empty.
type whyRecord struct {
	heading
	Complete bool             `json:"complete"`
	Best     *planRecord      `json:"best,omitempty"`
	Binding  []string         `json:"binding"`
	Effects  []effectRecord   `json:"effects"`
	Conflict []conflictRecord `json:"conflict"`
	WaysOut  []wayRecord      `json:"ways_out"`
	Reasons  []string         `json:"reasons"`
	Cautions []string         `json:"cautions"`
}

// effectRecord is a change of one limit in JSON.
type effectRecord struct {
	Limit  string       `json:"limit"`
	From   float64      `json:"from"`
	To     float64      `json:"to"`
	Unit   string       `json:"unit"`
	Looser bool         `json:"looser"`
	Saves  float64      `json:"saves"`
	Plan   *briefRecord `json:"plan,omitempty"`
}

// conflictRecord is a limit that contradicts others, in JSON.
type conflictRecord struct {
	Name  string  `json:"name"`
	Limit float64 `json:"limit"`
	Unit  string  `json:"unit"`
}

// wayRecord is a way out in JSON.
type wayRecord struct {
	Change []limitChangeRecord `json:"change"`
	Plan   *briefRecord        `json:"plan"`
}

// record holds everything, unrounded.
func (w Why) record() any {
	e := w.Explanation
	r := whyRecord{
		heading: headingOf("why", w.Scenario), Complete: e.Complete, Best: whole(e.Best), Binding: []string{}, Effects: []effectRecord{},
		Conflict: []conflictRecord{}, WaysOut: []wayRecord{}, Reasons: listed(e.Reasons), Cautions: listed(w.Cautions),
	}
	if e.Best != nil {
		for _, l := range w.bound() {
			r.Binding = append(r.Binding, l.Name)
		}
	}
	for _, f := range e.Effects {
		r.Effects = append(r.Effects, effectRecord{f.Limit, f.From, f.To, f.Unit, f.Looser, f.Saves, brief(f.Plan)})
	}
	for _, c := range e.Conflict {
		r.Conflict = append(r.Conflict, conflictRecord{c.Name, c.From, c.Unit})
	}
	for _, out := range e.WaysOut {
		r.WaysOut = append(r.WaysOut, wayRecord{limitChanges(out.Change.Limits), brief(out.Plan)})
	}
	return r
}

// records holds one change a row: an effect on the best plan, or a way out, whose limits share a number.
func (w Why) records() [][]string {
	rows := [][]string{{"number", "limit", "from", "to", "unit", "cost", "difference", "currency", "batteries", "inverter"}}
	add := func(i int, name string, from, to float64, unit string, then *plan.Plan, difference string) {
		row := []string{strconv.Itoa(i + 1), name, exact(from), exact(to), unit}
		if then == nil {
			row = append(row, "", "", "", "", "")
		} else {
			row = append(row, money(then.Cost), difference, w.Scenario.Currency,
				batteries(then.Core), inverter(then.Core))
		}
		rows = append(rows, row)
	}
	for i, f := range w.Explanation.Effects {
		add(i, f.Limit, f.From, f.To, f.Unit, f.Plan, fixed(-f.Saves, 2))
	}
	for i, out := range w.Explanation.WaysOut {
		for _, c := range out.Change.Limits {
			add(i, c.Name, c.From, c.To, c.Unit, out.Plan, "")
		}
	}
	return rows
}
