package view

import (
	"fmt"
	"math"
)

// target names the plan that is saved for.
func (n Next) target() string {
	if rank := n.Sequence.Target.Rank; rank > 1 {
		return fmt.Sprintf("plan %d", rank)
	}
	return "the cheapest plan"
}

// offRecord is an owned battery that the target has no place for.
type offRecord struct {
	Part  string  `json:"part"`
	Count float64 `json:"count"`
}

// off lists the owned batteries that the target does not use.
func (n Next) off() []offRecord {
	list := []offRecord{}
	if n.Sequence.Target == nil {
		return list
	}
	used := map[string]float64{}
	for _, b := range n.Sequence.Target.Core.Batteries {
		used[b.Part] = float64(b.Strings * b.Series)
	}
	for _, h := range n.Scenario.Have {
		for i := range n.Catalog.Batteries {
			if n.Catalog.Batteries[i].ID != h.PartID {
				continue
			}
			stays := math.Min(h.Count, used[h.PartID])
			used[h.PartID] -= stays
			if h.Count > stays {
				list = append(list, offRecord{h.PartID, h.Count - stays})
			}
		}
	}
	return list
}

// takenOff says which owned batteries do not stand on the target's cart.
func (n Next) takenOff() []string {
	var words []string
	for _, o := range n.off() {
		words = append(words, fmt.Sprintf("Off the cart: %s x %s, owned, has no place in this plan.", short(o.Count, 0), o.Part))
	}
	return words
}
