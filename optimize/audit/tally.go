package audit

import (
	"cartwright/catalog"
	"cartwright/optimize/plan"
)

// The bill's kinds for crimped cable ends and for the ends of conduits; they name cable or conduit as the part.
const (
	kindCableEnd   = "cable-end"
	kindConduitEnd = "conduit-end"
)

// isEnd reports whether a line of a bill is of ends.
func isEnd(kind string) bool { return kind == kindCableEnd || kind == kindConduitEnd }

// article is what a line of a bill is about: a part, or the ends of a cable or conduit.
type article struct {
	part string
	ends bool
}

// name says which article it is.
func (a article) name() string {
	if a.ends {
		return "ends of " + a.part
	}
	return a.part
}

// tally adds up quantities of articles. Order is the order in which they were first added, so that the output is always
// the same.
type tally struct {
	order    []article
	quantity map[article]float64
}

func (t *tally) add(a article, quantity float64) {
	if _, met := t.quantity[a]; !met {
		t.order = append(t.order, a)
	}
	if t.quantity == nil {
		t.quantity = map[article]float64{}
	}
	t.quantity[a] += quantity
}

// endsEach is how many ends a conductor or a run of conduit has.
const endsEach = 2

// required returns what the core, the runs, the casters and the frame of the plan call for. Bus bars and
// sundries are called for by what they can do, not by part: see busbars and needs.
func (a *auditor) required() *tally {
	var t tally
	for _, b := range a.strings {
		t.add(article{part: b.ID}, b.modules())
	}
	if a.inverter != nil {
		t.add(article{part: a.inverter.ID}, a.units)
	}
	if a.array != nil {
		t.add(article{part: a.array.ID}, a.array.modules())
	}
	for i := range a.p.Runs {
		a.requiredOf(&t, &a.p.Runs[i])
	}
	t.add(article{part: a.p.Casters.Part}, 1)
	for _, piece := range a.s.Cart.Pieces {
		if x := a.stock.sections[piece.Section]; x != nil && x.CentsPerM > 0 {
			t.add(article{part: x.ID}, float64(piece.Count)*piece.LengthM)
		}
	}
	return &t
}

// requiredOf adds what one entry of the runs calls for.
func (a *auditor) requiredOf(t *tally, r *plan.Run) {
	paths := float64(r.Count)
	cut := func(cable string, conductors, lengthM float64) {
		if cable != "" && conductors > 0 {
			t.add(article{part: cable}, conductors*a.conductorM(lengthM))
			t.add(article{part: cable, ends: true}, conductors*endsEach)
		}
	}
	cut(r.Cable, paths*float64(r.Conductors*r.Sets), r.LengthM)
	cut(r.Cable, paths*float64(r.Links*r.Sets), r.LinkM)
	cut(r.Ground, paths, r.LengthM)
	pieces := func(part string, n int) {
		if part != "" {
			t.add(article{part: part}, paths*float64(n))
		}
	}
	pieces(r.Device, r.Devices)
	pieces(r.StringFuse, r.StringFuses)
	if r.Conduit != "" {
		t.add(article{part: r.Conduit}, paths*r.LengthM)
		t.add(article{part: r.Conduit, ends: true}, paths*endsEach)
	}
}

// installedTally returns everything on the cart: what required returns, and the bus bars and sundries of
// the bill.
func (a *auditor) installedTally() *tally {
	t := a.required()
	for _, l := range a.p.Bill {
		if kind := catalog.Kind(l.Kind); kind == catalog.KindBusbar || kind == catalog.KindSundry {
			t.add(article{part: l.Part}, l.Quantity)
		}
	}
	return t
}
