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

// Leg names the leg of a three-wire 120/240 V supply a load hangs on.
type Leg string

// The legs. Both is a 240 V load, half on each; Auto is put on a leg by the program.
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
	Name    string
	Watts   float64 // of one
	Count   int
	Leg     Leg
	AllDay  bool // no from and to
	FromMin int  // minutes after midnight; From > To goes past midnight
	ToMin   int
	Duty    float64 // 0..1
	Start   float64 // multiple of Watts on starting; 1: no inrush
	DC      bool    // on the bus itself, not through the inverter
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

// Recharge asks that the energy of the autonomy can be put back within some hours.
type Recharge struct {
	WithinH float64
	From    string // "grid"
}

// Mass is a thing of fixed mass on the cart. Height is from the floor, offset sideways from the middle.
type Mass struct {
	Name             string
	MassKg           float64
	HeightM, OffsetM float64
}

// Shelf is a shelf that battery modules stand on.
type Shelf struct {
	Name         string
	ElevationM   float64 // from the floor
	LengthM      float64
	DepthM       float64
	ClearHeightM float64
	MaxMassKg    float64 // +Inf: not stated
	GapM         float64 // between modules
}

// Backboard carries the inverters, devices, bus bars, sundries and cable.
type Backboard struct {
	ElevationM, OffsetM float64
}

// Cart is the frame that the parts stand on.
type Cart struct {
	Casters           int
	WheelbaseM        float64
	TrackM            float64
	CasterMassHeightM float64
	Frame             Mass
	DeckItems         []Mass
	Shelves           []Shelf
	Backboard         Backboard
}

// Limits are what a plan may not exceed.
type Limits struct {
	MassKg  float64       // +Inf: not stated
	Budget  catalog.Cents // math.MaxInt64: not stated
	TiltDeg float64
	Reserve float64 // 0..1 of the usable energy kept back
	PushN   float64 // 0: not stated
	Slope   float64 // rise over run
}

// RunKind names what a cable path is for.
type RunKind string

// The runs. A solar run belongs to a later room.
const (
	RunString RunKind = "string"
	RunMain   RunKind = "main"
	RunFeeder RunKind = "feeder"
	RunBranch RunKind = "branch"
)

// Run is the cable path of the strings, of the inverters or of the feeder.
type Run struct {
	Kind        RunKind
	LengthM     float64
	AmbientC    float64
	Bundled     int     // current-carrying conductors in the bundle
	TerminalC   float64 // 0: not stated, by rule
	Drop        float64 // 0..1 of nominal volts
	OwnBreakerA float64 // 0: none; the inverter's own breaker, nothing is bought
	Pos         problem.Pos
}

// Receptacle is what a circuit ends in.
type Receptacle struct {
	Role    string
	RatingA float64 // 0: not stated
	Count   int
}

// Circuit is one branch circuit behind the load centre.
type Circuit struct {
	Name       string
	Volts      float64
	DeviceA    float64
	LengthM    float64
	Neutral    bool
	TerminalC  float64 // 0: not stated, by rule
	AmbientC   float64
	Bundled    int
	Drop       float64
	Receptacle *Receptacle
	Pos        problem.Pos
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
	Count  float64 // metres for a cable
	// ByLength tells that the count was written as a length: right for a cable, and for nothing else.
	ByLength bool
	Ends     int            // crimped ends of a cable that are owned beside its length
	Sell     *catalog.Cents // price for each; nil: not for sale. For a cable see SellPerM
	// SellCentsPerM is the price of a metre of owned cable, where Sell is not nil.
	SellCentsPerM float64
	Pos           problem.Pos
}

// Savings is money put aside.
type Savings struct {
	Now, PerMonth catalog.Cents
}

// Solver holds how long to try and how many plans to rank.
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
	CatalogDir   string // "" for the embedded one; else as written, relative to the scenario's folder
	Bus          Bus
	Loads        []Load
	Measured     *Measured // nil unless the loads were measured
	AutonomyH    float64
	Recharge     *Recharge
	Cart         Cart
	Limits       Limits
	CasterFactor float64
	ACFaultA     float64
	Runs         []Run
	Circuits     []Circuit
	Needs        []Need
	Have         []Holding
	Sold         catalog.Cents
	Tax          float64 // 0..1
	Savings      *Savings
	Solver       Solver

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
