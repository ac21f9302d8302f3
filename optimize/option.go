package optimize

import (
	"math"
	"slices"

	"cartwright/optimize/wiring"
)

// use is a quantity of one article.
type use struct {
	article  int // position in the market
	quantity float64
}

// option is one way to fill a slot: a wired cable path, a set of casters, a receptacle.
type option struct {
	wire wiring.Option // of a run; else empty
	part string        // of anything else; else ""
	uses []use
	kg   float64

	interruptingA float64 // of a run's device; +Inf where the inverter's own breaker serves
	ratingA       float64 // bus bars
	studs         int     // bus bars
	carriesKg     float64 // casters, of each wheel
	poles         int     // breaker spaces taken
	spaces        int     // breaker spaces offered

	plain float64 // cents with tax of what is bought at one fixed price
	floor float64 // cents with tax below which this option cannot be had
}

// slot is something a plan needs a number of, each filled by one of several options.
type slot struct {
	name    string
	count   int
	options []option
}

// price fills in an option's mass and costs from its uses.
func (m *market) price(o *option) {
	o.kg, o.plain = 0, 0
	special := 0.0
	for _, u := range o.uses {
		a := &m.articles[u.article]
		o.kg += u.quantity * a.kg
		if a.special() {
			special += u.quantity * a.floorCents(m.tax)
		} else {
			o.plain += (1 + m.tax) * u.quantity * a.cents
		}
	}
	o.floor = o.plain + special
}

// wire makes an option of a wiring option, its uses in the given scratch space.
func (m *market) wire(d *wiring.Duty, w wiring.Option, scratch []use) option {
	o := option{wire: w, uses: scratch[:0], interruptingA: math.Inf(1)}
	o.add(m.part(w.Cable.ID), d.LineM(w.Sets))
	o.add(m.end(w.Cable.ID), float64(d.LineEnds(w.Sets)))
	if w.Ground != nil {
		o.add(m.part(w.Ground.ID), d.GroundM())
		o.add(m.end(w.Ground.ID), float64(d.GroundEnds()))
	}
	if w.Device != nil {
		o.add(m.part(w.Device.ID), 1)
		o.interruptingA = wiring.InterruptingA(*d, w.Device)
		if w.Device.Type == "breaker" {
			o.poles = w.Device.Poles
		}
	}
	m.price(&o)
	return o
}

// add notes that the option uses so much of an article, more of it where it does already.
func (o *option) add(a *article, quantity float64) {
	for i := range o.uses {
		if o.uses[i].article == a.position {
			o.uses[i].quantity += quantity
			return
		}
	}
	o.uses = append(o.uses, use{a.position, quantity})
}

// canHave reports whether everything an option uses can be had.
func (m *market) canHave(o *option) bool {
	for _, u := range o.uses {
		if !m.articles[u.article].available(u.quantity) {
			return false
		}
	}
	return true
}

// single makes an option of one part.
func (m *market) single(id string) option {
	o := option{part: id, uses: []use{{m.part(id).position, 1}}}
	m.price(&o)
	return o
}

// dominates reports whether a serves at least as well as b in every way a plan can tell them apart, so
// that b can be left out. heavy says that mass at the backboard may help the cart stand: then a lighter
// option is no better.
func (m *market) dominates(a, b *option, heavy bool) bool {
	const hair = 1e-9 // against rounding in sums of the same numbers
	if a.plain > b.plain+hair || a.kg > b.kg+hair || (heavy && a.kg < b.kg-hair) {
		return false
	}
	if a.interruptingA < b.interruptingA || a.ratingA < b.ratingA || a.studs < b.studs ||
		a.carriesKg < b.carriesKg || a.poles > b.poles || a.spaces < b.spaces {
		return false
	}
	if m.must >= 0 && quantityOf(a, m.must) == 0 && quantityOf(b, m.must) > 0 {
		return false
	}
	for _, u := range a.uses {
		if m.articles[u.article].special() && u.quantity > quantityOf(b, u.article)+hair {
			return false
		}
	}
	// A quantity break can make more of an article cheaper, but never dearer than what it adds; less of
	// a special article never costs more, so nothing else has to be compared.
	return true
}

// quantityOf returns how much of an article an option uses.
func quantityOf(o *option, article int) float64 {
	for _, u := range o.uses {
		if u.article == article {
			return u.quantity
		}
	}
	return 0
}

// prune returns the options that no other dominates, in their order; of equals the first stays.
func (m *market) prune(options []option, heavy bool) []option {
	var kept []option
	for i := range options {
		kept = m.keep(kept, &options[i], heavy)
	}
	return kept
}

// keep adds an option to those kept, unless one of them dominates it, and drops those it dominates. The
// option's uses are copied where it is kept.
func (m *market) keep(kept []option, o *option, heavy bool) []option {
	for i := range kept {
		if m.dominates(&kept[i], o, heavy) {
			return kept
		}
	}
	survivors := kept[:0]
	for i := range kept {
		if !m.dominates(o, &kept[i], heavy) {
			survivors = append(survivors, kept[i])
		}
	}
	clone := *o
	clone.uses = slices.Clone(o.uses)
	return append(survivors, clone)
}

// leastOf returns the option of least value among those that serve, +Inf where none does.
func leastOf(options []option, serves func(*option) bool, value func(*option) float64) float64 {
	least := math.Inf(1)
	for i := range options {
		if serves == nil || serves(&options[i]) {
			least = math.Min(least, value(&options[i]))
		}
	}
	return least
}

func floorOf(o *option) float64 { return o.floor }

func massOf(o *option) float64 { return o.kg }
