package optimize_test

import (
	"math"
	"slices"

	"cartwright/catalog"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
	"cartwright/scenarios/ratings"
)

// field is an array of solar modules on some inverters: strings of so many in series, so many in parallel on each input.
type field struct {
	module                          *catalog.Solar
	series, parallel, inputs, units int
}

// modules returns how many modules a field has.
func (x *field) modules() int { return x.series * x.parallel * x.inputs }

// most returns how many inputs are on the unit that has most of them, dealt out one by one.
func (x *field) most() int {
	n := x.inputs / x.units
	if x.inputs%x.units > 0 {
		n++
	}
	return n
}

// unitW returns what reaches the unit with most inputs at the modules' full power, at most what it takes.
func (x *field) unitW(inv *catalog.Inverter) float64 {
	if x == nil {
		return 0
	}
	return min(inv.SolarMaxW, float64(x.most()*x.series*x.parallel)*x.module.Watts)
}

// cell returns how far above 25 C the cells of a module are in air of some C and light of some W/m2.
func cell(m *catalog.Solar, airC, wm2 float64) float64 { return airC + (m.NOCTC-20)*wm2/800 - 25 }

// coldV and hotV return the volts of a string of modules without current in the coldest air, and at full power in the
// hottest.
func (e *enumeration) coldV(x *field) float64 {
	return float64(x.series) * x.module.VocV * (100 + x.module.VocTempPctPerC*(e.s.Sun.ColdestC-25)) / 100
}

func (e *enumeration) hotV(x *field) float64 {
	steep := min(x.module.VocTempPctPerC, x.module.PowerTempPctPerC)
	return float64(x.series) * x.module.VmpV * (100 + steep*cell(x.module, e.s.Sun.HottestC, 1000)) / 100
}

// fields returns every field that some inverters may take, and none (nil) as well.
func (e *enumeration) fields(inv *catalog.Inverter, units int) []*field {
	all := []*field{nil}
	s := e.s.Sun
	if s != nil && inv.SolarMaxW > 0 && inv.SolarMaxVocV > 0 && inv.MPPTMinV > 0 && inv.MPPTMaxV > 0 && inv.MPPTMaxA > 0 {
		for i := range e.c.Solar {
			m := &e.c.Solar[i]
			room := s.Most
			if s.Room != nil {
				across := func(l, w float64) int {
					return int(math.Floor(s.Room.LengthM/l+near)) * int(math.Floor(s.Room.WidthM/w+near))
				}
				room = max(across(m.LengthM, m.WidthM), across(m.WidthM, m.LengthM))
			}
			for modules := 1; modules <= room; modules++ {
				for series := 1; series <= modules; series++ {
					for parallel := 1; series*parallel <= modules; parallel++ {
						x := &field{m, series, parallel, modules / series / parallel, units}
						if x.modules() == modules && e.hangs(x, inv) {
							all = append(all, x)
						}
					}
				}
			}
		}
	}
	return slices.DeleteFunc(all, func(x *field) bool { return !e.keepsModules(x) })
}

// hangs reports whether the inputs of inverters take a field, and whether its strings can be fused.
func (e *enumeration) hangs(x *field, inv *catalog.Inverter) bool {
	fullV := float64(x.series) * x.module.VmpV
	return x.inputs <= x.units*inv.MPPTInputs && reaches(inv.SolarMaxVocV, e.coldV(x)) && reaches(x.module.MaxSystemV, e.coldV(x)) &&
		reaches(e.hotV(x), inv.MPPTMinV) && reaches(inv.MPPTMaxV, fullV) && reaches(inv.MPPTMaxA, float64(x.parallel)*x.module.ImpA)
}

// keepsModules reports whether a field has the modules that are to be kept.
func (e *enumeration) keepsModules(x *field) bool {
	for i := range e.c.Solar {
		has := 0.0
		if x != nil && x.module == &e.c.Solar[i] {
			has = float64(x.modules())
		}
		if has < e.market.goods[e.c.Solar[i].ID].kept {
			return false
		}
	}
	return true
}

// solarDuty returns the duty of the path of one input.
func (e *enumeration) solarDuty(x *field) (d wiring.Duty, planned bool) {
	strings := float64(x.parallel)
	d, planned = e.runDuty(scenarios.RunSolar, 1.25*strings*x.module.IscA, float64(x.series)*x.module.VmpV, e.coldV(x))
	d.AmbientC, d.DropA, d.OwnBreakerA = max(d.AmbientC, e.s.Sun.HottestC), strings*x.module.ImpA, 0
	d.Poles, d.Ground, d.Array = 2, true, true
	return d, planned
}

// fused reports whether each string of a field needs a fuse.
func (x *field) fused() bool {
	if x.module.MaxFuseA == 0 {
		return x.parallel > 2
	}
	return !reaches(x.module.MaxFuseA, 1.25*float64(x.parallel-1)*x.module.IscA)
}

// stringFuses returns every fuse that may protect each string of a field, one for each of them.
func (e *enumeration) stringFuses(x *field) []option {
	var list []option
	for i := range e.c.Devices {
		f := &e.c.Devices[i]
		if f.Type != "fuse" || f.Class == "aR" || !reaches(f.RatingA, 1.5625*x.module.IscA) || x.module.MaxFuseA > 0 && !reaches(x.module.MaxFuseA, f.RatingA) ||
			!reaches(f.MaxDCV, e.coldV(x)) || !reaches(f.InterruptingDCA, 1.25*float64(x.parallel)*x.module.IscA) ||
			!slices.Contains(ratings.Standard(string(e.s.Rules), "fuse"), f.RatingA) {
			continue
		}
		list = append(list, option{takes: []take{{e.market.goods[f.ID], float64(x.inputs * x.parallel)}}})
	}
	return list
}

// sunServes reports whether the share of the year that is asked for is served.
func (e *enumeration) sunServes(n []int, inv *catalog.Inverter, units int) bool {
	if e.s.Sun == nil || e.s.Limits.Served == 0 {
		return true
	}
	served, _ := e.year(n, inv, units)
	return reaches(served, e.s.Limits.Served)
}

// year runs the store through the year again and again until a year ends as it began, and returns what share of what
// the bus is asked for is served, and what is drawn from the store.
func (e *enumeration) year(n []int, inv *catalog.Inverter, units int) (served, drawnWh float64) {
	siemens, lossiest := 0.0, 1.0
	for b := range n {
		siemens += float64(n[b]) / e.ohms(&e.c.Batteries[b])
	}
	chargeA := math.Inf(1)
	for b := range n {
		if bat := &e.c.Batteries[b]; n[b] > 0 {
			chargeA, lossiest = min(chargeA, bat.MaxChargeA*e.ohms(bat)*siemens), min(lossiest, bat.RoundTrip)
		}
	}
	room, chargeW := e.usableWh(n), chargeA*e.s.Bus.NominalV
	light := e.s.Sun.Hours
	var asked [24]float64
	for h := range asked {
		asked[h] = e.house.sinceWh(inv.Efficiency, float64(units)*inv.IdleW, float64(h+1)) - e.house.sinceWh(inv.Efficiency, float64(units)*inv.IdleW, float64(h))
	}
	stored := room / 2
	for {
		began, short, all := stored, 0.0, 0.0
		drawnWh = 0
		for h, wm2 := range light.POA {
			sunWh := 0.0
			if x := e.field; x != nil && wm2 > 0 {
				each := x.module.Watts * wm2 / 1000 * (1 + x.module.PowerTempPctPerC/100*cell(x.module, light.TempC[h], wm2)) * (1 - e.s.Sun.Losses)
				// The inputs are alike, so the unit with most of them is full first, and then all are held back.
				each = min(each, inv.SolarMaxW/float64(x.most()*x.series*x.parallel))
				sunWh = max(0, each) * float64(x.modules())
			}
			all += asked[h%24]
			if more := sunWh - asked[h%24]; more >= 0 {
				stored = min(room, stored+lossiest*min(more, chargeW))
			} else {
				give := min(-more, stored)
				stored -= give
				drawnWh += give
				short += -more - give
			}
		}
		if math.Abs(stored-began) <= 1e-9*room {
			return 1 - short/all, drawnWh
		}
	}
}
