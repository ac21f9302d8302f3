package market

import (
	"math"
	"slices"

	"cartwright/optimize/wiring"
)

// Use is a quantity of one article.
type Use struct {
	Article  int // position in the market
	Quantity float64
}

// Option is one way to fill a slot: a wired cable path, a set of casters, a receptacle.
type Option struct {
	Wire wiring.Option // of a run; else empty
	Part string        // of anything else; else ""
	Uses []Use
	Kg   float64

	InterruptingA float64 // of a run's device; +Inf where the inverter's own breaker serves
	RatingA       float64 // bus bars, sundries
	Studs         int     // bus bars
	CarriesKg     float64 // casters, of each wheel
	Poles         int     // breaker spaces taken
	Spaces        int     // breaker spaces offered; 0: not counted
	// Mount is that of a breaker, or of the breakers a load centre takes; a load centre with "" takes any.
	Mount   string
	FeedsA  float64 // of a feeder: what it adds to the rating the load centre needs
	BondMM2 float64 // of a main: the area of copper its bond needs; of a bond: the area it has

	plain float64 // cents with tax of what is bought at one fixed price
	Floor float64 // cents with tax below which this option cannot be had
}

// Times returns n equal options as one.
func (o Option) Times(n int) Option {
	x := float64(n)
	o.Uses = slices.Clone(o.Uses)
	for i := range o.Uses {
		o.Uses[i].Quantity *= x
	}
	o.Kg, o.plain, o.Floor = x*o.Kg, x*o.plain, x*o.Floor
	return o
}

// Purpose says what a slot of every plan is for, where there are rules beyond filling it.
type Purpose int

// The purposes. A through part carries all of the bus current.
const (
	Other Purpose = iota
	Branch
	DC
	Inlet
	Bond
	Through
	Centre
)

// Slot is something a plan needs a number of, each filled by one of several options.
type Slot struct {
	Name    string
	For     Purpose
	Count   int
	Options []Option
}

// Price fills in an option's mass and costs from its uses.
func (m *Market) Price(o *Option) {
	o.Kg, o.plain = 0, 0
	special := 0.0
	for _, u := range o.Uses {
		a := &m.Articles[u.Article]
		o.Kg += u.Quantity * a.kg
		if a.Special() {
			special += u.Quantity * a.FloorCents(m.Tax)
		} else {
			o.plain += (1 + m.Tax) * u.Quantity * a.Cents
		}
	}
	o.Floor = o.plain + special
}

// Wire makes an option from a wiring option. Its uses are put into the given scratch space.
func (m *Market) Wire(d *wiring.Duty, w wiring.Option, scratch []Use) Option {
	o := Option{Wire: w, Uses: scratch[:0]}
	if w.Cable != nil {
		o.add(m.Part(w.Cable.ID), d.LineM(w.Sets))
		o.add(m.End(w.Cable.ID), float64(d.LineEnds(w.Sets)))
	}
	if w.Ground != nil {
		o.add(m.Part(w.Ground.ID), d.GroundM())
		o.add(m.End(w.Ground.ID), float64(d.GroundEnds()))
	}
	if w.Device != nil {
		o.add(m.Part(w.Device.ID), float64(w.Devices))
		if w.Device.Type == "breaker" {
			o.Poles, o.Mount = w.Device.Poles, w.Device.Mount
		}
	}
	if w.Conduit != nil {
		o.add(m.Part(w.Conduit.ID), d.LengthM)
		o.add(m.End(w.Conduit.ID), conduitEnds)
	}
	o.InterruptingA = w.InterruptingA(d)
	m.Price(&o)
	return o
}

// conduitEnds is how many ends a run of conduit has.
const conduitEnds = 2

// add adds a quantity of an article to what the option uses.
func (o *Option) add(a *Article, quantity float64) {
	for i := range o.Uses {
		if o.Uses[i].Article == a.Position {
			o.Uses[i].Quantity += quantity
			return
		}
	}
	o.Uses = append(o.Uses, Use{a.Position, quantity})
}

// Use adds a quantity of a part to what an option uses.
func (m *Market) Use(o *Option, id string, quantity float64) { o.add(m.Part(id), quantity) }

// CanHave reports whether everything an option uses can be had.
func (m *Market) CanHave(o *Option) bool {
	for _, u := range o.Uses {
		if !m.Articles[u.Article].Available(u.Quantity) {
			return false
		}
	}
	return true
}

// Single makes an option of one part.
func (m *Market) Single(id string) Option {
	o := Option{Part: id, Uses: []Use{{m.Part(id).Position, 1}}}
	m.Price(&o)
	return o
}

// spaces is Spaces, +Inf where they are not counted.
func (o *Option) spaces() float64 {
	if o.Spaces == 0 {
		return math.Inf(1)
	}
	return float64(o.Spaces)
}

// needsMM2 is the area of copper that a main's bond needs, bondsMM2 that which a bond has. A bond is an option without
// a line cable.
func (o *Option) needsMM2() float64 {
	if o.Wire.Cable == nil {
		return 0
	}
	return o.BondMM2
}

// bondOf is the material of a bond; "" for any other option.
func (o *Option) bondOf() string {
	if o.Wire.Cable != nil || o.Wire.Ground == nil {
		return ""
	}
	return o.Wire.Ground.Material
}

func (o *Option) bondsMM2() float64 {
	if o.Wire.Cable != nil {
		return 0
	}
	return o.BondMM2
}

// QuantityOf returns how much of an article an option uses.
func QuantityOf(o *Option, article int) float64 {
	for _, u := range o.Uses {
		if u.Article == article {
			return u.Quantity
		}
	}
	return 0
}

// LeastOf returns the least value among the options that serve (all, where serves is nil); +Inf where none does.
func LeastOf(options []Option, serves func(*Option) bool, value func(*Option) float64) float64 {
	least := math.Inf(1)
	for i := range options {
		if serves == nil || serves(&options[i]) {
			least = math.Min(least, value(&options[i]))
		}
	}
	return least
}

// FloorOf returns the cents, with tax, below which an option cannot be had.
func FloorOf(o *Option) float64 { return o.Floor }

// MassOf returns the mass of an option in kg.
func MassOf(o *Option) float64 { return o.Kg }
