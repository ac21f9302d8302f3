package audit

import (
	"fmt"
	"math"
	"reflect"
)

const ruleFigures = "figures"

var figureRules = []Rule{
	{Name: ruleFigures, Holds: "every number is finite, none is absurdly large, and none is negative that cannot be",
		Source: practice},
}

// Bounds beyond which a number is absurd. They keep the sums of the other checks exact and finite.
const (
	mostFigure = 1e12    // of any unit
	mostCount  = 1000000 // of parts that are counted
	mostCents  = 1e15    // of money
)

// signed are the fields of a plan that may have negative numbers: what is sold may bring more than is spent, a limit may
// be exceeded, a cart may tip on the level. Other checks judge them.
var signed = map[string]bool{
	"Cost": true, "CostPerUsableKWh": true, "CostPerExtraKWh": true, "CostPerLifetimeKWh": true, "Limits": true, "Balance": true,
}

// figures checks whether all numbers of a plan are such that the other checks can be made.
func (a *auditor) figures() bool {
	if a.p == nil {
		a.none(ruleFigures, []string{"there is no plan"})
		return false
	}
	var faults []string
	top := reflect.ValueOf(*a.p)
	for i := range top.NumField() {
		if name := top.Type().Field(i).Name; name != "Audit" {
			faults = append(faults, absurd(top.Field(i), name, signed[name])...)
		}
	}
	a.none(ruleFigures, faults)
	return len(faults) == 0
}

// absurd names the numbers in v that no plan can have; path says where v is in the plan.
func absurd(v reflect.Value, path string, signed bool) (faults []string) {
	number := func(x, most float64) {
		if math.Abs(x) <= most && (signed || x >= 0) {
			return
		}
		faults = append(faults, fmt.Sprintf("%s is %g", path, x))
	}
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			faults = append(faults, absurd(v.Field(i), path+"."+v.Type().Field(i).Name, signed)...)
		}
	case reflect.Pointer:
		if !v.IsNil() {
			faults = absurd(v.Elem(), path, signed)
		}
	case reflect.Slice:
		for i := range v.Len() {
			faults = append(faults, absurd(v.Index(i), fmt.Sprintf("%s[%d]", path, i), signed)...)
		}
	case reflect.Float64:
		number(v.Float(), mostFigure)
	case reflect.Int:
		number(float64(v.Int()), mostCount)
	case reflect.Int64: // plan.Money
		number(float64(v.Int()), mostCents)
	}
	return faults
}
