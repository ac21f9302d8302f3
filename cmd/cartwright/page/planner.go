package page

import (
	"context"

	"cartwright/catalog"
	"cartwright/cmd/cartwright/report"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// Planner answers what the page asks; it is the program behind it.
type Planner interface {
	// Check says where a scenario does not fit its catalogue; the error is a *problem.Error.
	Check(s *scenarios.Scenario, c *catalog.Catalog) error
	// Rank ranks the scenario's number of plans. It tells the first as soon as it is proved, and on the way how many
	// cells were looked into and how many plans found.
	Rank(ctx context.Context, s *scenarios.Scenario, c *catalog.Catalog, first func(*Answer), tell func(cells, found int)) (*Answer, error)
	// Prices says what a step of each limit costs or saves.
	Prices(ctx context.Context, s *scenarios.Scenario, c *catalog.Catalog) ([]Price, error)
	// Compare puts purchases that somebody thinks of side by side, after what is owned with nothing bought.
	Compare(ctx context.Context, s *scenarios.Scenario, c *catalog.Catalog, buy []string) (*Compared, error)
	// Bought returns what is owned once a plan is bought.
	Bought(s *scenarios.Scenario, c *catalog.Catalog, p *plan.Plan) (scenarios.Owned, error)
	// BoughtPart and Sold return what is owned once some of a part is bought, or sold, for a sum in all.
	BoughtPart(s *scenarios.Scenario, c *catalog.Catalog, part, count, sum string) (scenarios.Owned, error)
	Sold(s *scenarios.Scenario, c *catalog.Catalog, part, count, sum string) (scenarios.Owned, error)
	// JSON writes an answer as other programs read it.
	JSON(s *scenarios.Scenario, c *catalog.Catalog, a *Answer) ([]byte, error)
	// Report gathers what is written about a plan, by its place in the answer.
	Report(s *scenarios.Scenario, c *catalog.Catalog, a *Answer, show int) *report.Report
}

// Answer is a ranking, or why there is none.
type Answer struct {
	Result   *question.Result // what the rest was made from
	Plans    []plan.Plan
	Proof    []string
	Cautions []string
	None     []string // where there is no plan: what has to give
}

// Price is what one step of a limit does to the cost of the best plan.
type Price struct {
	Limit string // as in plan's names of limits
	Step  string // "to 900 lb"
	Cost  string // "saves 120.00 USD", "costs 80.00 USD", "no plan is possible"
}

// Compared is purchases side by side: one column each, and rows of a name and a figure for each.
type Compared struct {
	Choices []string
	Rows    [][]string
	Note    string
}
