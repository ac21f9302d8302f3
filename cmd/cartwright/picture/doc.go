// Package picture draws what a plan is: the cart to scale, its wiring as a one-line diagram, the day and the
// year of its store of energy, and what it costs beside other plans. It reads a plan and the scenario
// and catalogue it was made from, and decides nothing.
package picture

import (
	"cartwright/catalog"
	"cartwright/cmd/cartwright/picture/told"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// Subject is what is drawn.
type Subject struct {
	Scenario *scenarios.Scenario
	Catalog  *catalog.Catalog
	Plan     *plan.Plan
	Units    told.Units
}

// The sizes of drawings: the width of a page's column, and of texts in it.
const (
	pageWidth = 720.0
	margin    = 16.0
	titleSize = 16.0
	textSize  = 12.5
	smallSize = 11.5
)

func (q *Subject) battery(id string) *catalog.Battery {
	for i := range q.Catalog.Batteries {
		if q.Catalog.Batteries[i].ID == id {
			return &q.Catalog.Batteries[i]
		}
	}
	return nil
}

func (q *Subject) cable(id string) *catalog.Cable {
	for i := range q.Catalog.Cables {
		if q.Catalog.Cables[i].ID == id {
			return &q.Catalog.Cables[i]
		}
	}
	return nil
}

func (q *Subject) device(id string) *catalog.Device {
	for i := range q.Catalog.Devices {
		if q.Catalog.Devices[i].ID == id {
			return &q.Catalog.Devices[i]
		}
	}
	return nil
}

func (q *Subject) casters() *catalog.Casters {
	for i := range q.Catalog.Casters {
		if q.Catalog.Casters[i].ID == q.Plan.Casters.Part {
			return &q.Catalog.Casters[i]
		}
	}
	return nil
}

// name returns a part's own name; its id where it has none.
func (q *Subject) name(id string) string {
	if e, ok := q.Catalog.Find(id); ok && e.Name != "" {
		return e.Name
	}
	return id
}

func amps(a float64) string                 { return told.Amps(a) }
func number(x float64, decimals int) string { return told.Number(x, decimals) }
