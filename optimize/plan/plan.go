// Package plan is the shape of a finished shopping plan: which parts, how many, where they stand and
// how they are wired. It is what the optimizer hands out, what the audit checks and what is printed;
// it computes nothing.
package plan

// Plan is one complete, buildable shopping plan.
type Plan struct {
	Rank             int
	Cost             Money            // spend + shipping + tax - credit
	Spend            Money            // sum of the bill's bought lines
	Shipping         Money            // once per vendor
	ShippingBy       map[string]Money // the part of Shipping that each vendor charges
	Tax              Money            // on spend and shipping
	Credit           Money            // for what is sold
	UsableKWh        float64
	AutonomyH        float64
	MassKg           float64
	CostPerUsableKWh float64
	// CostPerExtraKWh is cost / (usable kWh - usable kWh owned today); 0 where there are no more than are owned.
	CostPerExtraKWh float64
	// CostPerLifetimeKWh is cost / sum(usable kWh * cycles until worn or old); 0 where a battery states neither.
	CostPerLifetimeKWh float64
	Proven             bool // proved: no better plan exists that has another core than the plans ranked before it
	Core               Core
	Bill               []Line
	Runs               []Run
	Shelves            []Shelf
	Casters            Casters
	Balance            Balance
	Circuits           []Circuit // where there are circuits, in the scenario's order
	Legs               []LegLoad // where each "auto" load was put
	Limits             []Limit
	Audit              Audit
	Year               *Year // nil without sun
}

// Core is what makes a plan a different plan.
type Core struct {
	Batteries []CoreBattery // in catalogue order
	Inverter  CoreInverter
	Solar     []CoreSolar
}

// CoreBattery is a number of equal strings.
type CoreBattery struct {
	Part    string
	Strings int
	Series  int
}

// CoreInverter is a number of equal inverters in parallel.
type CoreInverter struct {
	Part  string
	Units int
}

// CoreSolar is a solar array: modules in series, strings of them in parallel on each input, inputs all alike.
type CoreSolar struct {
	Part     string
	Series   int
	Parallel int
	Inputs   int
}

// Line is one part (from one vendor) on the bill. A crimped cable end is a line of kind "cable-end" that
// names its cable, the end of a conduit one of kind "conduit-end" that names the conduit.
type Line struct {
	Part      string
	Kind      string
	Quantity  float64 // installed
	Unit      string  // "each" or "m"
	Have      float64 // of the installed, how many are owned already
	Buy       float64
	Sell      float64
	Vendor    string
	UnitPrice float64
	Line      Money // buy at unit price, to the cent
	// Credit is what selling brings, to the cent; it is not part of the amount Line.
	Credit Money
}

// Run is a number of equally wired cable paths. A bond has only a ground: no cable, conductors or device, one set,
// and its currents and drop are 0.
type Run struct {
	Run           string // "string", "main", "feeder", "branch", "dc", "inlet", "solar" or "bond"
	Name          string // the circuit of a branch or a dc circuit
	Battery       string // whose string it is
	Cable         string
	Ground        string // cable of the grounding conductor
	Sets          int
	Device        string // "" where the inverter's own breaker serves
	Count         int
	LengthM       float64 // one way
	Conductors    int     // of one set, the ground not counted
	DesignA       float64
	RequiredA     float64 // least ampacity and device rating
	AllowedA      float64 // corrected ampacity
	DeviceA       float64
	DropPct       float64
	DropLimitPct  float64
	FaultA        float64
	InterruptingA float64
	// BoughtM is the length bought for each conductor, with slack and in whole steps; LengthM without them.
	BoughtM float64
	// Links is how many series links one string has. A link is one conductor per set, LinkM long before slack and
	// steps, with two ends; LinkM is 0 where there are no links.
	Links int
	LinkM float64
	// Devices is how many of Device are bought for one path: 1, or 0 where the inverter's or the battery's own serves
	// or none is needed, or 2 where a string's cable is protected at both ends and neither device is built in.
	Devices int
	// OwnDevice says that the battery's own device protects the path at its terminal. Device is then the one at the
	// other end, if there is one, and DeviceA and InterruptingA are its figures; else they are the battery's own.
	OwnDevice bool
	Conduit   string // part
	// StringFuse is the part that protects each string of solar modules on the path, StringFuses how many there are.
	StringFuse  string
	StringFuses int
}

// Circuit is what is connected to a circuit.
type Circuit struct {
	Circuit  string
	Leg      string   // "A", "B", "both", or "" on dc and on a supply with a single leg
	Loads    []string // in the scenario's order
	CurrentA float64  // what can be on together, continuous loads at 125 % under nec
	DeviceA  float64
}

// Year is what the sun's year comes to, hour by hour.
type Year struct {
	Served        float64 // share of what the bus is asked for that comes from sun and store
	ShortH        float64 // hours in which something is short
	LongestShortH float64
	WallKWh       float64 // what is short, taken from the wall
	SpilledKWh    float64 // from the array, but neither loads nor store could take it
	ClippedKWh    float64 // above what the inverters take from the array
	SunKWh        float64 // what the array gives, ClippedKWh not counted
	Cycles        float64 // energy drawn from the store over its usable energy
	Months        []Month // January first
	// Saved is what the wall's energy would have cost for what sun and store serve; nil without a grid price.
	Saved *Money
	// PaybackYears is cost over saved; nil where nothing is saved.
	PaybackYears *float64
}

// Month is a month's energy in kWh.
type Month struct {
	Sun     float64
	Load    float64
	Short   float64
	Spilled float64
}

// Shelf is what stands on one shelf.
type Shelf struct {
	Shelf     string
	Batteries []ShelfModules
	MassKg    float64
}

// ShelfModules is a number of equal modules on a shelf.
type ShelfModules struct {
	Part    string
	Modules int
}

// Casters is the chosen set.
type Casters struct {
	Part         string
	Count        int
	LoadEachKg   float64 // with the caster factor, one wheel in the air
	RatingEachKg float64
}

// Balance is where the centre of mass is and when the cart tips.
type Balance struct {
	CGHeightMM  float64
	TiltDeg     float64
	RequiredDeg float64
}

// LegLoad says on which leg a load was put.
type LegLoad struct {
	Load string
	Leg  string
}

// Limit is one requirement, what the plan has of it, and what is left. Slack is never negative in a
// plan: it is how far the value may still go.
type Limit struct {
	Name    string
	Value   float64
	Limit   float64
	Unit    string
	Slack   float64
	Binding bool
}

// Audit is the outcome of the independent re-check.
type Audit struct {
	Passed bool
	Checks []Check
}

// Check is one limit or sum recomputed from the parts.
type Check struct {
	Name   string
	Passed bool
	Value  float64
	Limit  float64
	Unit   string
	Source string
	// Detail says in words whose value it is (which run, which line) and what is wrong where it failed.
	Detail string
}
