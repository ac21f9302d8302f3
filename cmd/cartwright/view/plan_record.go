package view

import "cartwright/optimize/plan"

// The shape of a plan in JSON, format 1. Types whose values are all plain are converted as they stand, so
// that a field added to one of package plan does not build before it has a key here.

// planRecord is a whole plan.
type planRecord struct {
	Rank               int             `json:"rank"`
	Cost               plan.Money      `json:"cost"`
	Spend              plan.Money      `json:"spend"`
	Shipping           plan.Money      `json:"shipping"`
	Tax                plan.Money      `json:"tax"`
	Credit             plan.Money      `json:"credit"`
	UsableKWh          float64         `json:"usable_kwh"`
	AutonomyH          float64         `json:"autonomy_h"`
	MassKg             float64         `json:"mass_kg"`
	CostPerUsableKWh   float64         `json:"cost_per_usable_kwh"`
	CostPerExtraKWh    float64         `json:"cost_per_extra_kwh,omitempty"` // beyond what is owned
	CostPerLifetimeKWh float64         `json:"cost_per_lifetime_kwh,omitempty"`
	Proven             bool            `json:"proven"`
	Core               coreRecord      `json:"core"`
	Bill               []lineRecord    `json:"bill"`
	Runs               []runRecord     `json:"runs"`
	Shelves            []shelfRecord   `json:"shelves"`
	Casters            castersRecord   `json:"casters"`
	Balance            balanceRecord   `json:"balance"`
	Circuits           []circuitRecord `json:"circuits,omitempty"`
	Legs               []legRecord     `json:"legs,omitempty"`
	Limits             []limitRecord   `json:"limits"`
	Audit              checksRecord    `json:"audit"`
	Year               *yearRecord     `json:"year,omitempty"`
}

// whole returns a plan for JSON; nil for no plan.
func whole(p *plan.Plan) *planRecord {
	if p == nil {
		return nil
	}
	return &planRecord{
		Rank: p.Rank, Cost: p.Cost, Spend: p.Spend, Shipping: p.Shipping, Tax: p.Tax, Credit: p.Credit,
		UsableKWh: p.UsableKWh, AutonomyH: p.AutonomyH, MassKg: p.MassKg, CostPerUsableKWh: p.CostPerUsableKWh, CostPerExtraKWh: p.CostPerExtraKWh,
		CostPerLifetimeKWh: p.CostPerLifetimeKWh, Proven: p.Proven, Core: coreOf(p.Core),
		Bill:    each(p.Bill, func(l plan.Line) lineRecord { return lineRecord(l) }),
		Runs:    each(p.Runs, func(r plan.Run) runRecord { return runRecord(r) }),
		Shelves: each(p.Shelves, shelfOf), Casters: castersRecord(p.Casters), Balance: balanceRecord(p.Balance),
		Circuits: each(p.Circuits, circuitOf),
		Legs:     each(p.Legs, func(l plan.LegLoad) legRecord { return legRecord(l) }),
		Limits:   each(p.Limits, func(l plan.Limit) limitRecord { return limitRecord(l) }),
		Audit:    checksRecord{p.Audit.Passed, each(p.Audit.Checks, checkOf)}, Year: yearOf(p.Year),
	}
}

// each returns what becomes of every entry of a list. A list without entries is [], never null.
func each[T, R any](list []T, become func(T) R) []R {
	out := make([]R, 0, len(list))
	for _, one := range list {
		out = append(out, become(one))
	}
	return out
}

// coreRecord is what makes a plan a different plan.
type coreRecord struct {
	Batteries []coreBatteryRecord `json:"batteries"`
	Inverter  coreInverterRecord  `json:"inverter"`
	Solar     []coreSolarRecord   `json:"solar"`
}

type coreBatteryRecord struct {
	Part    string `json:"part"`
	Strings int    `json:"strings"`
	Series  int    `json:"series"`
}

type coreInverterRecord struct {
	Part  string `json:"part"`
	Units int    `json:"units"`
}

type coreSolarRecord struct {
	Part     string `json:"part"`
	Series   int    `json:"series"`
	Parallel int    `json:"parallel"`
	Inputs   int    `json:"inputs"`
}

func coreOf(c plan.Core) coreRecord {
	return coreRecord{
		Batteries: each(c.Batteries, func(b plan.CoreBattery) coreBatteryRecord { return coreBatteryRecord(b) }),
		Inverter:  coreInverterRecord(c.Inverter),
		Solar:     each(c.Solar, func(s plan.CoreSolar) coreSolarRecord { return coreSolarRecord(s) }),
	}
}

// lineRecord is a line of the bill.
type lineRecord struct {
	Part      string     `json:"part"`
	Kind      string     `json:"kind"`
	Quantity  float64    `json:"quantity"`
	Unit      string     `json:"unit"`
	Have      float64    `json:"have"`
	Buy       float64    `json:"buy"`
	Sell      float64    `json:"sell"`
	Vendor    string     `json:"vendor"`
	UnitPrice float64    `json:"unit_price"`
	Line      plan.Money `json:"line"`
	Credit    plan.Money `json:"credit,omitempty"`
}

// runRecord is a number of equally wired cable paths.
type runRecord struct {
	Run           string  `json:"run"`
	Name          string  `json:"name,omitempty"`
	Battery       string  `json:"battery,omitempty"`
	Cable         string  `json:"cable"`
	Ground        string  `json:"ground,omitempty"`
	Sets          int     `json:"sets"`
	Device        string  `json:"device"`
	Count         int     `json:"count"`
	LengthM       float64 `json:"length_m"`
	Conductors    int     `json:"conductors"`
	DesignA       float64 `json:"design_a"`
	RequiredA     float64 `json:"required_a"`
	AllowedA      float64 `json:"allowed_a"`
	DeviceA       float64 `json:"device_a"`
	DropPct       float64 `json:"drop_pct"`
	DropLimitPct  float64 `json:"drop_limit_pct"`
	FaultA        float64 `json:"fault_a"`
	InterruptingA float64 `json:"interrupting_a"`
	BoughtM       float64 `json:"bought_m,omitempty"`
	Links         int     `json:"links,omitempty"`
	LinkM         float64 `json:"link_m,omitempty"`
	Devices       int     `json:"devices,omitempty"`
	OwnDevice     bool    `json:"own_device,omitempty"`
	Conduit       string  `json:"conduit,omitempty"`
	StringFuse    string  `json:"string_fuse,omitempty"`
	StringFuses   int     `json:"string_fuses,omitempty"`
}
