package harness

import (
	"cmp"
	"slices"
)

// Cut is a number of equal pieces to cut from one kind of cable, or of conduit.
type Cut struct {
	Of      string // part
	LengthM float64
	Count   int
	For     []string // tag and conductor of each: "S1 +"
}

// cuts gathers pieces, in the order in which their kinds came, the longest first.
type cuts struct {
	list  []Cut
	order []string
}

func (x *cuts) add(of string, lengthM float64, what string) {
	if !slices.Contains(x.order, of) {
		x.order = append(x.order, of)
	}
	i := slices.IndexFunc(x.list, func(c Cut) bool { return c.Of == of && c.LengthM == lengthM })
	if i < 0 {
		x.list = append(x.list, Cut{Of: of, LengthM: lengthM})
		i = len(x.list) - 1
	}
	x.list[i].Count++
	x.list[i].For = append(x.list[i].For, what)
}

func (x *cuts) sorted() []Cut {
	slices.SortStableFunc(x.list, func(a, b Cut) int {
		if d := cmp.Compare(slices.Index(x.order, a.Of), slices.Index(x.order, b.Of)); d != 0 {
			return d
		}
		return cmp.Compare(b.LengthM, a.LengthM)
	})
	return x.list
}

// Cuts returns what has to be cut of cable, the pieces of each kind together, the longest first.
func Cuts(cables []Cable) []Cut {
	var x cuts
	for _, c := range cables {
		for _, p := range c.Pieces {
			x.add(p.Cable, p.LengthM, c.Tag+" "+p.Name)
		}
	}
	return x.sorted()
}

// Conduits returns what has to be cut of conduit, one piece a path.
func Conduits(cables []Cable) []Cut {
	var x cuts
	for _, c := range cables {
		if c.Run.Conduit != "" {
			x.add(c.Run.Conduit, c.Run.LengthM, c.Tag)
		}
	}
	return x.sorted()
}
