package scenarios

import (
	"fmt"
	"math"
	"strconv"

	"cartwright/catalog/quantity"
	"cartwright/scenarios/ratings"
)

// Keys of cable paths and circuits.
var (
	runKeys        = []string{"run", "length", "ambient", "bundled", "terminal", "drop", "own_breaker"}
	circuitKeys    = []string{"name", "volts", "device", "length", "neutral", "terminal", "ambient", "bundled", "drop", "receptacle"}
	receptacleKeys = []string{"role", "rating", "count"}
)

// Air temperatures read, in C: wider than the rows of NFPA 70 table 310.15(B)(1) and IEC 60364-5-52 table
// B.52.14, whose rules then say what is allowed.
const (
	minAmbientC = -50.0
	maxAmbientC = 85.0
)

// maxTerminalC is hotter than any terminal: whatever lies below is told which temperatures there are.
const maxTerminalC = 500.0

// maxBundled is the most current-carrying conductors read in a bundle; NFPA 70 table 310.15(C)(1) ends its
// rows at "41 and above".
const maxBundled = 200

// runs reads the cable paths of the strings, the mains and the feeder; none is required.
func (s section) runs(rules Rules) []Run {
	sections := s.items("runs", "a run", false, runKeys)
	distinct(sections, "run")
	var runs []Run
	for _, v := range sections {
		runs = append(runs, Run{
			Kind:        RunKind(v.choice("run", []string{string(RunString), string(RunMain), string(RunFeeder)})),
			LengthM:     v.size("length"),
			AmbientC:    v.ambient(),
			Bundled:     v.bundled(),
			TerminalC:   v.terminal(),
			Drop:        v.drop(),
			OwnBreakerA: v.standard("own_breaker", rules, 0),
			Pos:         v.pos,
		})
		if runs[len(runs)-1].Kind == RunString && v.has("own_breaker") {
			v.wrong("own_breaker", "own_breaker: an inverter has no breaker in the string of a battery",
				"leave it out; a fuse or breaker is planned for each string")
		}
	}
	return runs
}

// circuits reads the branch circuits; none is required.
func (s section) circuits(rules Rules) []Circuit {
	sections := s.items("circuits", "a circuit", false, circuitKeys)
	distinct(sections, "name")
	var circuits []Circuit
	for _, v := range sections {
		c := Circuit{
			Name:      v.words("name", "press"),
			Volts:     v.volts(rules),
			DeviceA:   v.standard("device", rules),
			LengthM:   v.size("length"),
			Neutral:   v.truth("neutral", true),
			TerminalC: v.terminal(),
			AmbientC:  v.ambient(),
			Bundled:   v.bundled(),
			Drop:      v.drop(),
			Pos:       v.pos,
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
		s.wrong("terminal", fmt.Sprintf("terminal: %g C is no terminal temperature", t), "write 60 C or 75 C")
	}
	return t
}

// rating reads the least rating asked of a part; 0 asks for none.
func (s section) rating() float64 {
	return s.quantity("rating", quantity.Current, above(0, maxRatingA), 0)
}

// volts reads the voltage of a circuit: 120 or 240 V under the nec rules, 230 V under the iec rules.
func (s section) volts(rules Rules) float64 {
	v := s.quantity("volts", quantity.Voltage, above(0, maxBusV))
	switch {
	case math.IsNaN(v):
	case rules == NEC && v != 120 && v != 240:
		s.wrong("volts", fmt.Sprintf("volts: the nec rules know no circuit of %g V", v), "write 120 V or 240 V, or rules: iec")
	case rules == IEC && v != 230:
		s.wrong("volts", fmt.Sprintf("volts: the iec rules know no circuit of %g V", v), "write 230 V, or rules: nec")
	}
	return v
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
