package audit

import "cartwright/catalog"

// kindCableEnd is the bill's kind for crimped cable ends, which name their cable as the part.
const kindCableEnd = "cable-end"

// article is what a line of a bill is about: a part, or the crimped ends of a cable.
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

// tally adds up quantities of articles. Order is the order in which they were first met, so that what is
// told of them is the same every time.
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

// endsEach is how many crimped ends a conductor has.
const endsEach = 2

// required returns what the core, the runs and the casters of the plan call for. Bus bars and sundries
// are called for by what they can do, not by part: see busbars and needs.
func (a *auditor) required() *tally {
	var t tally
	for _, b := range a.strings {
		t.add(article{part: b.ID}, b.modules())
	}
	if a.inverter != nil {
		t.add(article{part: a.inverter.ID}, a.units)
	}
	for _, r := range a.p.Runs {
		paths := float64(r.Count)
		conductors := paths * float64(r.Conductors) * float64(r.Sets)
		t.add(article{part: r.Cable}, conductors*r.LengthM)
		t.add(article{part: r.Cable, ends: true}, conductors*endsEach)
		if r.Ground != "" {
			t.add(article{part: r.Ground}, paths*r.LengthM)
			t.add(article{part: r.Ground, ends: true}, paths*endsEach)
		}
		if r.Device != "" {
			t.add(article{part: r.Device}, paths)
		}
	}
	t.add(article{part: a.p.Casters.Part}, 1)
	return &t
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
