package bench

import (
	"fmt"

	"cartwright/catalog"
	"cartwright/optimize/energy/array"
	"cartwright/optimize/plan"
	"cartwright/optimize/wiring"
)

// Hung is an array on the inputs of some inverters.
type Hung struct {
	Serving
	Array *array.Array
}

// strings describes the strings of an array and the inverters they are on.
func (x Hung) strings() string {
	return fmt.Sprintf("%d in series on %d x %s", x.Array.Series, x.Units, x.Inverter.ID)
}

// mostSeries are the conditions that adding modules in series never helps to meet.
func (b *Bench) mostSeries() []Condition[Hung] {
	s := b.Scenario.Sun
	return []Condition[Hung]{
		{Name: "room", Met: func(x Hung) bool { return x.Array.Modules() <= array.Room(s, x.Array.Module) },
			Why: func(x Hung) string {
				m := x.Array.Module
				switch {
				case s.Room == nil:
					return fmt.Sprintf("%d are needed, there may be %d (sun.most)", x.Array.Modules(), s.Most)
				case !(m.LengthM > 0 && m.WidthM > 0):
					return "it does not state its size, so whether there is room is not known (solar.csv, length_mm and width_mm)"
				}
				return fmt.Sprintf("%d are needed, %s by %s m have room for %d (sun.room)", x.Array.Modules(), Figure(s.Room.LengthM), Figure(s.Room.WidthM), array.Room(s, m))
			}},
		{Name: "mppt_max_a", Met: func(x Hung) bool { return plan.AtMost(x.Array.InputA(), x.Inverter.MPPTMaxA) },
			Why: func(x Hung) string {
				return fmt.Sprintf("it gives %s A, an input of %s takes %s A (solar.csv, imp_a; inverters.csv, mppt_max_a)", Figure(x.Array.InputA()), x.Inverter.ID, Figure(x.Inverter.MPPTMaxA))
			}},
		{Name: "cold volts", Met: func(x Hung) bool { return plan.AtMost(x.Array.ColdV(s), x.Array.MostV(x.Inverter)) },
			Why: func(x Hung) string {
				return fmt.Sprintf("%s reach %s V in the cold, %s V are allowed (inverters.csv, solar_max_voc_v; solar.csv, max_system_v; sun.coldest)", x.strings(), Figure(x.Array.ColdV(s)), Figure(x.Array.MostV(x.Inverter)))
			}},
		{Name: "mppt_max_v", Met: func(x Hung) bool { return plan.AtMost(x.Array.FullV(), x.Inverter.MPPTMaxV) },
			Why: func(x Hung) string {
				return fmt.Sprintf("%s have %s V at full power, its inputs track up to %s V (inverters.csv, mppt_max_v)", x.strings(), Figure(x.Array.FullV()), Figure(x.Inverter.MPPTMaxV))
			}},
	}
}

// otherSeries are the other conditions: more modules in series may help to meet them.
func (b *Bench) otherSeries() []Condition[Hung] {
	s := b.Scenario
	return []Condition[Hung]{
		{Name: "mppt_min_v", Met: func(x Hung) bool { return plan.AtLeast(x.Array.HotV(s.Sun), x.Inverter.MPPTMinV) },
			Why: func(x Hung) string {
				return fmt.Sprintf("%s, the most that there is room for and the inputs take, fall to %s V in the heat, and its inputs track from %s V up (inverters.csv, mppt_min_v; sun.hottest)", x.strings(), Figure(x.Array.HotV(s.Sun)), Figure(x.Inverter.MPPTMinV))
			}},
		{Name: "to be had", Met: func(x Hung) bool {
			return b.Market.Part(x.Array.Module.ID).Available(float64(x.Array.Modules()))
		},
			Why: func(x Hung) string {
				a := b.Market.Part(x.Array.Module.ID)
				return fmt.Sprintf("only %s can be had, %d are needed", Figure(a.Have+a.Buyable), x.Array.Modules())
			}},
		{Name: "solar wiring", Met: func(x Hung) bool {
			_, ok := b.RunOptions(wiring.SolarDuty(s, b.Strung(x.Array)))
			return ok
		},
			Why: func(x Hung) string {
				d, _ := wiring.SolarDuty(s, b.Strung(x.Array))
				return b.NoRun(d, "the run of "+x.strings())
			}},
		{Name: "string fuses", Met: func(x Hung) bool {
			_, listed := wiring.SolarDuty(s, b.Strung(x.Array))
			return !listed || !wiring.StringFused(b.Strung(x.Array)) || len(b.stringFuses(x.Array)) > 0
		},
			Why: func(x Hung) string {
				return fmt.Sprintf("no fuse protects each of %d strings in parallel (solar.csv, max_fuse_a; devices.csv)", x.Array.Parallel)
			}},
	}
}

// whyNoModule says why no inverter that serves the loads can have a module: for the inverter and the number in series
// that meet the most conditions, the first that they do not meet.
func (b *Bench) whyNoModule(m *catalog.Solar) []string {
	if b.Scenario.Sun == nil {
		return []string{"the scenario has no sun, so no plan has solar modules (sun)"}
	}
	inverters := b.InverterConditions()
	conditions := append(b.mostSeries(), b.otherSeries()...)
	words, most := "no inverter that serves the loads states its inputs for modules (inverters.csv, solar_max_w, solar_max_voc_v and mppt_*)", -1
	for i := range b.Catalog.Inverters {
		for _, v := range Servings(&b.Catalog.Inverters[i]) {
			if !array.Inputs(v.Inverter) || Unmet(inverters, v) != nil {
				continue
			}
			for n := 1; ; n++ {
				x := Hung{v, &array.Array{Module: m, Series: n, Parallel: 1, Inputs: 1}}
				met := 0
				for met < len(conditions) && conditions[met].Met(x) {
					met++
				}
				if met == len(conditions) {
					return nil
				}
				if n > 1 && met < len(b.mostSeries()) {
					break // that many are too many; what is wrong with one fewer is noted already
				}
				if met >= most {
					words, most = conditions[met].Why(x), met
				}
				if met < len(b.mostSeries()) {
					break
				}
			}
		}
	}
	return []string{words}
}
