// Package bench lays a problem out: all of the catalogue that can serve, with its options and figures, and
// the cores that can be put together from it.
package bench

import (
	"cartwright/catalog"
	"cartwright/optimize/chassis"
	"cartwright/optimize/energy"
	"cartwright/optimize/market"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// Supply is a number of equal inverters that serve the loads, and all that follows from them alone.
type Supply struct {
	Inverter *catalog.Inverter
	Units    int
	NeedWh   float64 // usable energy the autonomy asks for
	BusA     float64 // what all units draw from the bus at its lowest voltage
	DrawA    float64 // busA and the dc loads
	ChargerA float64 // of all chargers together, at the bus voltage
	Main     []market.Option
	Feeder   []market.Option
}

// Stack is a kind of battery string that fits the bus.
type Stack struct {
	Battery     *catalog.Battery
	Position    int // in the catalogue
	Series      int
	UsableWh    float64 // of one string
	Kg          float64 // of one string, without its cable
	ShortA      float64 // of one string
	Conductance float64
	DischargeA  float64
	ChargeA     float64
	Caps        []int // modules the floor of a shelf can hold, by shelf
	Most        int   // strings that the shelves, their mass and the maker allow at most
	Options     []market.Option
}

// Bench is a problem laid out for solving: whatever the catalogue holds that can serve, with its
// options and least costs.
type Bench struct {
	Scenario *scenarios.Scenario
	Catalog  *catalog.Catalog
	Rules    wiring.Rules
	Demand   *energy.Demand
	Market   *market.Market

	Supplies []Supply
	Stacks   []Stack
	Groups   [][]int // stacks that may share a bus, in catalogue order

	Fixed   []market.Slot // branches, receptacles and needs: the same in every plan
	Busbars []market.Option
	Casters []market.Option

	FixedBodies []chassis.Body
	FixedKg     float64 // frame and deck items
	SpacesTold  bool    // breaker spaces are counted
	DcA         float64 // peak of the loads on the bus itself
	Tips        tipping
	support     support
	Reasons     []string // what the catalogue has nothing for
	Partial     bool     // the loads\' peaks need not be met yet

	// RoundingCents is how far a cost that is rounded line by line can be from the unrounded one.
	RoundingCents float64

	before *Before
}

// ThreeWire is the ac_v of an inverter with two legs.
const ThreeWire = "120/240"
