package model

import (
	"math"

	"cartwright/optimize/bench"
	"cartwright/optimize/chassis"
	"cartwright/optimize/choice"
	"cartwright/optimize/milp"
)

// weigh adds up the mass of everything and keeps it within limits.mass, limits.push and what the casters carry.
func (p *program) weigh() {
	p.Mass = p.byString(func(k *bench.Stack) float64 { return k.Kg })
	p.Mass.AddExpr(1, p.bySupply(func(v *bench.Supply) float64 { return float64(v.Units)*v.Inverter.MassKg + v.ArrayKg }))
	for i := range p.slots {
		v := &p.slots[i]
		p.Mass.AddExpr(1, sum(v.filling, func(o int) float64 { return v.slot.Options[o].Kg }))
	}
	p.Mass.Add(p.Bench.FixedKg, p.one)

	s := p.Bench.Scenario
	if !math.IsInf(s.Limits.MassKg, 1) {
		p.Model.Row("mass", p.Mass, milp.AtMost, s.Limits.MassKg)
	}
	if s.Limits.PushN > 0 {
		p.Model.Row("push", p.Mass, milp.AtMost, s.Limits.PushN/chassis.PushN(1, s.Cart.Rolling, s.Limits.Slope))
	}
	// The load of a wheel is proportional to the mass, so a set carries its rating over the load for 1 kg.
	perKg := chassis.CasterLoadKg(1, s.CasterFactor, s.Cart.Casters)
	casters := p.casters()
	p.Model.Row("caster load", minus(
		sum(casters.filling, func(i int) float64 { return casters.slot.Options[i].CarriesKg / perKg }), p.Mass), milp.AtLeast, 0)
}

// casters returns the slot of the casters.
func (p *program) casters() *slotVars {
	for i := range p.slots {
		if p.slots[i].kind == choice.SlotCasters {
			return &p.slots[i]
		}
	}
	return nil
}

// balance requires that the cart does not tip, where it could.
func (p *program) balance() {
	if p.Space.CannotTip {
		return
	}
	var side, length milp.Expr
	add := func(v milp.Var, body chassis.Body) {
		y, x := p.Bench.Margins(body)
		side.Add(y, v)
		length.Add(x, v)
	}
	s := p.Bench.Scenario
	for _, body := range p.Bench.FixedBodies {
		y, x := p.Bench.Margins(body)
		side.Add(y, p.one)
		length.Add(x, p.one)
	}
	for i := range p.Space.strings {
		for j := range s.Cart.Shelves {
			add(p.stand[i][j], chassis.ModuleBody(&s.Cart.Shelves[j], p.stack(i).Battery))
		}
	}
	for i, at := range p.Space.supplies {
		v := &p.Bench.Supplies[at]
		add(p.supply[i], chassis.BackboardBody(s, float64(v.Units)*v.Inverter.MassKg))
		if v.ArrayKg > 0 {
			add(p.supply[i], chassis.ArrayBody(s, v.ArrayKg))
		}
	}
	for i := range p.slots {
		v := &p.slots[i]
		for j := range v.filling {
			body := chassis.BackboardBody(s, v.slot.Options[j].Kg)
			if v.kind == choice.SlotCasters {
				body = chassis.CasterBody(s, v.slot.Options[j].Kg)
			}
			add(v.filling[j], body)
		}
	}
	p.Model.Row("tilt sideways", side, milp.AtLeast, 0)
	p.Model.Row("tilt lengthways", length, milp.AtLeast, 0)
}
