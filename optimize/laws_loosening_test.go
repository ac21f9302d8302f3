package optimize_test

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"cartwright/scenarios"
)

// A loosening makes one limit of a scenario easier to keep, where the scenario has it.
type loosening struct {
	name string
	do   func(d dice, s *scenarios.Scenario)
}

// less draws a part of a number, more a number above it.
func (d dice) less(x *float64) { *x *= d.Float64() }
func (d dice) more(x *float64) { *x *= 1 + d.Float64() }

// each does something with every element of a list.
func each[T any](list []T, do func(*T)) {
	for i := range list {
		do(&list[i])
	}
}

// looser are ways to loosen each limit of a scenario.
var looser = slices.Concat(looserLoads, looserLimits, looserCart, looserWiring)

var looserLoads = []loosening{
	{"watts", func(d dice, s *scenarios.Scenario) { each(s.Loads, func(l *scenarios.Load) { d.less(&l.Watts) }) }},
	{"count", func(_ dice, s *scenarios.Scenario) { each(s.Loads, func(l *scenarios.Load) { l.Count = 1 }) }},
	{"duty", func(d dice, s *scenarios.Scenario) { each(s.Loads, func(l *scenarios.Load) { d.less(&l.Duty) }) }},
	{"start", func(_ dice, s *scenarios.Scenario) { each(s.Loads, func(l *scenarios.Load) { l.Start = 1 }) }},
	{"leg", func(_ dice, s *scenarios.Scenario) {
		each(s.Loads, func(l *scenarios.Load) {
			if l.Leg != scenarios.LegBoth && !l.DC {
				l.Leg = scenarios.LegAuto
			}
		})
	}},
	{"one load less", func(_ dice, s *scenarios.Scenario) { s.Loads = s.Loads[:max(1, len(s.Loads)-1)] }},
	{"autonomy", func(d dice, s *scenarios.Scenario) { d.less(&s.AutonomyH) }},
	{"recharge within", func(d dice, s *scenarios.Scenario) {
		if s.Recharge != nil {
			s.Recharge.WithinH *= 2 + d.Float64()
		}
	}},
	{"no recharge", func(_ dice, s *scenarios.Scenario) { s.Recharge = nil }},
}

var looserLimits = []loosening{
	{"mass", func(d dice, s *scenarios.Scenario) { d.more(&s.Limits.MassKg) }},
	{"no mass", func(_ dice, s *scenarios.Scenario) { s.Limits.MassKg = math.Inf(1) }},
	{"budget", func(d dice, s *scenarios.Scenario) {
		if s.Limits.Budget != math.MaxInt64 {
			s.Limits.Budget += d.cents(1, 500)
		}
	}},
	{"no budget", func(_ dice, s *scenarios.Scenario) { s.Limits.Budget = math.MaxInt64 }},
	{"sold", func(d dice, s *scenarios.Scenario) { s.Sold += d.cents(1, 500) }},
	{"tilt", func(d dice, s *scenarios.Scenario) { d.less(&s.Limits.TiltDeg) }},
	{"reserve", func(d dice, s *scenarios.Scenario) { d.less(&s.Limits.Reserve) }},
	{"push", func(d dice, s *scenarios.Scenario) { d.more(&s.Limits.PushN) }},
	{"no push", func(_ dice, s *scenarios.Scenario) { s.Limits.PushN = 0 }},
	{"slope", func(d dice, s *scenarios.Scenario) { d.less(&s.Limits.Slope) }},
	{"caster factor", func(d dice, s *scenarios.Scenario) { s.CasterFactor *= 0.5 + d.Float64()/2 }},
	{"tax", func(d dice, s *scenarios.Scenario) { d.less(&s.Tax) }},
}

var looserCart = []loosening{
	{"track", func(d dice, s *scenarios.Scenario) { d.more(&s.Cart.TrackM) }},
	{"wheelbase", func(d dice, s *scenarios.Scenario) { d.more(&s.Cart.WheelbaseM) }},
	{"caster height", func(d dice, s *scenarios.Scenario) { d.less(&s.Cart.CasterMassHeightM) }},
	{"frame height", func(d dice, s *scenarios.Scenario) { d.less(&s.Cart.Frame.HeightM) }},
	{"deck item height", func(d dice, s *scenarios.Scenario) {
		each(s.Cart.DeckItems, func(m *scenarios.Mass) { d.less(&m.HeightM) })
	}},
	{"deck item offset", func(d dice, s *scenarios.Scenario) {
		each(s.Cart.DeckItems, func(m *scenarios.Mass) { d.less(&m.OffsetM) })
	}},
	{"backboard elevation", func(d dice, s *scenarios.Scenario) { d.less(&s.Cart.Backboard.ElevationM) }},
	{"backboard offset", func(d dice, s *scenarios.Scenario) { d.less(&s.Cart.Backboard.OffsetM) }},
	{"shelf elevation", ofShelves(func(d dice, sh *scenarios.Shelf) { d.less(&sh.ElevationM) })},
	{"shelf length", ofShelves(func(d dice, sh *scenarios.Shelf) { d.more(&sh.LengthM) })},
	{"shelf depth", ofShelves(func(d dice, sh *scenarios.Shelf) { d.more(&sh.DepthM) })},
	{"shelf height", ofShelves(func(d dice, sh *scenarios.Shelf) { d.more(&sh.ClearHeightM) })},
	{"shelf mass", ofShelves(func(d dice, sh *scenarios.Shelf) { d.more(&sh.MaxMassKg) })},
	{"shelf gap", ofShelves(func(_ dice, sh *scenarios.Shelf) { sh.GapM = 0 })},
}

func ofShelves(do func(dice, *scenarios.Shelf)) func(dice, *scenarios.Scenario) {
	return func(d dice, s *scenarios.Scenario) {
		each(s.Cart.Shelves, func(sh *scenarios.Shelf) { do(d, sh) })
	}
}

var looserWiring = []loosening{
	{"ac fault", func(d dice, s *scenarios.Scenario) { d.less(&s.ACFaultA) }},
	{"drop of runs", ofRuns(func(d dice, r *scenarios.Run) { r.Drop *= 2 + 2*d.Float64() })},
	{"length of runs", ofRuns(func(d dice, r *scenarios.Run) { d.less(&r.LengthM) })},
	{"ambient of runs", ofRuns(func(d dice, r *scenarios.Run) { r.AmbientC = 10 + d.Float64()*min(10, r.AmbientC-10) })},
	{"bundle of runs", ofRuns(func(_ dice, r *scenarios.Run) { r.Bundled = 2 })},
	{"terminals of runs", ofRuns(func(_ dice, r *scenarios.Run) { r.TerminalC = 75 })},
	{"drop of circuits", ofCircuits(func(d dice, c *scenarios.Circuit) { d.more(&c.Drop) })},
	{"length of circuits", ofCircuits(func(d dice, c *scenarios.Circuit) { d.less(&c.LengthM) })},
	{"ambient of circuits", ofCircuits(func(d dice, c *scenarios.Circuit) { c.AmbientC -= 20 * d.Float64() })},
	{"bundle of circuits", ofCircuits(func(_ dice, c *scenarios.Circuit) { c.Bundled = 1 })},
	{"terminals of circuits", ofCircuits(func(_ dice, c *scenarios.Circuit) { c.TerminalC = 75 })},
	{"no neutral at 240 V", ofCircuits(func(_ dice, c *scenarios.Circuit) { c.Neutral = c.Neutral && c.Volts != 240 })},
	{"one receptacle", ofCircuits(func(_ dice, c *scenarios.Circuit) {
		if c.Receptacle != nil {
			c.Receptacle.Count = 1
		}
	})},
	{"receptacle of any rating", ofCircuits(func(_ dice, c *scenarios.Circuit) {
		if c.Receptacle != nil {
			c.Receptacle.RatingA = 0
		}
	})},
	{"no receptacle", ofCircuits(func(_ dice, c *scenarios.Circuit) { c.Receptacle = nil })},
	{"no circuit", func(_ dice, s *scenarios.Scenario) { s.Circuits = nil }},
	{"count of needs", func(_ dice, s *scenarios.Scenario) { each(s.Needs, func(n *scenarios.Need) { n.Count = 1 }) }},
	{"rating of needs", func(_ dice, s *scenarios.Scenario) { each(s.Needs, func(n *scenarios.Need) { n.RatingA = 0 }) }},
	{"no need", func(_ dice, s *scenarios.Scenario) { s.Needs = nil }},
}

func ofRuns(do func(dice, *scenarios.Run)) func(dice, *scenarios.Scenario) {
	return func(d dice, s *scenarios.Scenario) { each(s.Runs, func(r *scenarios.Run) { do(d, r) }) }
}

func ofCircuits(do func(dice, *scenarios.Circuit)) func(dice, *scenarios.Scenario) {
	return func(d dice, s *scenarios.Scenario) { each(s.Circuits, func(c *scenarios.Circuit) { do(d, c) }) }
}

// Loosening a limit never raises the best cost. Each is loosened in at least so many problems that have it,
// and in more until it made one of them cheaper.
func TestLawLoosening(t *testing.T) {
	const least = 3
	seeds, err := possible()
	if err != nil {
		t.Fatal(err)
	}
	type best struct{ cents, rounding float64 }
	had := map[uint64]best{}
	for k, l := range looser {
		tried, helped := 0, 0
		for i := range seeds {
			seed := seeds[(i+k*least)%len(seeds)]
			loose, strict := randomProblem(seed), randomProblem(seed)
			l.do(newDice(seed^uint64(k)<<32), loose.Scenario)
			if reflect.DeepEqual(loose.Scenario, strict.Scenario) {
				continue
			}
			was, known := had[seed]
			if !known {
				was.cents, was.rounding = leastCents(t, strict)
				had[seed] = was
			}
			is, rounding := leastCents(t, loose)
			if is > was.cents+was.rounding+rounding {
				t.Errorf("%s: %s loosened: the best plan costs %g cents, before %g", strict.Scenario.Name, l.name, is, was.cents)
			}
			if is < was.cents-was.rounding-rounding {
				helped++
			}
			if tried++; tried >= least && helped > 0 {
				break
			}
		}
		t.Logf("%s: tried %d, cheaper %d", l.name, tried, helped)
		if tried == 0 {
			t.Errorf("%s is loosened in %d problems only", l.name, tried)
		}
	}
}

// notLoosened tells of each value of a scenario that none of the tests loosens why that is no limit.
var notLoosened = map[string]string{
	"Name": "a name", "Currency": "a name", "File": "a name", "Dir": "a name", "CatalogDir": "a name",
	"Rules":        "neither rule set is the stricter one",
	"Bus.NominalV": "another bus", "Bus.LowV": "another bus", "Bus.HighV": "another bus: more batteries fit, fewer inverters",
	"Loads[].Name": "a name", "Loads[].DC": "another way to serve it", "Loads[].AllDay": "see watts",
	"Loads[].FromMin": "hours move the peaks", "Loads[].ToMin": "hours move the peaks",
	"Measured":      "loads in another form",
	"Recharge.From": "there is only one", "Cart.Casters": "another cart",
	"Cart.Frame.Name": "a name", "Cart.Frame.OffsetM": "a frame has none", "Cart.Frame.MassKg": "steadies the cart and loads it",
	"Cart.DeckItems[].Name": "a name", "Cart.DeckItems[].MassKg": "steadies the cart and loads it",
	"Cart.Shelves[].Name": "a name",
	"Runs[].Kind":         "a name", "Runs[].OwnBreakerA": "what the inverter has", "Runs[].Pos": "a place",
	"Circuits[].Name": "a name", "Circuits[].Volts": "another circuit", "Circuits[].DeviceA": "another circuit", "Circuits[].Pos": "a place",
	"Circuits[].Receptacle.Role": "a name",
	"Needs[].Role":               "a name", "Needs[].Pos": "a place",
	"Cable.Fine":             "tried by the enumeration alone",
	"Cable.Slack":            "tried by the enumeration alone",
	"Cable.StepM":            "tried by the enumeration alone",
	"Cart.Grip":              "tried by the enumeration alone",
	"Cart.Pieces":            "tried by the enumeration alone",
	"Cart.Rolling":           "tried by the enumeration alone",
	"Cart.Shelves[].Rails":   "tried by the enumeration alone",
	"Cart.Shelves[].Stack":   "tried by the enumeration alone",
	"Circuits[].Conduit":     "tried by the enumeration alone",
	"Circuits[].DC":          "tried by the enumeration alone",
	"Limits.SharedProtocols": "tried by the enumeration alone",
	"Loads[].Circuit":        "tried by the enumeration alone",
	"Loads[].PowerFactor":    "tried by the enumeration alone",
	"OneAtATime":             "tried by the enumeration alone",
	"Recharge.Supply":        "tried by the enumeration alone",
	"Runs[].Conduit":         "tried by the enumeration alone",
	"Runs[].LinkM":           "tried by the enumeration alone",
	"UseDays":                "tried by the enumeration alone",
	"GridCentsPerKWh":        "plans are not chosen by it", "Limits.Served": "goes with the sun", "Sun": "another cart: random carts have none",
	"Units": "a way of telling", "Warnings": "words",
	"Have": "see TestLawOwningMore", "Savings": "plans are not paid from them", "Solver": "no limit of the cart",
}

// Every value of a scenario is loosened, or is no limit.
func TestEveryLimitIsLoosened(t *testing.T) {
	loosened := map[string]bool{}
	seeds, err := possible()
	if err != nil {
		t.Fatal(err)
	}
	for k, l := range looser {
		for _, seed := range seeds {
			loose := randomProblem(seed).Scenario
			l.do(newDice(seed^uint64(k)), loose)
			changedIn(reflect.ValueOf(*randomProblem(seed).Scenario), reflect.ValueOf(*loose), "", loosened)
		}
	}
	leaves := map[string]bool{}
	leavesOf(reflect.TypeFor[scenarios.Scenario](), "", leaves)
	for leaf := range leaves {
		explained := notLoosened[leaf] != ""
		if loosened[leaf] == explained {
			t.Errorf("%s: loosened: %t; told why not: %t", leaf, loosened[leaf], explained)
		}
	}
	for leaf := range notLoosened {
		if !leaves[leaf] {
			t.Errorf("%s: there is no such value", leaf)
		}
	}
}

// leavesOf lists the values of a type: "Limits.MassKg", "Runs[].Drop". What notLoosened knows is not opened.
func leavesOf(typ reflect.Type, path string, leaves map[string]bool) {
	if notLoosened[path] != "" {
		leaves[path] = true
		return
	}
	switch typ.Kind() {
	case reflect.Pointer:
		leavesOf(typ.Elem(), path, leaves)
	case reflect.Slice:
		leavesOf(typ.Elem(), path+"[]", leaves)
	case reflect.Struct:
		for f := range typ.Fields() {
			if f.IsExported() {
				leavesOf(f.Type, strings.TrimPrefix(path+"."+f.Name, "."), leaves)
			}
		}
	default:
		leaves[path] = true
	}
}

// changedIn notes which values of two of a type differ. A list or section that one of them lacks is not
// opened.
func changedIn(a, b reflect.Value, path string, changed map[string]bool) {
	switch a.Kind() {
	case reflect.Pointer:
		if !a.IsNil() && !b.IsNil() {
			changedIn(a.Elem(), b.Elem(), path, changed)
		}
	case reflect.Slice:
		for i := range min(a.Len(), b.Len()) {
			changedIn(a.Index(i), b.Index(i), path+"[]", changed)
		}
	case reflect.Struct:
		for i := range a.NumField() {
			if f := a.Type().Field(i); f.IsExported() {
				changedIn(a.Field(i), b.Field(i), strings.TrimPrefix(path+"."+f.Name, "."), changed)
			}
		}
	default:
		if !a.Equal(b) {
			changed[path] = true
		}
	}
}
