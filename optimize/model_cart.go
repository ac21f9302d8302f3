package optimize

import (
	"math"

	"cartwright/optimize/chassis"
	"cartwright/optimize/milp"
)

// weigh adds up the mass of everything and holds it below what the limits, the casters and the person
// who pushes can take.
func (p *program) weigh() {
	p.mass = p.byString(func(k *stack) float64 { return k.kg })
	p.mass.AddExpr(1, p.bySupply(func(v *supply) float64 { return float64(v.units) * v.inv.MassKg }))
	for i := range p.slots {
		v := &p.slots[i]
		p.mass.AddExpr(1, sum(v.filling, func(o int) float64 { return v.slot.options[o].kg }))
	}
	p.mass.Add(p.b.fixedKg, p.one)

	s := p.b.s
	if !math.IsInf(s.Limits.MassKg, 1) {
		p.m.Row("mass", p.mass, milp.AtMost, s.Limits.MassKg)
	}
	if s.Limits.PushN > 0 {
		p.m.Row("push", p.mass, milp.AtMost, s.Limits.PushN/chassis.PushN(1, s.Limits.Slope))
	}
	// The load of a wheel is proportional to the mass: for 1 kg it says how much mass a rating carries.
	perKg := chassis.CasterLoadKg(1, s.CasterFactor, s.Cart.Casters)
	casters := p.casters()
	p.m.Row("caster load", minus(
		sum(casters.filling, func(i int) float64 { return casters.slot.options[i].carriesKg / perKg }), p.mass), milp.AtLeast, 0)
}

// casters returns the slot of the casters.
func (p *program) casters() *slotVars {
	for i := range p.slots {
		if p.slots[i].kind == slotCasters {
			return &p.slots[i]
		}
	}
	return nil
}

// balance asks that the cart does not tip, unless that was settled before.
func (p *program) balance() {
	if p.sp.settled {
		return
	}
	var side, length milp.Expr
	add := func(v milp.Var, body chassis.Body) {
		y, x := p.b.margins(body)
		side.Add(y, v)
		length.Add(x, v)
	}
	s := p.b.s
	for _, body := range p.b.fixedBodies {
		y, x := p.b.margins(body)
		side.Add(y, p.one)
		length.Add(x, p.one)
	}
	for i := range p.sp.strings {
		for j := range s.Cart.Shelves {
			add(p.stand[i][j], chassis.ModuleBody(&s.Cart.Shelves[j], p.stack(i).bat))
		}
	}
	for i, at := range p.sp.supplies {
		v := &p.b.supplies[at]
		add(p.supply[i], chassis.BackboardBody(s, float64(v.units)*v.inv.MassKg))
	}
	for i := range p.slots {
		v := &p.slots[i]
		for j := range v.filling {
			body := chassis.BackboardBody(s, v.slot.options[j].kg)
			if v.kind == slotCasters {
				body = chassis.CasterBody(s, v.slot.options[j].kg)
			}
			add(v.filling[j], body)
		}
	}
	p.m.Row("tilt sideways", side, milp.AtLeast, 0)
	p.m.Row("tilt lengthways", length, milp.AtLeast, 0)
}
