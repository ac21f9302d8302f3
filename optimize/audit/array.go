package audit

import (
	"fmt"
	"math"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

const (
	ruleArray       = "solar array"
	ruleSolarCold   = "solar input, coldest"
	ruleSolarHot    = "solar input, hottest"
	ruleSolarHighV  = "solar input, volts"
	ruleSolarA      = "solar input, current"
	ruleSolarInputs = "solar inputs"
	ruleSolarSystem = "solar module volts"
	ruleSolarRoom   = "solar room"
)

var arrayRules = []Rule{
	{ruleArray, "", "at most one array, of one module or more, only where the scenario has sun and the inverter states its inputs", fromScenario},
	{ruleSolarCold, "V", "s * voc in the cold <= the inverter's solar_max_voc_v", "NEC 690.7(A); " + fromMaker},
	{ruleSolarHot, "V", "s * vmp at the hottest cell >= mppt_min_v", fromMaker},
	{ruleSolarHighV, "V", "s * vmp <= mppt_max_v", fromMaker},
	{ruleSolarA, "A", "p * imp <= mppt_max_a", fromMaker},
	{ruleSolarInputs, "", "inputs <= units * mppt_inputs", fromMaker},
	{ruleSolarSystem, "V", "s * voc in the cold <= the module's max_system_v", "NEC 690.7; " + fromMaker},
	{ruleSolarRoom, "", "the modules fit into the room, or are at most the number allowed", fromScenario},
}

// array is the solar modules of a core: so many in series, strings of them in parallel on each input.
type array struct {
	*catalog.Solar
	series, parallel, inputs float64
}

// modules returns the number of modules.
func (x *array) modules() float64 { return x.series * x.parallel * x.inputs }

// watts returns the rated watts of all modules.
func (x *array) watts() float64 { return x.modules() * x.Watts }

// The temperatures in °C at which modules are rated.
const (
	ratedC     = 25.0
	noctAirC   = 20.0
	noctWm2    = 800.0
	fullSunWm2 = 1000.0
)

// coldV returns the open-circuit volts of a string of modules at the coldest air.
//
//	s · voc · (1 + b (coldest - 25))      NEC 690.7(A)
func (a *auditor) coldV(x *array) float64 {
	return x.series * x.VocV * (1 + x.VocTempPctPerC/100*(a.s.Sun.ColdestC-ratedC))
}

// hotV returns the volts at full power of a string of modules whose cells are as hot as they get, by the
// steeper of the two coefficients.
func (a *auditor) hotV(x *array) float64 {
	cellC := a.s.Sun.HottestC + (x.NOCTC-noctAirC)/noctWm2*fullSunWm2
	steeper := math.Min(x.VocTempPctPerC, x.PowerTempPctPerC) / 100
	return x.series * x.VmpV * (1 + steeper*(cellC-ratedC))
}

// fullestUnit returns how many of the inputs in use are on the inverter unit that has the most of them.
func (a *auditor) fullestUnit(x *array) float64 { return math.Ceil(x.inputs / math.Max(1, a.units)) }

// sunPerUnitW returns the most that the inputs of one inverter unit take from the sun.
func (a *auditor) sunPerUnitW() float64 {
	if a.array == nil {
		return 0
	}
	return math.Min(a.array.watts()*a.fullestUnit(a.array)/a.array.inputs, a.inverter.SolarMaxW)
}

// solar checks whether the array suits the inverter's inputs and the room.
func (a *auditor) solar() {
	var faults []string
	if len(a.p.Core.Solar) > 1 {
		faults = append(faults, "more than one array")
	}
	x, inv := a.array, a.inverter
	if len(a.p.Core.Solar) > 0 {
		switch {
		case a.s.Sun == nil:
			faults = append(faults, "modules without sun in the scenario")
		case x == nil:
			faults = append(faults, "no such module, or none of them")
		case inv != nil && (inv.SolarMaxW == 0 || inv.SolarMaxVocV == 0 || inv.MPPTMinV == 0 || inv.MPPTMaxV == 0):
			faults = append(faults, inv.ID+" does not state its inputs")
		}
	}
	a.none(ruleArray, faults)
	if x == nil || inv == nil || a.s.Sun == nil {
		return
	}
	cold := a.coldV(x)
	a.atMost(ruleSolarCold, cold, inv.SolarMaxVocV, inv.ID)
	a.atLeast(ruleSolarHot, a.hotV(x), inv.MPPTMinV, inv.ID)
	a.atMost(ruleSolarHighV, x.series*x.VmpV, inv.MPPTMaxV, inv.ID)
	a.atMost(ruleSolarA, x.parallel*x.ImpA, inv.MPPTMaxA, inv.ID)
	a.atMost(ruleSolarInputs, x.inputs, a.units*float64(inv.MPPTInputs), inv.ID)
	a.atMost(ruleSolarSystem, cold, x.MaxSystemV, x.ID)
	a.atMost(ruleSolarRoom, x.modules(), a.roomFor(x.Solar), x.ID)
}

// roomFor returns how many of a module there is room for: the better of two ways to turn them, without gaps.
func (a *auditor) roomFor(m *catalog.Solar) float64 {
	sun := a.s.Sun
	if sun.Most > 0 {
		return float64(sun.Most)
	}
	if sun.Room == nil {
		return math.Inf(1)
	}
	if m.LengthM <= 0 || m.WidthM <= 0 {
		return 0
	}
	fits := func(l, w float64) float64 { return plan.Floor(sun.Room.LengthM/l) * plan.Floor(sun.Room.WidthM/w) }
	return math.Max(fits(m.LengthM, m.WidthM), fits(m.WidthM, m.LengthM))
}

// recogniseArray looks up the array of the core.
func (a *auditor) recogniseArray() (unknown []string) {
	for _, x := range a.p.Core.Solar {
		m := a.stock.solar[x.Part]
		if m == nil {
			unknown = append(unknown, fmt.Sprintf("core: no solar %q", x.Part))
		} else if x.Series > 0 && x.Parallel > 0 && x.Inputs > 0 {
			a.array = &array{m, float64(x.Series), float64(x.Parallel), float64(x.Inputs)}
		}
	}
	return unknown
}

// solarTask returns the paths from the modules to the inputs, one each.
func (a *auditor) solarTask() []task {
	run, x := a.s.Run(scenarios.RunSolar), a.array
	if run == nil || x == nil || a.s.Sun == nil {
		return nil
	}
	// The modules can give 125 % of their rated short-circuit current: NEC 690.8(A)(1).
	t := pathOf(run, continuous*x.parallel*x.IscA, x.series*x.VmpV)
	t.count, t.poles, t.ground, t.array = x.inputs, 2, true, x
	t.ambientC = math.Max(t.ambientC, a.s.Sun.HottestC)
	t.dropA, t.deviceV, t.faultA = x.parallel*x.ImpA, a.coldV(x), t.designA
	if stringFuseNeeded(x) {
		t.stringFuses, t.stringFuseV = int(x.parallel), t.deviceV
	}
	return []task{t}
}
