package optimize

import (
	"context"
	"fmt"
	"math"

	"cartwright/optimize/chassis"
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

// solve solves the program of one core.
func (b *bench) solve(ctx context.Context, c *core, by By) answer {
	p := b.writeProgram("core", b.coreSpace(c))
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
	sp.settled = !b.tipsMatter || b.cannotTip(c)
	return sp
}

// cannotTip reports whether a core's cart stands however its modules are placed and whatever its
// support weighs.
func (b *bench) cannotTip(c *core) bool {
	var side, length float64
	add := func(y, x float64) {
		side += y
		length += x
	}
	for _, body := range b.fixedBodies {
		add(b.margins(body))
	}
	for j, n := range c.counts {
		if n == 0 {
			continue
		}
		k := &b.stacks[b.groups[c.group][j]]
		y, x := math.Inf(1), math.Inf(1)
		for s := range b.s.Cart.Shelves {
			if k.caps[s] > 0 {
				my, mx := b.margins(chassis.ModuleBody(&b.s.Cart.Shelves[s], k.bat))
				y, x = math.Min(y, my), math.Min(x, mx)
			}
		}
		add(float64(n*k.series)*y, float64(n*k.series)*x)
	}
	least, most := b.boardMass(c)
	y, x := b.margins(chassis.BackboardBody(b.s, 1))
	add(worstMargin(y, x, least, most))
	lightest := leastOf(b.casters, nil, massOf)
	heaviest := -leastOf(b.casters, nil, func(o *option) float64 { return -o.kg })
	y, x = b.margins(chassis.CasterBody(b.s, 1))
	add(worstMargin(y, x, lightest, heaviest))
	return side >= 0 && length >= 0
}

// worstMargin returns what a mass between least and most adds to the balance at the worst, given what
// one kg of it adds.
func worstMargin(side, length, least, most float64) (y, x float64) {
	return math.Min(side*least, side*most), math.Min(length*least, length*most)
}

// boardMass returns the least and the most that can hang on the backboard with a core.
func (b *bench) boardMass(c *core) (least, most float64) {
	v := &b.supplies[c.supply]
	add := func(count int, options []option) {
		if len(options) == 0 {
			return
		}
		least += float64(count) * leastOf(options, nil, massOf)
		most -= float64(count) * leastOf(options, nil, func(o *option) float64 { return -o.kg })
	}
	for j, n := range c.counts {
		if n > 0 {
			add(n, b.stacks[b.groups[c.group][j]].options)
		}
	}
	add(v.units, v.main)
	add(1, v.feeder)
	add(1, b.busbars)
	for _, s := range b.fixed {
		add(s.count, s.options)
	}
	own := float64(v.units) * v.inv.MassKg
	return least + own, most + own
}
