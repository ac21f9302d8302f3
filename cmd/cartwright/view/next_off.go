package view

import (
	"fmt"
	"math"

	"cartwright/catalog"
)

// offRecord is something owned that the target does not use.
type offRecord struct {
	Part  string  `json:"part"`
	Count float64 `json:"count"`
}

// off lists the owned batteries, inverters and solar modules that the target does not use.
func (n Next) off() []offRecord {
	list := []offRecord{}
	if n.Sequence.Target == nil {
		return list
	}
	core := n.Sequence.Target.Core
	used := map[string]float64{core.Inverter.Part: float64(core.Inverter.Units)}
	for _, b := range core.Batteries {
		used[b.Part] = float64(b.Strings * b.Series)
	}
	for _, x := range core.Solar {
		used[x.Part] = float64(x.Series * x.Parallel * x.Inputs)
	}
	for _, h := range n.Scenario.Have {
		e, _ := n.Catalog.Find(h.PartID)
		switch e.Kind {
		case catalog.KindBattery, catalog.KindInverter, catalog.KindSolar:
			stays := math.Min(h.Count, used[h.PartID])
			used[h.PartID] -= stays
			if h.Count > stays {
				list = append(list, offRecord{h.PartID, h.Count - stays})
			}
		}
	}
	return list
}

// takenOff says which owned parts do not stand on the target's cart.
func (n Next) takenOff() []string {
	var words []string
	for _, o := range n.off() {
		fate := ""
		for _, l := range n.Sequence.Target.Bill {
			if l.Part == o.Part && l.Sell > 0 {
				fate = "; sold"
			}
		}
		words = append(words, fmt.Sprintf("Off the cart: %s x %s, owned but not used in this plan%s.", short(o.Count, 0), o.Part, fate))
	}
	return words
}

// aside says which batteries of the target, owned by then, do not stand on the cart in a month on the way.
func (n Next) aside() []string {
	var words []string
	owned, told := map[string]float64{}, map[string]float64{}
	for _, h := range n.Scenario.Have {
		owned[h.PartID] += h.Count
	}
	for _, m := range n.months() {
		for _, b := range m.Buy {
			owned[b.Part] += b.Quantity
		}
		for _, b := range m.Sell {
			owned[b.Part] -= b.Quantity
		}
		if m.Cart == nil || m.Month == n.Sequence.Reached {
			continue
		}
		stands := map[string]float64{}
		for _, b := range m.Cart.Core.Batteries {
			stands[b.Part] = float64(b.Strings * b.Series)
		}
		for _, b := range n.Sequence.Target.Core.Batteries {
			left := math.Min(owned[b.Part], float64(b.Strings*b.Series)) - stands[b.Part]
			if left > 0 && told[b.Part] != left {
				words = append(words, fmt.Sprintf("From month %d on, %s x %s, owned by then, stays off the cart for a while.", m.Month, short(left, 0), b.Part))
			}
			told[b.Part] = math.Max(0, left)
		}
	}
	return words
}
