package catalog

import (
	"time"

	"cartwright/catalog/problem"
)

// A Kind is one of the ten kinds of part, named as in the bill: "battery", "inverter", "cable",
// "device", "busbar", "casters", "solar", "sundry", "conduit", "section".
type Kind string

// The kinds of part, in the order of a bill.
const (
	KindBattery  Kind = "battery"
	KindInverter Kind = "inverter"
	KindCable    Kind = "cable"
	KindDevice   Kind = "device"
	KindBusbar   Kind = "busbar"
	KindCasters  Kind = "casters"
	KindSolar    Kind = "solar"
	KindSundry   Kind = "sundry"
	KindConduit  Kind = "conduit"
	KindSection  Kind = "section"
)

// Answer is what a row answers to a question of yes or no.
type Answer string

// The answers. An empty cell is Unknown.
const (
	Unknown Answer = ""
	Yes     Answer = "yes"
	No      Answer = "no"
)

// Part is what every row of a catalogue has. For what is bought by length (cable, conduit, section) Price and
// MassKg are zero; the type of the kind has them a metre.
type Part struct {
	ID     string
	Name   string
	Price  Cents // each; for casters, the set; for bus bars, the pair
	MassKg float64
	Vendor string
	AsOf   time.Time // zero: not stated
	Notes  string
	// PriceLow and PriceHigh bound a price that is a guess; both zero where the row states none.
	PriceLow, PriceHigh Cents
	Pos                 problem.Pos // where the row stands
}

// Base returns the part itself, so that code can hold parts of any kind by their common columns.
func (p *Part) Base() *Part { return p }

// Offer is one price of one part at one vendor. A quantity break is an offer with a higher MinQty.
type Offer struct {
	PartID    string
	Vendor    string
	Price     Cents   // each; unused for what is bought by length
	CentsPerM float64 // for what is bought by length
	MinQty    float64 // pieces, or metres
	Shipping  Cents   // once per order from that vendor: the largest among the lines bought there
	AsOf      time.Time
	Notes     string
	Pos       problem.Pos
}

// Catalog is everything that can be bought. Parts stand in the order of their files' rows.
type Catalog struct {
	Batteries []Battery
	Inverters []Inverter
	Cables    []Cable
	Devices   []Device
	Busbars   []Busbar
	Casters   []Casters
	Solar     []Solar
	Sundries  []Sundry
	Conduits  []Conduit
	Sections  []Section
	Offers    []Offer

	Own      []OwnColumn       // columns of a person's own, which were not read
	Warnings []problem.Problem // what is possible, but not plausible
}
