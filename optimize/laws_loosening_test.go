package optimize_test

import (
	"reflect"
	"strings"
	"testing"

	"cartwright/scenarios"
)

// Loosening a limit never raises the best cost. Each is loosened in at least so many problems that have it,
// and in more until it made one of them cheaper, lawCases of them at the most.
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
			loose, strict := lawProblem(seed), lawProblem(seed)
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
			if tried++; tried >= least && helped > 0 || tried == lawCases {
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
	"Cart.Pieces[].Section": "another frame", "Cart.Pieces[].LengthM": "steadies the cart and loads it", "Cart.Pieces[].Count": "steadies the cart and loads it",
	"Cart.Pieces[].Pos": "a place", "Cart.Shelves[].Rails.Pos": "a place",
	"Cart.Shelves[].Rails.Section": "another shelf",
	"Cart.Shelves[].Stack":         "makes room, and all the modules count as higher",
	"Circuits[].DC":                "another circuit",
	"Loads[].Circuit":              "a free choice makes the larger peak of the legs least, not the larger surge",
	"OneAtATime":                   "longer lists are tried, but values that one scenario lacks are not compared",
	"Recharge.Supply.Volts":        "another outlet",
	"Recharge.Supply.DeviceA":      "charges faster, through more copper",
	"Recharge.Supply.Pos":          "a place",
	"UseDays":                      "what plans cost does not hang on it",
	"GridCentsPerKWh":              "plans are not chosen by it", "Limits.Served": "goes with the sun", "Sun": "another cart: random carts have none",
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
			loose := lawProblem(seed).Scenario
			l.do(newDice(seed^uint64(k)), loose)
			changedIn(reflect.ValueOf(*lawProblem(seed).Scenario), reflect.ValueOf(*loose), "", loosened)
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
