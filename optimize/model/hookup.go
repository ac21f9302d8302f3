package model

import (
	"cartwright/optimize/bench"
	"cartwright/optimize/choice"
	"cartwright/optimize/market"
	"cartwright/optimize/milp"
)

// bond requires a bond that is large enough for every main that is built: each option of a main needs one of at least
// some area.
func (p *program) bond(v *slotVars) {
	for i := range p.slots {
		main := &p.slots[i]
		if main.kind != choice.SlotMain {
			continue
		}
		for j := range main.slot.Options {
			x := main.filling[j]
			enough := sum(v.filling, func(k int) float64 {
				if p.Bench.Bonds(p.Space.supplies[main.of], &v.slot.Options[k], &main.slot.Options[j]) {
					return float64(main.most)
				}
				return 0
			})
			enough.Add(-1, x)
			p.Model.Row("bond beside "+main.slot.Name+" "+number(j), enough, milp.AtLeast, 0)
		}
	}
}

// centre requires a load centre that is rated for the devices of all feeders together, takes the breakers of every
// branch by their mount, and has a space for each pole.
func (p *program) centre(v *slotVars) {
	fed := sum(v.filling, func(j int) float64 { return v.slot.Options[j].RatingA })
	most := 0.0
	var feeders []*slotVars
	for i := range p.slots {
		f := &p.slots[i]
		if f.kind != choice.SlotFeeder {
			continue
		}
		feeders = append(feeders, f)
		fed.AddExpr(-1, sum(f.filling, func(j int) float64 { return f.slot.Options[j].FeedsA }))
	}
	p.Model.Row("load-centre rating", fed, milp.AtLeast, most)
	if v.most > 1 {
		p.Model.Row("one load centre at most", sum(v.filling, one), milp.AtMost, 1)
	}
	for j := range v.slot.Options {
		p.fitCentre(v, j, feeders)
	}
}

// fitCentre requires, if a load centre is chosen, that every branch's breaker is of its mount and every pole has a
// space.
func (p *program) fitCentre(v *slotVars, j int, feeders []*slotVars) {
	centre := &v.slot.Options[j]
	poles, most := milp.Expr{}, 0.0
	for i := range p.slots {
		b := &p.slots[i]
		if b.slot.For != market.Branch {
			continue
		}
		strange := sum(b.filling, func(k int) float64 {
			if bench.InCentre(&b.slot.Options[k], centre.Mount) {
				return 0
			}
			return 1
		})
		if strange.Len() > 0 {
			strange.Add(1, v.filling[j])
			p.Model.Row("mount of "+b.slot.Name+" in load centre "+number(j), strange, milp.AtMost, 1)
		}
		largest := 0
		for k := range b.slot.Options {
			poles.Add(float64(b.slot.Options[k].Poles), b.filling[k])
			largest = max(largest, b.slot.Options[k].Poles)
		}
		most += float64(largest)
	}
	if centre.Spaces == 0 {
		return
	}
	for _, f := range feeders {
		largest := 0
		for k := range f.slot.Options {
			if o := &f.slot.Options[k]; centre.Mount != "" && o.Wire.Device != nil && o.Wire.Device.Mount == centre.Mount {
				poles.Add(float64(o.Poles), f.filling[k])
				largest = max(largest, o.Poles)
			}
		}
		most += float64(f.most * largest)
	}
	spare := most - float64(centre.Spaces)
	if poles.Len() == 0 || spare <= 0 {
		return
	}
	poles.Add(spare, v.filling[j])
	p.Model.Row("spaces of load centre "+number(j), poles, milp.AtMost, most)
}

// talk requires that every battery has a protocol in common with the inverter, where that is a limit.
func (p *program) talk() {
	if !p.Bench.Scenario.Limits.SharedProtocols {
		return
	}
	for i := range p.Space.strings {
		for j, supply := range p.Space.supplies {
			if !p.stack(i).Battery.SharesProtocol(p.Bench.Supplies[supply].Inverter) {
				p.Model.Row("protocol of "+p.stack(i).Battery.ID+" and supply "+number(j),
					milp.Sum(milp.T(1, p.present[i]), milp.T(1, p.supply[j])), milp.AtMost, 1)
			}
		}
	}
}

// shareOut requires, for every battery present, that a current is at most what the strings carry together, sharing by
// conductance, when a string of that battery is at its own limit.
func (p *program) shareOut(name string, own func(k *bench.Stack) float64, asked func(v *bench.Supply) float64) {
	drawn, most := p.drawn("current for "+name, asked)
	for i := range p.Space.strings {
		k := p.stack(i)
		e := minus(p.shared(i, own(k)), drawn)
		e.Add(-most, p.present[i]) // holds only where the battery is present
		p.Model.Row(name+" "+k.Battery.ID, e, milp.AtLeast, -most)
	}
}

// shared returns the current of all strings of a bus together while one of the i-th range carries ownA.
func (p *program) shared(i int, ownA float64) milp.Expr {
	var e milp.Expr
	e.AddExpr(ownA/p.stack(i).Conductance, p.busOf[i].conduct)
	return e
}
