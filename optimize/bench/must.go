package bench

import "cartwright/catalog"

// A part that every plan has to have is a battery, an inverter or a solar module, which restricts the cores, or any
// other part, which adds a row to every program.

// setMust names the part; it has to be a part of the catalogue.
func (b *Bench) setMust(id string) {
	if id != "" {
		b.Market.Must = b.Market.Part(id).Position
	}
}

// MustKind returns the kind of the part every plan has to have, "" where there is none.
func (b *Bench) MustKind() string {
	if b.Market.Must < 0 {
		return ""
	}
	return b.Market.Articles[b.Market.Must].Kind
}

// MayServe reports whether a supply has the inverter or module that every plan has to have, if there is such a one.
func (b *Bench) MayServe(v *Supply) bool {
	switch b.MustKind() {
	case "inverter":
		return b.Market.Part(v.Inverter.ID).Position == b.Market.Must
	case "solar":
		return v.Array != nil && b.Market.Part(v.Array.Module.ID).Position == b.Market.Must
	}
	return true
}

// MustStack returns which member of a group is the battery that every plan has to have, -1 where there is no such
// battery; ok is false where there is one and the group does not have it.
func (b *Bench) MustStack(members []int) (member int, ok bool) {
	if b.MustKind() != "battery" {
		return -1, true
	}
	for j, at := range members {
		if b.Market.Part(b.Stacks[at].Battery.ID).Position == b.Market.Must {
			return j, true
		}
	}
	return -1, false
}

// Keeps reports whether a core has the batteries, inverters and modules that are to be kept. Anything else that is kept
// adds a row to every program.
func (b *Bench) Keeps(c *Core) bool {
	v := &b.Supplies[c.Supply]
	for _, i := range b.Kept {
		a := &b.Market.Articles[i]
		has := 0.0
		switch a.Kind {
		case string(catalog.KindBattery):
			for _, h := range c.Strings {
				if k := &b.Stacks[b.Groups[c.Group][h.Member]]; k.Battery.ID == a.ID {
					has = float64(h.N * k.Series)
				}
			}
		case string(catalog.KindInverter):
			if v.Inverter.ID == a.ID {
				has = float64(v.Units)
			}
		case string(catalog.KindSolar):
			if v.Array != nil && v.Array.Module.ID == a.ID {
				has = float64(v.Array.Modules())
			}
		default:
			continue
		}
		if has < a.Keep {
			return false
		}
	}
	return true
}
