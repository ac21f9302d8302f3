package harness

import (
	"cmp"
	"slices"
)

// Cut is a number of equal pieces to cut from one kind of cable.
type Cut struct {
	Cable   string
	LengthM float64
	Count   int
	For     []string // tag and conductor of each: "S1 +"
}

// Cuts returns what has to be cut, the pieces of each cable together, the longest first.
func Cuts(cables []Cable) []Cut {
	var list []Cut
	var order []string
	for _, c := range cables {
		for _, p := range c.Pieces {
			if !slices.Contains(order, p.Cable) {
				order = append(order, p.Cable)
			}
			i := slices.IndexFunc(list, func(x Cut) bool { return x.Cable == p.Cable && x.LengthM == p.LengthM })
			if i < 0 {
				list = append(list, Cut{Cable: p.Cable, LengthM: p.LengthM})
				i = len(list) - 1
			}
			list[i].Count++
			list[i].For = append(list[i].For, c.Tag+" "+p.Name)
		}
	}
	slices.SortStableFunc(list, func(a, b Cut) int {
		if d := cmp.Compare(slices.Index(order, a.Cable), slices.Index(order, b.Cable)); d != 0 {
			return d
		}
		return cmp.Compare(b.LengthM, a.LengthM)
	})
	return list
}
