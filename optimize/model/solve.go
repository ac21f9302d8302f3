package model

import (
	"context"
	"fmt"

	"cartwright/optimize/bench"
	"cartwright/optimize/choice"
	"cartwright/optimize/market"
	"cartwright/optimize/milp"
	"cartwright/optimize/question"
)

// The smallest differences that matter: a hundredth of a cent, in currency units, so that of two bills that
// are nearly the same the one with fewer whole cents is not missed; and a gram, in kg.
const (
	centResolution = 0.0001
	gramResolution = 0.001
)

// tieSlack is how far above the best a first figure still counts as equal, in currency units or
// kilograms. It allows for the engine's rounding and is far below a cent or a gram.
const tieSlack = 1e-6

// tieWork is how much work a tie-break may take, in pivots and nodes; that is a second or so. Some ties are as hard to
// break as they are unimportant. A plan whose tie is not broken by then is kept as it is.
const tieWork = 100000

// Ask is what a core is solved for.
type Ask struct {
	By     question.By
	Market *market.Market // whose prices count; nil: the program decides every order
	// Strict holds the unrounded cost to the budget. Without it the cost may be above by what rounding the
	// bill line by line could take off, and the finished bill has to be checked.
	Strict bool
	// Patient lifts the limit of work that a tie-break has, where the answer decides whether there is a plan.
	Patient bool
	// Keep asks for the evidence, not only for the answer.
	Keep bool
	// Where Tied, the first figure is held to First and the second is minimised; only a second figure of at most Below
	// is of interest.
	Tied         bool
	First, Below float64
	// Most, where it is not 0, is a cost beyond which no plan is of interest, in currency units.
	Most float64
	// Work, where given, is how much the solver may do, as in milp.Options.
	Work int64
	// Settle, with Tied, asks for no better second figure, but for the same one of all plans that have both figures,
	// whichever engine solves.
	Settle bool
}

// Answer is what solving a core found.
type Answer struct {
	Status  milp.Status
	Choice  choice.Choice
	First   float64 // the figure that was minimised, unrounded
	Second  float64 // the other one
	Ended   bool    // cut short by time: more time may prove what is not proved
	Solves  int
	Checked int // certificates that passed the checker
	Retries []string
	// Evidence is of each solve, where it was asked for.
	Evidence []*milp.Evidence
	Err      error
}

// LeastCents returns a lower bound in cents on what any plan of a core costs at the prices of a market, worked out
// without the solver. It stops once the bound is above enough.
func LeastCents(b *bench.Bench, c *bench.Core, m *market.Market, enough float64) float64 {
	return layCore(b, c, &Ask{Market: m}).leastCents(enough)
}

// layCore finds what there is to choose for a core.
func layCore(b *bench.Bench, c *bench.Core, k *Ask) *program {
	sp := CoreSpace(b, c)
	sp.market, sp.strict = k.Market, k.Strict
	return lay(b, "core", sp)
}

// Solve solves the program of one core.
func Solve(ctx context.Context, b *bench.Bench, c *bench.Core, k Ask) Answer {
	p := layCore(b, c, &k)
	if k.Most != 0 && p.leastCents(100*k.Most) > 100*k.Most {
		return Answer{Status: milp.Infeasible}
	}
	p.write()
	objective, other, resolution, otherResolution := p.Cost, p.Mass, centResolution, gramResolution
	if k.By == question.ByMass {
		objective, other, resolution, otherResolution = p.Mass, p.Cost, gramResolution, centResolution
	}
	o := milp.Options{Prove: true, Resolution: resolution, Work: k.Work}
	if k.Most != 0 {
		o.Cutoff, o.HasCutoff = k.Most, true
	}
	if k.Tied {
		if cents, kg := k.within(otherResolution); !k.Settle && !p.canBeWithin(cents, kg) {
			return Answer{Status: milp.Infeasible}
		}
		p.Model.Row("no more of the first figure", objective, milp.AtMost, k.First+tieSlack)
		objective = other
		o = milp.Options{Prove: true, Resolution: otherResolution, Cutoff: k.Below - otherResolution, HasCutoff: true}
		if !k.Patient {
			o.Work = tieWork
		}
	}
	solve := p.Model.Solve
	if k.Settle {
		p.Model.Row("no more of the second figure", other, milp.AtMost, k.Below+otherResolution/2)
		var both milp.Expr // within the slack of both rows nothing should be taken that is not needed
		objective = *both.AddExpr(1, p.Cost).AddExpr(1, p.Mass)
		o, solve = milp.Options{Work: tieWork}, p.Model.First
	}
	p.Model.Minimize(objective)
	s, err := solve(ctx, o)
	a := Answer{Status: s.Status, First: s.Objective, Ended: s.Ended, Solves: s.Solves, Checked: s.Checked, Retries: s.Retries}
	if err != nil {
		a.Err = fmt.Errorf("internal error: %w", err)
		a.Status = milp.GaveUp
		return a
	}
	if k.Keep {
		if e := s.Evidence(); e != nil {
			a.Evidence = append(a.Evidence, e)
		}
	}
	if s.Status.HasPoint() {
		a.Choice = p.Read(s)
		if a.Second = s.At(p.Mass); k.Tied == (k.By != question.ByMass) {
			a.Second = s.At(p.Cost)
		}
	}
	return a
}
