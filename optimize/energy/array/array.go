// Package array knows the volts and amperes of solar modules on the inputs of an inverter, how many there is room for,
// and how much of their power the inverter takes. What the sun gives one module is in energy/sun; the cable is in
// wiring.
package array

import (
	"math"

	"cartwright/catalog"
	"cartwright/optimize/energy/sun"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// Array is a number of equal modules: Series of them in a string, Parallel strings on each of Inputs inputs.
type Array struct {
	Module                   *catalog.Solar
	Series, Parallel, Inputs int
}

// Modules returns how many there are.
func (a *Array) Modules() int { return a.Series * a.Parallel * a.Inputs }

// ColdV returns the open-circuit volts of a string in the coldest air of a place.
func (a *Array) ColdV(s *scenarios.Sun) float64 { return sun.ColdV(a.Module, a.Series, s.ColdestC) }

// HotV returns the volts of a string at full power in the hottest air of a place.
func (a *Array) HotV(s *scenarios.Sun) float64 { return sun.HotV(a.Module, a.Series, s.HottestC) }

// FullV returns the volts of a string at full power, by the module's label.
func (a *Array) FullV() float64 { return float64(a.Series) * a.Module.VmpV }

// InputA returns the current at full power into one input.
func (a *Array) InputA() float64 { return float64(a.Parallel) * a.Module.ImpA }

// Inputs reports whether an inverter states all that is needed to connect modules to it.
func Inputs(inv *catalog.Inverter) bool {
	return inv.SolarMaxW > 0 && inv.SolarMaxVocV > 0 && inv.MPPTMinV > 0 && inv.MPPTMaxV > 0 && inv.MPPTMaxA > 0 && inv.MPPTInputs > 0
}

// MostV returns the most volts a string may have in the cold: the lesser of what the inverter and the module stand.
func (a *Array) MostV(inv *catalog.Inverter) float64 {
	return math.Min(inv.SolarMaxVocV, a.Module.MaxSystemV)
}

// fullest returns how many of the inputs are on the unit that has most of them.
func (a *Array) fullest(units int) float64 { return math.Ceil(float64(a.Inputs) / float64(units)) }

// TakenW returns the most watts that some units take of the array; what is above is cut off.
//
//	solar_max_w k / ceil(k / u)      k inputs, u units
//
// All inputs are alike, so the unit with the most of them is the first to be full, and the array counts as cut off
// there.
func (a *Array) TakenW(inv *catalog.Inverter, units int) float64 {
	return inv.SolarMaxW * float64(a.Inputs) / a.fullest(units)
}

// UnitW returns the watts of modules on the unit that has most of them, at most what it takes.
//
//	min(solar_max_w, watts ceil(k / u) / k)      k inputs, u units, watts of the whole array
func (a *Array) UnitW(inv *catalog.Inverter, units int) float64 {
	return math.Min(float64(a.Modules())*a.Module.Watts*a.fullest(units)/float64(a.Inputs), inv.SolarMaxW)
}

// Room returns how many of a module there is room for: the better of two ways to turn them, without gaps. A stated
// number of modules takes the place of room; without either there is no limit. A module of no stated size fits none.
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
