// Package bench lays a problem out, as on a workbench: everything in the catalogue that can serve, with its options and
// figures, and the cores that can be put together from it.
package bench

import (
	"cartwright/catalog"
	"cartwright/optimize/chassis"
	"cartwright/optimize/energy"
	"cartwright/optimize/energy/array"
	"cartwright/optimize/energy/year"
	"cartwright/optimize/market"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// Supply is a number of equal inverters that serve the loads, and all that follows from them alone.
type Supply struct {
	Inverter *catalog.Inverter
	Units    int
	NeedWh   float64 // usable energy the autonomy asks for
	YearWh   float64 // what the bus gives in a year
	UnitA    float64 // the most that flows to or from one unit
	BusA     float64 // UnitA of all units, and the dc loads
	DrawA    float64 // what all units at full load and the dc loads draw from the bus at its lowest voltage
	PeakA    float64 // what they draw for a moment, while the loads at their peak start one more
	ChargerA float64 // of all chargers together, at the bus voltage
	Main     []market.Option
	Feeder   []market.Option

	Array      *array.Array    // nil: none
	ArrayKg    float64         // on the cart
	Solar      []market.Option // the run of each input
	Fuses      []market.Option // one for each string of modules; nil: none is needed
	Sun        *year.Hours     // nil without sun; what the array gives is filled in by Bench.Hours
	sunStoreWh float64         // what of a store limits.served needs, where it is known: see StoreWh
	sunStored  bool            // it is known
}

// Stack is a kind of battery string that fits the bus.
type Stack struct {
	Battery     *catalog.Battery
	Position    int // in the catalogue
	Article     int // in the market
	Group       int // those it may share a bus with
	Series      int
	UsableWh    float64 // of one string
	Kg          float64 // of one string, without its cable
	ShortA      float64 // of one string
	Conductance float64
	DischargeA  float64
	PeakA       float64
	ChargeA     float64
	Caps        []int              // modules that fit on a shelf that holds nothing else, by shelf
	Columns     [][]chassis.Column // how they may stand there, by shelf
	Most        int                // strings that the shelves, their max_mass, the maker and the market allow
	// Options are those for the least bus current of any supply, with one device per path: every other supply has
	// some of these.
	Options []market.Option
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
	mounts      bool    // some load centre states the mount of its breakers
	Centre      bool    // a load centre is needed: its rating must carry the feeders, its spaces hold the breakers
	DcA         float64 // peak of the loads on the bus itself
	DCCircuits  int     // circuits on the bus, each with a stud
	ShelfKg     []float64
	Tips        tipping
	support     support
	Reasons     []string // what the catalogue has nothing for
	Partial     bool     // for a cart on the way to a plan: the loads' peaks need not be met yet (see Short)

	// RoundingCents is how far a cost that is rounded line by line can be from the unrounded one.
	RoundingCents float64

	// Owned are the articles of which some are owned, Kept those of which some have to stay on the cart.
	Owned, Kept []int
	OwnedWh     float64 // usable energy of the batteries that are owned

	before *Before
}

// ThreeWire is the ac_v of an inverter with two legs.
const ThreeWire = "120/240"
