package model

import (
	"cartwright/optimize/market"
	"cartwright/optimize/milp"
)

// haveMust requires an option that uses the part every plan has to have. Parts that make up a core are required by the
// choice of cores.
func (p *program) haveMust() {
	switch p.Bench.MustKind() {
	case "", "battery", "inverter", "solar":
		return
	}
	var e milp.Expr
	for i := range p.slots {
		v := &p.slots[i]
		for j, x := range v.filling {
			if market.QuantityOf(&v.slot.Options[j], p.market.Must) > 0 {
				e.Add(1, x)
			}
		}
	}
	p.Model.Row("the part asked for", e, milp.AtLeast, 1)
}
