// Package plan is the shape of a finished shopping plan: which parts, how many, where they stand and
// how they are wired. It is what the optimizer hands out, what the audit checks and what is printed;
// it computes nothing. Field names in JSON are the published format, version 1.
package plan

// Plan is one complete, buildable shopping plan.
type Plan struct {
	Rank             int     `json:"rank"`
	Cost             Money   `json:"cost"`     // spend + shipping + tax - credit
	Spend            Money   `json:"spend"`    // sum of the bill's bought lines
	Shipping         Money   `json:"shipping"` // once a vendor
	Tax              Money   `json:"tax"`      // on spend and shipping
	Credit           Money   `json:"credit"`   // for what is sold
	UsableKWh        float64 `json:"usable_kwh"`
	AutonomyH        float64 `json:"autonomy_h"`
	MassKg           float64 `json:"mass_kg"`
	CostPerUsableKWh float64 `json:"cost_per_usable_kwh"`
	// CostPerLifetimeKWh is cost / sum(cycle life * usable kWh); 0 where a battery states no cycle life.
	CostPerLifetimeKWh float64   `json:"cost_per_lifetime_kwh,omitempty"`
	Proven             bool      `json:"proven"` // no better plan with another core exists
	Core               Core      `json:"core"`
	Bill               []Line    `json:"bill"`
	Runs               []Run     `json:"runs"`
	Shelves            []Shelf   `json:"shelves"`
	Casters            Casters   `json:"casters"`
	Balance            Balance   `json:"balance"`
	Circuits           []Circuit `json:"circuits,omitempty"` // where there are circuits, in the scenario's order
	Legs               []LegLoad `json:"legs,omitempty"`     // where each "auto" load was put
	Limits             []Limit   `json:"limits"`
	Audit              Audit     `json:"audit"`
	Year               *Year     `json:"year,omitempty"` // nil without sun
}

// Core is what makes a plan a different plan.
type Core struct {
	Batteries []CoreBattery `json:"batteries"` // in catalogue order
	Inverter  CoreInverter  `json:"inverter"`
	Solar     []CoreSolar   `json:"solar"`
}

// CoreBattery is a number of equal strings.
type CoreBattery struct {
	Part    string `json:"part"`
	Strings int    `json:"strings"`
	Series  int    `json:"series"`
}

// CoreInverter is a number of equal inverters side by side.
type CoreInverter struct {
	Part  string `json:"part"`
	Units int    `json:"units"`
}

// CoreSolar is a solar array: modules in series, strings of them in parallel on each input, inputs all alike.
type CoreSolar struct {
	Part     string `json:"part"`
	Series   int    `json:"series"`
	Parallel int    `json:"parallel"`
	Inputs   int    `json:"inputs"`
}

// Line is one part (from one vendor) on the bill. A crimped cable end is a line of kind "cable-end" that
// names its cable.
type Line struct {
	Part      string  `json:"part"`
	Kind      string  `json:"kind"`
	Quantity  float64 `json:"quantity"` // installed
	Unit      string  `json:"unit"`     // "each" or "m"
	Have      float64 `json:"have"`     // of the installed, how many are owned already
	Buy       float64 `json:"buy"`
	Sell      float64 `json:"sell"`
	Vendor    string  `json:"vendor"`
	UnitPrice float64 `json:"unit_price"`
	Line      Money   `json:"line"` // buy at unit price, to the cent
	// Credit is what selling brings, to the cent; it is no part of Line.
	Credit Money `json:"credit,omitempty"`
}

// Run is a number of equally wired cable paths.
type Run struct {
	Run           string  `json:"run"`               // "string", "main", "feeder", "branch", "dc", "inlet", "solar" or "bond"
	Name          string  `json:"name,omitempty"`    // the circuit of a branch or a dc circuit
	Battery       string  `json:"battery,omitempty"` // whose string it is
	Cable         string  `json:"cable"`
	Ground        string  `json:"ground,omitempty"` // cable of the grounding conductor
	Sets          int     `json:"sets"`
	Device        string  `json:"device"` // "" where the inverter's own breaker serves
	Count         int     `json:"count"`
	LengthM       float64 `json:"length_m"`   // one way
	Conductors    int     `json:"conductors"` // beside the ground, of one set
	DesignA       float64 `json:"design_a"`
	RequiredA     float64 `json:"required_a"` // least ampacity and device rating
	AllowedA      float64 `json:"allowed_a"`  // corrected ampacity
	DeviceA       float64 `json:"device_a"`
	DropPct       float64 `json:"drop_pct"`
	DropLimitPct  float64 `json:"drop_limit_pct"`
	FaultA        float64 `json:"fault_a"`
	InterruptingA float64 `json:"interrupting_a"`
	// BoughtM is the length bought for each conductor, with slack and in whole steps; LengthM without them.
	BoughtM float64 `json:"bought_m,omitempty"`
	// Links is how many series links one string has, each a conductor of LinkM with two ends.
	Links int     `json:"links,omitempty"`
	LinkM float64 `json:"link_m,omitempty"`
	// Devices is how many devices one path has: 0 where the inverter's or the battery's own serves or none is
	// needed, 2 where a string's cable is protected at both ends.
	Devices int `json:"devices,omitempty"`
	// OwnDevice tells that the battery's own device protects the path at its terminal.
	OwnDevice bool   `json:"own_device,omitempty"`
	Conduit   string `json:"conduit,omitempty"` // part
	// StringFuse protects each of StringFuses strings of modules on the path; solar only.
	StringFuse  string `json:"string_fuse,omitempty"`
	StringFuses int    `json:"string_fuses,omitempty"`
}

// Circuit is what is connected to a circuit.
type Circuit struct {
	Circuit  string   `json:"circuit"`
	Leg      string   `json:"leg"`   // "A", "B", "both", or "" for one-phase supplies and dc
	Loads    []string `json:"loads"` // in the scenario's order
	CurrentA float64  `json:"current_a"`
	DeviceA  float64  `json:"device_a"`
}

// Year is what the sun's year comes to, hour by hour.
type Year struct {
	Served        float64 `json:"served"`  // share of what the bus is asked for that comes from sun and store
	ShortH        float64 `json:"short_h"` // hours in which something is short
	LongestShortH float64 `json:"longest_short_h"`
	WallKWh       float64 `json:"wall_kwh"` // what is short, from the wall
	SpilledKWh    float64 `json:"spilled_kwh"`
	ClippedKWh    float64 `json:"clipped_kwh"` // above what the inverter takes from an array
	SunKWh        float64 `json:"sun_kwh"`     // of the array, after what is clipped
	Cycles        float64 `json:"cycles"`      // energy drawn from the store over its usable energy
	Months        []Month `json:"months"`      // January first
	// Saved is what the wall's energy would have cost for what sun and store serve; nil without a grid price.
	Saved *Money `json:"saved,omitempty"`
	// PaybackYears is cost over saved; nil where nothing is saved.
	PaybackYears *float64 `json:"payback,omitempty"`
}

// Month is a month's energy in kWh.
type Month struct {
	Sun     float64 `json:"sun"`
	Load    float64 `json:"load"`
	Short   float64 `json:"short"`
	Spilled float64 `json:"spilled"`
}

// Shelf is what stands on one shelf.
type Shelf struct {
	Shelf     string         `json:"shelf"`
	Batteries []ShelfModules `json:"batteries"`
	MassKg    float64        `json:"mass_kg"`
}

// ShelfModules is a number of equal modules on a shelf.
type ShelfModules struct {
	Part    string `json:"part"`
	Modules int    `json:"modules"`
}

// Casters is the chosen set.
type Casters struct {
	Part         string  `json:"part"`
	Count        int     `json:"count"`
	LoadEachKg   float64 `json:"load_each_kg"` // with the caster factor, one wheel in the air
	RatingEachKg float64 `json:"rating_each_kg"`
}

// Balance is where the centre of mass is and when the cart tips.
type Balance struct {
	CGHeightMM  float64 `json:"cg_height_mm"`
	TiltDeg     float64 `json:"tilt_deg"`
	RequiredDeg float64 `json:"required_deg"`
}

// LegLoad tells on which leg a load was put.
type LegLoad struct {
	Load string `json:"load"`
	Leg  string `json:"leg"`
}

// Limit is one requirement, what the plan has of it, and what is left. Slack is never negative in a
// plan: it is how far the value may still go.
type Limit struct {
	Name    string  `json:"name"`
	Value   float64 `json:"value"`
	Limit   float64 `json:"limit"`
	Unit    string  `json:"unit"`
	Slack   float64 `json:"slack"`
	Binding bool    `json:"binding"`
}

// Audit is the outcome of the independent re-check.
type Audit struct {
	Passed bool    `json:"passed"`
	Checks []Check `json:"checks"`
}

// Check is one limit or sum recomputed from the parts.
type Check struct {
	Name   string  `json:"name"`
	Passed bool    `json:"passed"`
	Value  float64 `json:"value"`
	Limit  float64 `json:"limit"`
	Unit   string  `json:"unit,omitempty"`
	Source string  `json:"source"`
	// Detail says in words whose value it is (which run, which line) and what is wrong where it failed.
	Detail string `json:"detail,omitempty"`
}
