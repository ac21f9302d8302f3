package optimize

import (
	"context"
	"fmt"
	"time"

	"cartwright/optimize/milp"
)

// The smallest differences that matter: half a cent less a hair, so that a whole cent is never missed;
// a gram of mass.
const (
	centResolution = 0.004
	gramResolution = 0.001
)

// tieSlack is how far above the best a first figure still counts as equal, in currency units or
// kilograms: the engine's rounding, far below a cent or a gram.
const tieSlack = 1e-6

// tieTime is how long the solver may look for a tie-break: some are as hard as they are unimportant. A
// plan that is not broken in that time stands as it is.
const tieTime = 2 * time.Second

// ask is what a core is solved for.
type ask struct {
	by     By
	market *market // at whose prices; nil: with every order to be decided
	// strict holds the unrounded cost to the budget. Without it the cost may be above by what rounding the
	// bill line by line could take off, and the finished bill has to be looked at.
	strict bool
	// Where tied, the first figure is held to first and the second is made least; only one of at most below
	// is of interest.
	tied         bool
	first, below float64
}

// answer is what solving a core found.
type answer struct {
	status  milp.Status
	choice  choice
	first   float64 // the first figure, unrounded
	solves  int
	retries []string
	err     error
}

// solve solves the program of one core.
func (b *bench) solve(ctx context.Context, c *core, k ask) answer {
	sp := b.coreSpace(c)
	sp.market, sp.strict = k.market, k.strict
	p := b.writeProgram("core", sp)
	objective, other, resolution, otherResolution := p.cost, p.mass, centResolution, gramResolution
	if k.by == ByMass {
		objective, other, resolution, otherResolution = p.mass, p.cost, gramResolution, centResolution
	}
	o := milp.Options{Prove: true, Resolution: resolution}
	if k.tied {
		if cents, kg := k.within(otherResolution); !p.canBeWithin(cents, kg) {
			return answer{status: milp.Infeasible}
		}
		p.m.Row("no more of the first figure", objective, milp.AtMost, k.first+tieSlack)
		objective = other
		o = milp.Options{Prove: true, Resolution: otherResolution, Cutoff: k.below - otherResolution, HasCutoff: true, TrustInfeasible: true, TimeLimit: tieTime}
	}
	p.m.Minimize(objective)
	s, err := p.m.Solve(ctx, o)
	a := answer{status: s.Status, first: s.Objective, solves: s.Solves, retries: s.Retries}
	if err != nil {
		a.err = fmt.Errorf("internal error: %w", err)
		a.status = milp.GaveUp
		return a
	}
	if s.Status.HasPoint() {
		a.choice = p.read(s)
	}
	return a
}

// coreSpace is the space of one core. It is settled where the cart cannot tip whatever the support.
func (b *bench) coreSpace(c *core) space {
	sp := space{supplies: []int{c.supply}}
	for _, h := range c.strings {
		sp.strings = append(sp.strings, stringRange{b.groups[c.group][h.member], h.n, h.n})
	}
	sp.settled = b.stands(c)
	return sp
}
