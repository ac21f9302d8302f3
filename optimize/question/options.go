package question

import (
	"errors"
	"fmt"
	"runtime"

	"cartwright/optimize/milp"
)

// OrCost returns the objective; ByCost where none is given.
func (by By) OrCost() By {
	if by == "" {
		return ByCost
	}
	return by
}

// By is what a plan is ranked by.
type By string

// The objectives. ByLife is least cost per lifetime kilowatt-hour; ByEnergy is the most usable energy within the budget
// and all limits, and of equals the cheaper.
const (
	ByCost   By = "cost"
	ByMass   By = "mass"
	ByLife   By = "life"
	ByEnergy By = "energy"
)

// Distinct says when two plans count as different.
type Distinct string

// The two distinctions: another core, or another set of battery parts.
const (
	DistinctCore    Distinct = "core"
	DistinctBattery Distinct = "battery"
)

// Options says how to rank. The zero value ranks the scenario's number of plans by cost, distinct by
// core, on every processor. Only the context limits the time.
type Options struct {
	Plans    int
	By       By
	Distinct Distinct
	Workers  int
	// Must, where given, is a part that every plan has to have installed.
	Must string
	// Watch, where given, is called with how far the search is; from one goroutine at a time.
	Watch Watch
	// Witness, where given, is called with every proof that the ranking rests on, in order.
	Witness Witness
	// First, where given, is called with the best plan, audited, once it is proved; the search for others goes on.
	First func(*Result)
}

// Proof is a certificate that a ranking rests on, with the program it is about.
type Proof struct {
	About string // the core the program is of
	*milp.Evidence
}

// Witness receives proofs.
type Witness func(Proof)

// Progress is how far a search is: how many choices were looked into, and how many plans or steps were found.
type Progress struct {
	Looked, Found int
}

// Watch receives progress.
type Watch func(Progress)

// Tell calls the watch, if there is one.
func (w Watch) Tell(looked, found int) {
	if w != nil {
		w(Progress{looked, found})
	}
}

// Check returns an error for what cannot be asked: a missing scenario or catalogue, an owned part or a Must that is
// not in the catalogue, an unknown By or Distinct. Anything else that does not fit is an answer: no plan, and why.
func (o Options) Check(p Problem) error {
	if p.Scenario == nil || p.Catalog == nil {
		return errors.New("a problem needs a scenario and a catalogue")
	}
	for _, h := range p.Scenario.Have {
		if _, known := p.Catalog.Find(h.PartID); !known {
			return fmt.Errorf("the owned part %q is not in the catalogue", h.PartID)
		}
	}
	if _, known := p.Catalog.Find(o.Must); o.Must != "" && !known {
		return fmt.Errorf("there is no part %q in the catalogue", o.Must)
	}
	switch o.By.OrCost() {
	case ByCost, ByMass, ByLife, ByEnergy:
	default:
		return fmt.Errorf("plans cannot be ranked by %q; use cost, mass, life or energy", o.By)
	}
	switch o.Distinct {
	case "", DistinctCore, DistinctBattery:
	default:
		return fmt.Errorf("plans cannot be distinct by %q; use core or battery", o.Distinct)
	}
	return nil
}

// WithDefaults fills in what the options leave open from the scenario.
func (o Options) WithDefaults(p Problem) Options {
	if o.Plans <= 0 {
		o.Plans = max(1, p.Scenario.Solver.Plans)
	}
	if o.By == "" {
		o.By = ByCost
	}
	if o.Distinct == "" {
		o.Distinct = DistinctCore
	}
	if o.Workers <= 0 {
		o.Workers = runtime.GOMAXPROCS(0)
	}
	return o
}
