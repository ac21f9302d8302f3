package optimize

import (
	"context"
	"fmt"

	"cartwright/optimize/milp"
)

// answer is what solving a core found.
type answer struct {
	status  milp.Status
	choice  choice
	solves  int
	retries []string
	err     error
}

// The smallest differences that matter: half a cent less a hair, so that a whole cent is never missed;
// a gram of mass.
const (
	centResolution = 0.004
	gramResolution = 0.001
)

// What breaks ties is added to the objective at so small a weight that it stays below what matters: a
// kilogram counts a thousandth of a cent, a currency unit a milligram.
const (
	kgInCost   = 1e-5 // currency units a kilogram
	costInMass = 1e-6 // kilograms a currency unit
)

// objective makes a program's figure least, and then the other.
func (p *program) objective(by By) (resolution float64) {
	var e milp.Expr
	if by == ByMass {
		e.AddExpr(1, p.mass)
		e.AddExpr(costInMass, p.cost)
		resolution = gramResolution
	} else {
		e.AddExpr(1, p.cost)
		e.AddExpr(kgInCost, p.mass)
		resolution = centResolution
	}
	p.m.Minimize(e)
	return resolution
}

// solve solves the program of one core at the prices of a market; nil: with every order to be decided.
func (b *bench) solve(ctx context.Context, c *core, m *market, by By) answer {
	sp := b.coreSpace(c)
	sp.market = m
	p := b.writeProgram("core", sp)
	resolution := p.objective(by)
	s, err := p.m.Solve(ctx, milp.Options{Prove: true, Resolution: resolution})
	a := answer{status: s.Status, solves: s.Solves, retries: s.Retries}
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
	for j, n := range c.counts {
		if n > 0 {
			sp.strings = append(sp.strings, stringRange{b.groups[c.group][j], n, n})
		}
	}
	sp.settled = !b.tips.matter() || b.cannotTip(c)
	return sp
}
