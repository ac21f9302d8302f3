package scenarios

import (
	"fmt"
	"io/fs"
	"math"
	"regexp"

	"cartwright/catalog/problem"
	"cartwright/catalog/quantity"
)

// Defaults of values that a scenario may leave out, in SI. Where a source is known it stands beside the
// number, else it is common practice and has none.
const (
	defaultCurrency          = "USD"
	defaultCasters           = 4
	defaultCasterMassHeightM = 0.080
	defaultTiltDeg           = 10.0 // static tilt of IEC 62368-1 (edition 3)
	defaultCasterFactor      = 1.25 // trade handbooks: 1.0-1.5 indoors, 1.5-2.2 outdoors
	defaultACFaultA          = 5000.0
	defaultAmbientC          = 30.0 // the ambient of NFPA 70 table 310.16 and IEC 60364-5-52 B.52.2
	defaultBundled           = 2
	defaultDrop              = 0.03 // NFPA 70 210.19 and 215.2, informational notes; from memory
	defaultTimeLimitS        = 60.0
	defaultPlans             = 10
	defaultUseDays           = 365
	defaultPowerFactor       = 1.0
	defaultRolling           = 0.02 // common practice, no source
	defaultGrip              = 0.5  // common practice, no source: rubber on dry concrete has more, on wet steel less
	defaultLinkM             = 0.3  // common practice, no source
	defaultRails             = 2
)

// Bounds that catch a wrong unit or a typing mistake. They are wider than any cart a person can push;
// no source. maxBusV is where low voltage ends for direct current, IEC 60364-1; from memory.
const (
	maxBusV    = 1500.0
	maxLengthM = 1000.0
	maxMassKg  = 100e3
	maxPowerW  = 10e6
	maxPushN   = 100e3
	maxFaultA  = 1e6
	maxRatingA = 10e3
	maxCount   = 10000
	maxHours   = 31 * 24.0

	maxKWhPrice = 1e3
)

// Keys of the sections, in the order they are best written.
var (
	topKeys = []string{"name", "currency", "rules", "units", "catalog", "bus", "loads", "measured", "one_at_a_time",
		"autonomy", "recharge", "use", "cart", "limits", "caster_factor", "ac_fault", "cable", "runs", "circuits",
		"needs", "have", "sold", "sun", "money", "savings", "solver"}
	busKeys      = []string{"nominal", "low", "high"}
	rechargeKeys = []string{"within", "from", "supply"}
	supplyKeys   = []string{"volts", "device"}
	useKeys      = []string{"days"}
	limitKeys    = []string{"mass", "budget", "tilt", "reserve", "push", "slope", "protocols", "served"}
	cableKeys    = []string{"slack", "step", "strand"}
	moneyKeys    = []string{"tax", "grid"}
	savingsKeys  = []string{"now", "per_month"}
	solverKeys   = []string{"time_limit", "plans"}
)

// opener opens a file that a scenario names, relative to the scenario's folder.
type opener func(name string) (fs.File, error)

// noScenario reports a file without keys and values.
func noScenario(root *node, list *problem.List) {
	what := root.kind.String()
	if root.kind == isEmpty || root.kind == isMapping {
		what = "empty"
	}
	list.Add(root.pos, "the scenario is "+what, "write keys and values, beginning with name: and rules:")
}

// read reads the text of a scenario file into s. Other files that it names come from open. Every mistake is added to
// the list.
func (s *Scenario) read(data []byte, file string, open opener, list *problem.List) {
	r := &reader{file: file, problems: list, places: map[string]problem.Pos{}}
	s.places = r.places
	defer func() { s.Warnings = r.warnings.Sorted() }()
	if !checkText(data, file, list) {
		return
	}
	root := parseTree(data, file, list)
	if root == nil || root.kind == isRefused {
		return
	}
	if root.kind != isMapping {
		noScenario(root, list)
		return
	}
	top := r.newSection(root, "", "the scenario", topKeys)
	top.pos = problem.Pos{File: file, Line: 1, Column: 1}

	s.Name = top.words("name", "Orchard cart")
	s.Currency = top.currency()
	s.Rules = Rules(top.choice("rules", []string{string(NEC), string(IEC)}))
	s.Units = top.units(s.Rules)
	s.CatalogDir = top.words("catalog", "parts", "")
	s.Bus = top.bus()
	s.readLoads(top, open)
	s.OneAtATime = top.oneAtATime(s.Loads)
	s.AutonomyH = top.quantity("autonomy", quantity.Duration, above(0, maxHours))
	s.Recharge = top.recharge(s.Rules)
	s.UseDays = top.useDays()
	s.Cart = top.cart()
	s.Limits = top.limits()
	s.CasterFactor = top.number("caster_factor", within(1, 10), "1.25", defaultCasterFactor)
	s.ACFaultA = top.quantity("ac_fault", quantity.Current, above(0, maxFaultA), defaultACFaultA)
	s.Cable = top.cable()
	s.Runs = top.runs(s.Rules)
	s.Circuits = top.circuits(s.Rules, s.Bus)
	s.checkRuns(top)
	s.checkCircuitsOfLoads(r)
	s.Needs = top.needs()
	s.Have = top.holdings()
	s.Sold = top.money("sold", 0)
	if m, ok := top.sub("money", "money", false, moneyKeys); ok {
		s.Tax = m.quantity("tax", quantity.Ratio, within(0, 1), 0)
		s.GridCentsPerKWh = 100 * m.number("grid", above(0, maxKWhPrice), "0.32", 0)
	}
	if v, ok := top.sub("savings", "savings", false, savingsKeys); ok {
		s.Savings = &Savings{Now: v.money("now", 0), PerMonth: v.money("per_month")}
	}
	s.Sun = top.sun(open)
	s.checkServed(top)
	s.Solver = top.solver()
	s.doubt(top)
}

// units reads the units that answers are told in.
func (s section) units(rules Rules) Units {
	usual := Metric
	if rules == NEC {
		usual = US
	}
	return Units(s.choice("units", []string{string(US), string(Metric)}, string(usual)))
}

// currencyCode matches a code of ISO 4217.
var currencyCode = regexp.MustCompile(`^[A-Z]{3}$`)

func (s section) currency() string {
	c := s.words("currency", defaultCurrency, defaultCurrency)
	if c != "" && !currencyCode.MatchString(c) {
		s.wrong("currency", fmt.Sprintf("currency: %q is not a currency code", c),
			"write the three capital letters of ISO 4217, for example USD or EUR")
	}
	return c
}

// bus reads the voltages of the direct-current bus: low <= nominal <= high.
func (s section) bus() Bus {
	v, ok := s.sub("bus", "the bus", true, busKeys)
	if !ok {
		return Bus{}
	}
	volts := func(key string) float64 { return v.quantity(key, quantity.Voltage, above(0, maxBusV)) }
	b := Bus{NominalV: volts("nominal"), LowV: volts("low"), HighV: volts("high")}
	if b.LowV > b.NominalV {
		v.wrong("low", fmt.Sprintf("low: %g V is above the nominal %g V", b.LowV, b.NominalV),
			"write the lowest voltage the bus falls to")
	}
	if b.HighV < b.NominalV {
		v.wrong("high", fmt.Sprintf("high: %g V is below the nominal %g V", b.HighV, b.NominalV),
			"write the highest voltage the bus rises to while charging")
	}
	return b
}

func (s section) recharge(rules Rules) *Recharge {
	v, ok := s.sub("recharge", "recharge", false, rechargeKeys)
	if !ok {
		return nil
	}
	r := &Recharge{
		WithinH: v.quantity("within", quantity.Duration, above(0, maxHours)),
		From:    v.choice("from", []string{"grid"}, "grid"),
	}
	if w, ok := v.sub("supply", "the supply", false, supplyKeys); ok {
		r.Supply = &Supply{Volts: w.volts(rules, ""), DeviceA: w.standard("device", rules), Pos: w.pos}
	}
	return r
}

// useDays reads on how many days a year the cart is used.
func (s section) useDays() float64 {
	v, ok := s.sub("use", "use", false, useKeys)
	if !ok {
		return defaultUseDays
	}
	days := v.number("days", above(0, 366), "40", defaultUseDays)
	if s.has("sun") && days != defaultUseDays && !math.IsNaN(days) {
		v.wrong("days", fmt.Sprintf("days: with sun the cart is used every day, not on %g a year", days), "leave use out")
	}
	return days
}

func (s section) limits() Limits {
	none := Limits{MassKg: math.Inf(1), Budget: math.MaxInt64, TiltDeg: defaultTiltDeg, PushN: 0}
	v, ok := s.sub("limits", "limits", false, limitKeys)
	if !ok {
		return none
	}
	return Limits{
		MassKg:  v.quantity("mass", quantity.Mass, above(0, maxMassKg), none.MassKg),
		Budget:  v.money("budget", none.Budget),
		TiltDeg: v.quantity("tilt", quantity.Angle, between(0, 45), none.TiltDeg),
		Reserve: v.quantity("reserve", quantity.Ratio, bound{low: 0, high: 1, openHigh: true}, 0),
		PushN:   v.quantity("push", quantity.Force, above(0, maxPushN), none.PushN),
		Slope:   v.quantity("slope", quantity.Ratio, within(0, 1), 0),

		SharedProtocols: v.choice("protocols", []string{"any", "shared"}, "any") == "shared",
		Served:          v.quantity("served", quantity.Ratio, above(0, 1), 0),
	}
}

// solver reads how long to search, in seconds. Durations come in hours; rounding to the millisecond removes what the
// division by 3600 left.
func (s section) solver() Solver {
	v, ok := s.sub("solver", "solver", false, solverKeys)
	if !ok {
		return Solver{TimeLimitS: defaultTimeLimitS, Plans: defaultPlans}
	}
	h := v.quantity("time_limit", quantity.Duration, above(0, 24), defaultTimeLimitS/3600)
	return Solver{
		TimeLimitS: math.Round(h*3600*1000) / 1000,
		Plans:      v.integer("plans", 1, 1000, defaultPlans),
	}
}
