//go:build !js

package view

import (
	"strconv"
	"strings"

	"cartwright/optimize/doubt"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
)

// doubtRecord is the JSON of the doubt command, format 1:
//
//	{"format":1,"command":"doubt","scenario":"…","currency":"USD","rules":"nec","status":"optimal",
//	 "draws":10000,"seed":1,"price_range":0.1,"load_range":0.15,
//	 "plans":[{"rank":1,"core":{…},"cost":0,"cheapest":0.4,"feasible":0.8,
//	           "breaks":[{"limit":"autonomy","share":0.2}],
//	           "mean_cost":0,"cost_95":0,"greatest_cost":0}],
//	 "regret":{"draws":7863,"mean":0,"at_95":0,"most":0},
//	 "first_fails":0.2,"none_serves":0,"robust":9,
//	 "changes":[…],"changes_unknown":true,"reasons":["…"],"cautions":["…"]}
//
// Status is the ranking's, as in the plan command, or "time-limit" where fewer draws were made than asked for; draws
// counts those made. Changes, changes_unknown and reasons are the ranking's, too, and
// there where no plan is possible. Shares and ranges are parts of 1. Cheapest is the share
// of draws in which a plan is the cheapest feasible one; breaks has the most frequent first. Cost_95 is what a plan costs at most in 95 of
// 100 draws. Regret is what the first plan costs more than the cheapest feasible one, in the draws in which it
// is feasible itself; it is missing where there is none. Robust is the rank of the plan that fails in the
// fewest draws, of these the one with the least greatest cost.
type doubtRecord struct {
	heading
	Status     question.Status   `json:"status"`
	PriceRange float64           `json:"price_range"`
	LoadRange  float64           `json:"load_range"`
	Draws      int               `json:"draws"`
	Seed       uint64            `json:"seed"`
	Plans      []planDoubtRecord `json:"plans"`
	Regret     *regretRecord     `json:"regret,omitempty"`
	FirstFails float64           `json:"first_fails"`
	NoneServes float64           `json:"none_serves"`
	Robust     int               `json:"robust"`
	Changes    []changeRecord    `json:"changes,omitempty"`
	Unknown    bool              `json:"changes_unknown,omitempty"`
	Reasons    []string          `json:"reasons,omitempty"`
	Cautions   []string          `json:"cautions"`
}

// planDoubtRecord is how one plan fares.
type planDoubtRecord struct {
	Rank     int           `json:"rank"`
	Core     coreRecord    `json:"core"`
	Cost     plan.Money    `json:"cost"`
	Cheapest float64       `json:"cheapest"`
	Feasible float64       `json:"feasible"`
	Breaks   []breakRecord `json:"breaks"`
	MeanCost float64       `json:"mean_cost"`
	Cost95   plan.Money    `json:"cost_95"`
	Greatest plan.Money    `json:"greatest_cost"`
}

// breakRecord is a limit and the share of draws in which a plan does not meet it.
type breakRecord struct {
	Limit string  `json:"limit"`
	Share float64 `json:"share"`
}

// regretRecord is what the first plan costs more than the cheapest that holds.
type regretRecord struct {
	Draws int        `json:"draws"`
	Mean  float64    `json:"mean"`
	At95  plan.Money `json:"at_95"`
	Most  plan.Money `json:"most"`
}

// record holds everything, unrounded.
func (d Doubt) record() any {
	all, ranking := d.Doubted, d.Doubted.Ranking
	r := doubtRecord{
		heading: headingOf("doubt", d.Scenario), Status: d.status(),
		PriceRange: d.Options.Prices, LoadRange: d.Options.Loads, Draws: all.Draws, Seed: all.Seed,
		Plans: each(all.Plans, planDoubtOf), FirstFails: all.FirstFails, NoneServes: all.NoneServes, Robust: all.Robust,
		Changes: each(ranking.Changes, changeOf), Unknown: ranking.ChangesUnknown, Reasons: ranking.Reasons,
		Cautions: listed(d.Cautions),
	}
	if all.Regret != nil {
		regret := regretRecord(*all.Regret)
		r.Regret = &regret
	}
	return r
}

// status says how the ranking ended, and that draws are missing.
func (d Doubt) status() question.Status {
	if d.Doubted.Stopped {
		return question.TimeLimit
	}
	return d.Doubted.Ranking.Solver.Status
}

func planDoubtOf(p doubt.PlanDoubt) planDoubtRecord {
	return planDoubtRecord{
		Rank: p.Rank, Core: coreOf(p.Core), Cost: p.Cost, Cheapest: p.Cheapest, Feasible: p.Feasible,
		Breaks:   each(p.Breaks, func(b doubt.Break) breakRecord { return breakRecord(b) }),
		MeanCost: p.MeanCost, Cost95: p.Cost95, Greatest: p.Greatest,
	}
}

// records holds a plan a row.
func (d Doubt) records() [][]string {
	rows := [][]string{{"rank", "batteries", "inverter", "cost", "mean_cost", "cost_95", "greatest_cost", "currency", "cheapest", "feasible",
		"breaks", "robust"}}
	for _, p := range d.Doubted.Plans {
		var breaks []string
		for _, b := range p.Breaks {
			breaks = append(breaks, b.Limit+" "+exact(b.Share))
		}
		rows = append(rows, []string{strconv.Itoa(p.Rank), batteries(p.Core), inverter(p.Core),
			money(p.Cost), exact(p.MeanCost), money(p.Cost95), money(p.Greatest), d.Scenario.Currency, exact(p.Cheapest), exact(p.Feasible),
			strings.Join(breaks, " + "), strconv.FormatBool(p.Rank == d.Doubted.Robust)})
	}
	return rows
}
