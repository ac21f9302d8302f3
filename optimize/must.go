package optimize

import "cartwright/optimize/milp"

// A part that every plan has to have is a battery or inverter, which bounds the cores, or any other part,
// which is a row in every program.

// setMust names the part; it has to be a part of the catalogue.
func (b *bench) setMust(id string) {
	if id != "" {
		b.market.must = b.market.part(id).position
	}
}

// mustKind returns the kind of the part every plan has to have, "" where there is none.
func (b *bench) mustKind() string {
	if b.market.must < 0 {
		return ""
	}
	return b.market.articles[b.market.must].kind
}

// mayServe reports whether a supply has the inverter every plan has to have, if it is one.
func (b *bench) mayServe(v *supply) bool {
	return b.mustKind() != "inverter" || b.market.part(v.inv.ID).position == b.market.must
}

// mustStack returns which member of a group is the battery every plan has to have, -1 where that is no
// battery, and whether the group may serve at all.
func (b *bench) mustStack(members []int) (member int, ok bool) {
	if b.mustKind() != "battery" {
		return -1, true
	}
	for j, at := range members {
		if b.market.part(b.stacks[at].bat.ID).position == b.market.must {
			return j, true
		}
	}
	return -1, false
}

// haveMust asks for an option that uses the part every plan has to have.
func (p *program) haveMust() {
	switch p.b.mustKind() {
	case "", "battery", "inverter":
		return
	}
	var e milp.Expr
	for i := range p.slots {
		v := &p.slots[i]
		for j, x := range v.filling {
			if quantityOf(&v.slot.options[j], p.market.must) > 0 {
				e.Add(1, x)
			}
		}
	}
	p.m.Row("the part asked for", e, milp.AtLeast, 1)
}
