package scenarios

import (
	"strings"

	"cartwright/catalog"
	"cartwright/catalog/problem"
)

// Rules names a rule set for cables and devices.
type Rules string

// The two rule sets.
const (
	NEC Rules = "nec"
	IEC Rules = "iec"
)

// Units names the units of answers.
type Units string

// The units.
const (
	US     Units = "us"
	Metric Units = "metric"
)

// Leg names the leg of a three-wire 120/240 V supply that a load is on.
type Leg string

// The legs. Both is a 240 V load, half on each leg; the program chooses a leg for Auto.
const (
	LegA    Leg = "A"
	LegB    Leg = "B"
	LegBoth Leg = "both"
	LegAuto Leg = "auto"
)

// Bus is the window of the direct-current bus, in volts.
type Bus struct {
	NominalV, LowV, HighV float64
}

// Load is one line of the load list.
type Load struct {
	Name        string
	Watts       float64 // of one
	Count       int     // how many; all are on together
	PowerFactor float64 // watts / volt-amperes, above 0 to 1; default 1
	Leg         Leg
	Circuit     string // the name of one of Circuits; "": the program chooses
	AllDay      bool   // no from and to
	FromMin     int    // minutes after midnight; From > To goes past midnight
	ToMin       int
	Duty        float64 // 0..1
	Start       float64 // multiple of Watts on starting; 1: no inrush
	DC          bool    // on the bus itself, not through the inverter
}

// Measured is a load profile that was measured: mean watts in steps of StepMin minutes, whole days.
type Measured struct {
	StepMin int
	LegA    []float64 // watts; all of the load where ByLeg is false
	LegB    []float64
	ByLeg   bool // the file has watts_a and watts_b
	// StartMin is the time of day of the first step, in minutes after midnight.
	StartMin int
}

// Supply is what the cart is charged from: an outlet of some volts behind a device.
type Supply struct {
	Volts   float64 // 120 or 240 under the nec rules, 230 under the iec rules
	DeviceA float64 // a standard rating
	Pos     problem.Pos
}

// Recharge asks that the energy used over the autonomy can be put back within some hours.
type Recharge struct {
	WithinH float64
	From    string  // "grid"
	Supply  *Supply // nil: not stated
}

// Mass is a thing of fixed mass on the cart. Height is from the floor, offset sideways from the middle.
type Mass struct {
	Name             string
	MassKg           float64
	HeightM, OffsetM float64
}

// Limits are what a plan may not exceed.
type Limits struct {
	MassKg  float64       // +Inf: not stated
	Budget  catalog.Cents // math.MaxInt64: not stated
	TiltDeg float64
	Reserve float64 // 0..1, share of the usable energy kept back
	PushN   float64 // 0: not stated
	Slope   float64 // rise over run
	// SharedProtocols asks that every battery has a protocol in common with the inverter.
	SharedProtocols bool
	Served          float64 // 0..1, least share of a year's energy that the sun serves; 0: not stated
}

// Need is a sundry the cart must have.
type Need struct {
	Role    string
	Count   int
	RatingA float64 // 0: any
	Pos     problem.Pos
}

// Holding is a part that is owned, and perhaps for sale.
type Holding struct {
	PartID string
	Count  float64 // pieces, or metres of what is bought by length
	// ByLength says that the count was written as a length.
	ByLength bool
	Ends     int            // ends of a cable or conduit that are owned beside its length
	Sell     *catalog.Cents // price for each; nil: not for sale. Of what is bought by length see SellCentsPerM
	// SellCentsPerM is the price of a metre of what is bought by length, where Sell is not nil.
	SellCentsPerM float64
	// Keep asks that at least Count of it stay on the cart.
	Keep bool
	Pos  problem.Pos
}

// Savings is money put aside.
type Savings struct {
	Now, PerMonth catalog.Cents
}

// Solver says how long to search, in seconds, and how many plans to rank.
type Solver struct {
	TimeLimitS float64
	Plans      int
}

// Scenario is everything a person wants of the cart. All quantities are in SI units, money in cents,
// fractions between 0 and 1.
type Scenario struct {
	File         string // scenario.yaml as it was opened; "" for a scenario made in code
	Dir          string // the folder it stands in; "" for an embedded demo
	Name         string
	Currency     string
	Rules        Rules
	Units        Units  // default us under the nec rules, else metric
	CatalogDir   string // "" for the embedded one; else a folder or a workbook, relative to the scenario's folder
	Bus          Bus
	Loads        []Load
	OneAtATime   [][]int   // indices into Loads: of each list never two are on at the same moment
	Measured     *Measured // nil unless the loads were measured
	AutonomyH    float64
	Recharge     *Recharge
	UseDays      float64 // days a year the cart is used; default 365
	Cart         Cart
	Limits       Limits
	CasterFactor float64
	ACFaultA     float64
	Cable        CableWish
	Runs         []Run
	Circuits     []Circuit
	Needs        []Need
	Have         []Holding
	Sold         catalog.Cents
	Tax          float64 // 0..1
	// GridCentsPerKWh is what a kilowatt-hour from the wall costs, not rounded; 0: not stated.
	GridCentsPerKWh float64
	Savings         *Savings
	Solver          Solver
	Sun             *Sun // nil: no modules

	Warnings []problem.Problem // what is possible, but not plausible

	places map[string]problem.Pos // of every value read, by its path in the file
}

// Pos returns the place of a value in the scenario's file, by its path: "limits.mass", "have[2].part",
// "circuits[0].receptacle.role". A value that the file leaves out has the place of the section it would
// stand in. Of a scenario made in code it returns the file alone.
func (s *Scenario) Pos(path string) problem.Pos {
	for {
		if pos, ok := s.places[path]; ok {
			return pos
		}
		cut := strings.LastIndexAny(path, ".[")
		if cut < 0 {
			break
		}
		path = path[:cut]
	}
	if pos, ok := s.places[""]; ok {
		return pos
	}
	return problem.Pos{File: s.File}
}

// Run returns the cable path of the given kind, or nil where the scenario names none: then that wiring
// is neither planned nor checked, and the plan says so.
func (s *Scenario) Run(kind RunKind) *Run {
	for i := range s.Runs {
		if s.Runs[i].Kind == kind {
			return &s.Runs[i]
		}
	}
	return nil
}
