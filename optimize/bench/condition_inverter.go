package bench

import (
	"fmt"
	"strings"

	"cartwright/catalog"
	"cartwright/optimize/energy"
	"cartwright/optimize/plan"
	"cartwright/optimize/wiring"
)

// Serving is a number of equal inverters in parallel that may serve the loads.
type Serving struct {
	Inverter *catalog.Inverter
	Units    int
}

// all returns a figure of all units together.
func (v Serving) all(each float64) float64 { return float64(v.Units) * each }

// InverterConditions are those that a number of inverters has to meet to serve, in the order in which they are checked
// and named.
func (b *Bench) InverterConditions() []Condition[Serving] {
	s, d := b.Scenario, b.Demand
	largest := func(left []Serving, watts func(*catalog.Inverter) float64) (most float64) {
		for _, v := range left {
			most = max(most, v.all(watts(v.Inverter)))
		}
		return most
	}
	const side = ", in the number its maker allows side by side,"
	continuous := func(inv *catalog.Inverter) float64 { return inv.ContinuousW }
	leg := func(inv *catalog.Inverter) float64 { return inv.LegW }
	surge := func(inv *catalog.Inverter) float64 { return inv.SurgeW }
	legSurge := func(inv *catalog.Inverter) float64 { return inv.LegSurgeW }
	window := func([]Serving) string {
		return fmt.Sprintf("no inverter of the catalogue takes the whole bus, from %s to %s V", Figure(s.Bus.LowV), Figure(s.Bus.HighV))
	}
	return []Condition[Serving]{
		{"dc_min_v", func(v Serving) bool { return plan.AtMost(v.Inverter.DCMinV, s.Bus.LowV) },
			func(v Serving) string {
				return fmt.Sprintf("it works from %s V up, the bus goes down to %s V (inverters.csv, dc_min_v; bus.low)", Figure(v.Inverter.DCMinV), Figure(s.Bus.LowV))
			}, window},
		{"dc_max_v", func(v Serving) bool { return plan.AtLeast(v.Inverter.DCMaxV, s.Bus.HighV) },
			func(v Serving) string {
				return fmt.Sprintf("it works up to %s V, the bus goes up to %s V (inverters.csv, dc_max_v; bus.high)", Figure(v.Inverter.DCMaxV), Figure(s.Bus.HighV))
			}, window},
		{"ac_v", func(v Serving) bool { return energy.InverterServes(s, d, v.Inverter) },
			func(v Serving) string {
				return fmt.Sprintf("its output of %s V does not give %s (inverters.csv, ac_v)", v.Inverter.ACV, b.VoltsAsked())
			},
			func([]Serving) string { return "no inverter that takes the bus gives " + b.VoltsAsked() }},
		{"continuous_w", func(v Serving) bool { return b.Partial || plan.AtLeast(v.all(v.Inverter.ContinuousW), d.PeakTotalVA()) },
			func(v Serving) string {
				return fmt.Sprintf("%d of it give %s W, the loads that can be on together draw %s W (inverters.csv, continuous_w and max_units; loads)", v.Units, Figure(v.all(v.Inverter.ContinuousW)), Figure(d.PeakTotalVA()))
			},
			func(left []Serving) string {
				return fmt.Sprintf("no inverter that fits%s carries the loads that can be on together, %s W; the largest gives %s W", side, Figure(d.PeakTotalVA()), Figure(largest(left, continuous)))
			}},
		{"leg_w", func(v Serving) bool {
			return b.Partial || v.Inverter.ACV != ThreeWire || plan.AtLeast(v.all(v.Inverter.LegW), d.PeakLegVA())
		},
			func(v Serving) string {
				return fmt.Sprintf("%d of it give %s W a leg, the loads on one leg draw %s W (inverters.csv, leg_w; loads, leg)", v.Units, Figure(v.all(v.Inverter.LegW)), Figure(d.PeakLegVA()))
			},
			func(left []Serving) string {
				return fmt.Sprintf("no inverter that fits%s carries the loads on one leg, %s W; the largest gives %s W a leg", side, Figure(d.PeakLegVA()), Figure(largest(left, leg)))
			}},
		{"surge_w", func(v Serving) bool { return b.Partial || plan.AtLeast(v.all(v.Inverter.SurgeW), d.PeakSurgeVA()) },
			func(v Serving) string {
				return fmt.Sprintf("%d of it give %s W for a moment, the largest start with all else on takes %s W (inverters.csv, surge_w; loads, start)", v.Units, Figure(v.all(v.Inverter.SurgeW)), Figure(d.PeakSurgeVA()))
			},
			func(left []Serving) string {
				return fmt.Sprintf("no inverter that fits%s carries the largest start, %s W with all else on; the strongest gives %s W for a moment", side, Figure(d.PeakSurgeVA()), Figure(largest(left, surge)))
			}},
		{"leg_surge_w", func(v Serving) bool {
			return b.Partial || v.Inverter.ACV != ThreeWire || plan.AtLeast(v.all(v.Inverter.LegSurgeW), d.PeakLegSurgeVA())
		},
			func(v Serving) string {
				return fmt.Sprintf("%d of it give %s W a leg for a moment, the largest start on one leg takes %s W (inverters.csv, leg_surge_w; loads, start)", v.Units, Figure(v.all(v.Inverter.LegSurgeW)), Figure(d.PeakLegSurgeVA()))
			},
			func(left []Serving) string {
				return fmt.Sprintf("no inverter that fits%s carries the largest start on one leg, %s W; the strongest gives %s W a leg for a moment", side, Figure(d.PeakLegSurgeVA()), Figure(largest(left, legSurge)))
			}},
		{"charger_ac_v", func(v Serving) bool {
			return s.Recharge == nil || s.Recharge.Supply == nil || v.Inverter.ChargesFrom(s.Recharge.Supply.Volts)
		},
			func(v Serving) string {
				return fmt.Sprintf("its charger takes %s V, the supply gives %s V (inverters.csv, charger_ac_v; recharge.supply)", v.Inverter.ChargerACV, Figure(s.Recharge.Supply.Volts))
			},
			func([]Serving) string {
				return fmt.Sprintf("no inverter that carries the loads charges from %s V, as recharge.supply has", Figure(s.Recharge.Supply.Volts))
			}},
		{"charger_a", func(v Serving) bool { return s.Recharge == nil || v.Inverter.ChargerA > 0 },
			func(Serving) string { return "it has no charger, and recharge asks for one (inverters.csv, charger_a)" },
			func([]Serving) string {
				return "no inverter that carries the loads has a charger, and recharge asks for one"
			}},
		{"to be had", func(v Serving) bool { return b.Market.Part(v.Inverter.ID).Available(float64(v.Units)) },
			func(v Serving) string {
				a := b.Market.Part(v.Inverter.ID)
				return fmt.Sprintf("only %s can be had, %d are needed", Figure(a.Have+a.Buyable), v.Units)
			},
			func([]Serving) string { return "no inverter can be had in the number that serves the loads" }},
		b.wired("main wiring", "the main", func(v Serving) (wiring.Duty, bool) { return wiring.MainDuty(s, wiring.UnitA(s, v.Inverter, 0)) }),
		b.wired("feeder wiring", "the feeder", func(v Serving) (wiring.Duty, bool) { return wiring.FeederDuty(s, v.Inverter) }),
	}
}

// wired is the condition that a path of the inverters can be built. Where it can be for none, it is said of the
// smallest.
func (b *Bench) wired(name, path string, duty func(Serving) (wiring.Duty, bool)) Condition[Serving] {
	return Condition[Serving]{name, func(v Serving) bool {
		_, ok := b.RunOptions(duty(v))
		return ok
	},
		func(v Serving) string {
			d, _ := duty(v)
			return b.NoRun(d, path+" of it")
		},
		func(left []Serving) string {
			least, kinds := left[0], map[string]bool{}
			for _, v := range left {
				kinds[v.Inverter.ID] = true
				if v.all(v.Inverter.ContinuousW) < least.all(least.Inverter.ContinuousW) {
					least = v
				}
			}
			of := fmt.Sprintf(" of %d x %s", least.Units, least.Inverter.ID)
			if len(kinds) > 1 {
				of += " (the smallest that serves)"
			}
			d, _ := duty(least)
			return b.NoRun(d, path+of)
		}}
}

// VoltsAsked names the voltages that loads and circuits need from an inverter.
func (b *Bench) VoltsAsked() string {
	var volts []string
	seen := map[string]bool{}
	for i := range b.Scenario.Circuits {
		if v := Figure(b.Scenario.Circuits[i].Volts) + " V"; !seen[v] && !b.Scenario.Circuits[i].DC {
			seen[v] = true
			volts = append(volts, v)
		}
	}
	words := strings.Join(volts, " and ") + " for the circuits"
	if len(volts) == 0 {
		words = "the volts asked for"
	}
	if b.Demand.NeedsBothLegs {
		words += ", and 240 V between two legs for loads"
	}
	return words
}

// Servings lists an inverter in every number its maker allows.
func Servings(inv *catalog.Inverter) []Serving {
	var list []Serving
	for u := 1; u <= max(1, inv.MaxUnits); u++ {
		list = append(list, Serving{inv, u})
	}
	return list
}
