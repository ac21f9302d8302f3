// Package array knows which solar modules hang on the inputs of an inverter, how many there is room for, and what the
// inverter takes of them. What the sun gives one module is in energy/sun; the cable is in wiring.
package array

import (
	"math"

	"cartwright/catalog"
	"cartwright/optimize/energy/sun"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// Array is a number of equal modules: so many in series, strings of them in parallel on each of some inputs, all alike.
type Array struct {
	Module                   *catalog.Solar
	Series, Parallel, Inputs int
}

// Modules returns how many there are.
func (a *Array) Modules() int { return a.Series * a.Parallel * a.Inputs }

// ColdV returns the volts of a string in the coldest air of a place, before any current flows.
func (a *Array) ColdV(s *scenarios.Sun) float64 { return sun.ColdV(a.Module, a.Series, s.ColdestC) }

// HotV returns the volts of a string at full power in the hottest air of a place.
func (a *Array) HotV(s *scenarios.Sun) float64 { return sun.HotV(a.Module, a.Series, s.HottestC) }

// FullV returns the volts of a string at full power, as its label has them.
func (a *Array) FullV() float64 { return float64(a.Series) * a.Module.VmpV }

// InputA returns the current at full power into one input.
func (a *Array) InputA() float64 { return float64(a.Parallel) * a.Module.ImpA }

// Inputs reports whether an inverter states all that is needed to hang modules on it.
func Inputs(inv *catalog.Inverter) bool {
	return inv.SolarMaxW > 0 && inv.SolarMaxVocV > 0 && inv.MPPTMinV > 0 && inv.MPPTMaxV > 0 && inv.MPPTMaxA > 0 && inv.MPPTInputs > 0
}

// MostV returns the volts that a string may have in the cold: what the inverter stands, or the module.
func (a *Array) MostV(inv *catalog.Inverter) float64 {
	return math.Min(inv.SolarMaxVocV, a.Module.MaxSystemV)
}

// fullest returns how many of the inputs are on the unit that has most of them.
func (a *Array) fullest(units int) float64 { return math.Ceil(float64(a.Inputs) / float64(units)) }

// TakenW returns what some units take of the array at the most: once the unit with most inputs is full, it is cut off.
//
//	solar_max_w k / ceil(k / u)
//
// All inputs are alike, so the fullest unit is the first to be full.
func (a *Array) TakenW(inv *catalog.Inverter, units int) float64 {
	return inv.SolarMaxW * float64(a.Inputs) / a.fullest(units)
}

// UnitW returns the watts of modules at the unit that has most of them, at most what it takes.
//
//	min(solar_max_w, watts ceil(k / u) / k)
func (a *Array) UnitW(inv *catalog.Inverter, units int) float64 {
	return math.Min(float64(a.Modules())*a.Module.Watts*a.fullest(units)/float64(a.Inputs), inv.SolarMaxW)
}

// Room returns how many of a module there is room for: the better of two ways to turn them, no gap between.
func Room(s *scenarios.Sun, m *catalog.Solar) int {
	switch {
	case s.Most > 0:
		return s.Most
	case s.Room == nil:
		return math.MaxInt32
	case !(m.LengthM > 0 && m.WidthM > 0):
		return 0
	}
	fits := func(l, w float64) int { return int(plan.Floor(s.Room.LengthM/l) * plan.Floor(s.Room.WidthM/w)) }
	return max(fits(m.LengthM, m.WidthM), fits(m.WidthM, m.LengthM))
}
