package catalog

import (
	"math"
	"time"

	"cartwright/catalog/problem"
)

// Cents is an amount of money in hundredths of the scenario's currency. Money is never a float once it
// is a sum on a bill.
type Cents int64

// CentsFrom returns the nearest whole cent to an amount in currency units, halves away from zero.
func CentsFrom(amount float64) Cents { return Cents(math.Round(amount * 100)) }

// Units returns the amount in currency units.
func (c Cents) Units() float64 { return float64(c) / 100 }

// A Kind is one of the eight kinds of part, named as in the bill: "battery", "inverter", "cable",
// "device", "busbar", "casters", "solar", "sundry".
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
)

// Part is what every row of a catalogue has. For a cable Price and MassKg are zero: see Cable.
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

// Battery is a battery module.
type Battery struct {
	Part
	Chemistry      string
	Group          string  // parallel_group; "" shares a bus only with its own kind
	NominalV       float64 // of one module, as all voltages here
	MinV, MaxV     float64
	CapacityWh     float64 // nameplate
	UsableFraction float64 // 0..1
	RoundTrip      float64 // 0..1, energy out per energy in
	MaxDischargeA  float64
	PeakDischargeA float64 // default: MaxDischargeA
	MaxChargeA     float64
	ResistanceOhm  float64 // of the module
	ShortCircuitA  float64 // default: MaxV / ResistanceOhm
	CycleLife      float64 // 0: not stated
	MaxParallel    int     // 0: not stated, no limit of the maker's
	MaxSeries      int
	LengthM        float64
	WidthM         float64
	HeightM        float64
}

// Inverter is an inverter, perhaps with a charger and a solar input.
type Inverter struct {
	Part
	DCMinV, DCMaxV float64
	ACV            string // "120", "230" or "120/240"
	ContinuousW    float64
	SurgeW         float64
	LegW           float64 // of each leg; default half of ContinuousW for 120/240, else ContinuousW
	Efficiency     float64 // 0..1
	IdleW          float64
	ChargerA       float64 // dc amperes at bus voltage; 0: no charger
	SolarMaxW      float64
	SolarMaxVocV   float64
	MPPTMinV       float64
	MPPTMaxV       float64
	MPPTMaxA       float64
	MPPTInputs     int
	MaxUnits       int // how many may work side by side
}

// Cable is a cable of one size, bought by length.
type Cable struct {
	Part
	CentsPerM float64 // unrounded; a line of a bill is rounded to whole cents
	// LowCentsPerM and HighCentsPerM bound a price that is a guess, as PriceLow and PriceHigh of a Part;
	// both zero where the row states none.
	LowCentsPerM, HighCentsPerM float64
	KgPerM                      float64
	Size                        Size
	Material                    string  // "copper" or "aluminium"
	InsulationC                 float64 // 60, 70, 75, 90 or 105
	EndPrice                    Cents   // one crimped end
	GroundOnly                  bool    // green: for grounding conductors only
}

// Device is a fuse or a breaker.
type Device struct {
	Part
	Type            string // "fuse" or "breaker"
	Class           string
	RatingA         float64
	Poles           int
	MaxDCV          float64 // 0: not rated for direct current
	InterruptingDCA float64
	MaxACV          float64 // 0: not rated for alternating current
	InterruptingACA float64
	TerminalC       float64
}

// Busbar is a positive and negative pair of bus bars.
type Busbar struct {
	Part
	RatingA float64
	Studs   int
}

// Casters is a set of casters.
type Casters struct {
	Part
	SetOf    int
	RatingKg float64 // of each caster
	Brakes   int     // how many of the set have brakes
	Swivel   int     // how many of the set swivel
	WheelM   float64 // wheel diameter
}

// Solar is a solar module.
type Solar struct {
	Part
	Watts          float64
	VocV, VmpV     float64
	IscA, ImpA     float64
	VocTempPctPerC float64
}

// Sundry is any other part, found by the role it plays.
type Sundry struct {
	Part
	Role    string
	RatingA float64 // 0: none stated
	Spaces  int     // breaker spaces of a load centre; 0: none stated
}

// Offer is one price of one part at one vendor. A quantity break is an offer with a higher MinQty.
type Offer struct {
	PartID    string
	Vendor    string
	Price     Cents   // each; unused for a cable
	CentsPerM float64 // for a cable
	MinQty    float64 // pieces, or metres of cable
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
	Offers    []Offer
}
