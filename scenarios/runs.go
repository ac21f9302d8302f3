package scenarios

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"cartwright/catalog/quantity"
	"cartwright/scenarios/ratings"
)

// Keys of cable paths and circuits.
var (
	runKeys     = []string{"run", "length", "link", "ambient", "bundled", "terminal", "drop", "conduit", "own_breaker"}
	circuitKeys = []string{"name", "volts", "device", "length", "neutral", "terminal", "ambient", "bundled", "drop",
		"conduit", "receptacle"}
	receptacleKeys = []string{"role", "rating", "count"}
)

// Air temperatures read, in C: wider than the rows of NFPA 70 table 310.15(B)(1) and IEC 60364-5-52 table
// B.52.14, whose rules then say what is allowed.
const (
	minAmbientC = -50.0
	maxAmbientC = 85.0
)

// maxTerminalC is hotter than any terminal: for anything below it the message names the temperatures there are.
const maxTerminalC = 500.0

// maxBundled is the most current-carrying conductors read in a bundle; NFPA 70 table 310.15(C)(1) ends its
// rows at "41 and above".
const maxBundled = 200

// runKinds are the runs that a scenario names. Branches are circuits.
var runKinds = []string{string(RunString), string(RunMain), string(RunFeeder), string(RunInlet), string(RunSolar), string(RunBond)}

// ownBreakerOf says why the inverter's own breaker cannot protect a run, and what to do.
var ownBreakerOf = map[RunKind][2]string{
	RunString: {"the inverter's breaker does not protect a battery string", "leave it out; a fuse or breaker is planned for each string"},
	RunInlet:  {"the device of the supply protects the inlet", "leave it out; write the device under recharge.supply"},
	RunSolar:  {"modules are not protected by the inverter's breaker", "leave it out; devices are planned where they are needed"},
	RunBond:   {"a bond has no breaker", "leave it out"},
}

// runs reads the cable paths that are no circuits; none is required.
func (s section) runs(rules Rules) []Run {
	sections := s.items("runs", "a run", false, runKeys)
	distinct(sections, "run")
	var runs []Run
	for _, v := range sections {
		runs = append(runs, Run{
			Kind:        RunKind(v.choice("run", runKinds)),
			LengthM:     v.size("length"),
			LinkM:       v.quantity("link", quantity.Length, within(0, maxLengthM), defaultLinkM),
			AmbientC:    v.ambient(),
			Bundled:     v.bundled(),
			TerminalC:   v.terminal(),
			Drop:        v.drop(),
			Conduit:     v.conduit(),
			OwnBreakerA: v.standard("own_breaker", rules, 0),
			Pos:         v.pos,
		})
		kind := runs[len(runs)-1].Kind
		if why, none := ownBreakerOf[kind]; none && v.has("own_breaker") {
			v.wrong("own_breaker", "own_breaker: "+why[0], why[1])
		}
		if kind != RunString && kind != "" && v.has("link") {
			v.wrong("link", "link: only strings have links, between modules in series", "leave it out, or write it in the run string")
		}
	}
	return runs
}

// checkRuns reports runs that need something else in the scenario.
func (s *Scenario) checkRuns(top section) {
	if r := s.Run(RunInlet); r != nil && (s.Recharge == nil || s.Recharge.Supply == nil) && !top.meant["recharge"] {
		top.r.problems.Add(r.Pos, "the inlet has no supply", "add recharge with a supply, for example "+
			"recharge: {within: 10 h, supply: {volts: "+s.supplyExample()+"}}")
	}
	if r := s.Run(RunBond); r != nil && s.Run(RunMain) == nil {
		top.r.problems.Add(r.Pos, "a bond is sized by the device of the main, and there is no run main", "add one, or leave the bond out")
	}
}

// supplyExample is a usual supply under the rules.
func (s *Scenario) supplyExample() string {
	if s.Rules == IEC {
		return "230 V, device: 16 A"
	}
	return "120 V, device: 20 A"
}

// circuits reads the circuits behind the load centre and those on the bus; none is required.
func (s section) circuits(rules Rules, bus Bus) []Circuit {
	sections := s.items("circuits", "a circuit", false, circuitKeys)
	distinct(sections, "name")
	var circuits []Circuit
	for _, v := range sections {
		c := Circuit{
			Name:      v.words("name", "press"),
			DeviceA:   v.standard("device", rules),
			LengthM:   v.size("length"),
			Neutral:   v.truth("neutral", true),
			TerminalC: v.terminal(),
			AmbientC:  v.ambient(),
			Bundled:   v.bundled(),
			Drop:      v.drop(),
			Conduit:   v.conduit(),
			Pos:       v.pos,
		}
		if n := v.nodes["volts"]; n != nil && n.kind == isText && n.value == "dc" {
			c.DC, c.Volts = true, bus.NominalV
			if v.has("neutral") {
				v.wrong("neutral", "neutral: a circuit on the bus has none", "leave it out")
			}
		} else {
			c.Volts = v.volts(rules, "dc")
		}
		if r, ok := v.sub("receptacle", "a receptacle", false, receptacleKeys); ok {
			c.Receptacle = &Receptacle{Role: r.words("role", "receptacle"), RatingA: r.rating(), Count: r.integer("count", 1, maxCount, 1)}
		}
		circuits = append(circuits, c)
	}
	return circuits
}

func (s section) ambient() float64 {
	return s.quantity("ambient", quantity.Temperature, within(minAmbientC, maxAmbientC), defaultAmbientC)
}

func (s section) bundled() int {
	return s.integer("bundled", 2, maxBundled, defaultBundled)
}

func (s section) drop() float64 {
	return s.quantity("drop", quantity.Ratio, between(0, 1), defaultDrop)
}

// terminal reads the temperature a termination is held to, NFPA 70 110.14(C): 60 C, 75 C or 0 for not
// stated.
func (s section) terminal() float64 {
	t := s.quantity("terminal", quantity.Temperature, within(minAmbientC, maxTerminalC), 0)
	if s.has("terminal") && !math.IsNaN(t) && t != 60 && t != 75 {
		s.wrong("terminal", fmt.Sprintf("terminal: %g C is not a terminal temperature", t), "write 60 C or 75 C")
	}
	return t
}

// rating reads the least rating asked of a part; 0 asks for none.
func (s section) rating() float64 {
	return s.quantity("rating", quantity.Current, above(0, maxRatingA), 0)
}

// conduit reads the type of conduit that a path runs in.
func (s section) conduit() string { return strings.ToLower(s.words("conduit", "emt", "")) }

// volts reads the voltage of a circuit or supply: 120 or 240 V under the nec rules, 230 V under the iec rules. Other
// names another value that is allowed, for the message.
func (s section) volts(rules Rules, other string) float64 {
	v := s.quantity("volts", quantity.Voltage, above(0, maxBusV))
	nec, iec := "120 V or 240 V", "230 V"
	if other != "" {
		nec, iec = "120 V, 240 V or "+other, "230 V or "+other
	}
	switch {
	case math.IsNaN(v):
	case rules == NEC && v != 120 && v != 240:
		s.wrong("volts", fmt.Sprintf("volts: the nec rules have no circuit of %g V", v), "write "+nec+", or rules: iec")
	case rules == IEC && v != 230:
		s.wrong("volts", fmt.Sprintf("volts: the iec rules have no circuit of %g V", v), "write "+iec+", or rules: nec")
	}
	return v
}

// cable reads how cable is cut.
func (s section) cable() CableWish {
	v, ok := s.sub("cable", "cable", false, cableKeys)
	if !ok {
		return CableWish{}
	}
	return CableWish{
		Slack: v.quantity("slack", quantity.Ratio, within(0, 1), 0),
		StepM: v.quantity("step", quantity.Length, above(0, maxLengthM), 0),
		Fine:  v.choice("strand", []string{"any", "fine"}, "any") == "fine",
	}
}

// standard reads a rating that must be a standard one of the rule set, of fuses or of breakers. Without
// def the key is required.
func (s section) standard(key string, rules Rules, def ...float64) float64 {
	a := s.quantity(key, quantity.Current, above(0, maxRatingA), def...)
	if math.IsNaN(a) || !s.has(key) || rules == "" {
		return a
	}
	fuses, breakers := ratings.Standard(string(rules), "fuse"), ratings.Standard(string(rules), "breaker")
	if ratings.Is(fuses, a) || ratings.Is(breakers, a) {
		return a
	}
	s.wrong(key, fmt.Sprintf("%s: %s A is not a standard rating under the %s rules", key, amperes(a), rules),
		"write "+nearestRatings(fuses, breakers, a))
	return math.NaN()
}

// nearestRatings names the ratings next to a, "20 A or 25 A", of either list.
func nearestRatings(fuses, breakers []float64, a float64) string {
	below, above := ratings.Around(fuses, a)
	b, t := ratings.Around(breakers, a)
	below = max(below, b)
	if above == 0 || t != 0 && t < above {
		above = t
	}
	switch {
	case below == 0:
		return amperes(above) + " A"
	case above == 0:
		return amperes(below) + " A"
	}
	return amperes(below) + " A or " + amperes(above) + " A"
}

func amperes(a float64) string { return strconv.FormatFloat(a, 'f', -1, 64) }
