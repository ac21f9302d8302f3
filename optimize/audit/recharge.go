package audit

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"cartwright/optimize/plan"
)

const (
	ruleCharger     = "recharge, charger"
	ruleCharge      = "recharge, batteries"
	ruleSupplyVolts = "supply volts"
)

var rechargeRules = []Rule{
	{ruleCharger, "A", "units * charger_a, and what the supply gives at 80 % of its device, >= E / (round trip * bus nominal * within)",
		"E = V·I·t; continuous load of a device: NEC 210.23(A), from memory"},
	{ruleCharge, "A", "what the bank takes, shared by conductance, >= the same", "current division in parallel branches; " + fromMaker},
	{ruleSupplyVolts, "V", "the supply's volts are among charger_ac_v", fromMaker},
}

// supplyShare is the part of a supply's device that a charger may draw continuously: NEC 210.23(A), from memory.
const supplyShare = 0.8

// recharge checks whether the energy of the autonomy can be put back in time, where the scenario asks for that. What
// leaves the bus needs 1 / round trip of itself to go back in, by the lossiest battery.
func (a *auditor) recharge() {
	r := a.s.Recharge
	if r == nil {
		return
	}
	trip, lossiest := a.lossiest()
	gives := a.units * a.inverter.ChargerA
	if r.Supply != nil {
		gives = math.Min(gives, supplyShare*r.Supply.Volts*r.Supply.DeviceA*a.inverter.Efficiency/a.s.Bus.NominalV)
		a.exactly(ruleSupplyVolts, named(a.chargerVolts(r.Supply.Volts)), 1, a.inverter.ID+" on "+a.inverter.ChargerACV+" V")
	}
	needA := a.neededWh() / trip / (a.s.Bus.NominalV * r.WithinH)
	takes, first := a.chargeA()
	a.limited(ruleCharger, plan.LimitCharger, gives, needA, true, lossiest)
	a.limited(ruleCharge, plan.LimitCharge, takes, needA, true, first)
}

// chargerVolts returns the entry of charger_ac_v for a supply's volts, "" where there is none.
func (a *auditor) chargerVolts(volts float64) string {
	stated := a.inverter.ChargerACV
	if stated == "" {
		stated = a.inverter.ACV
	}
	if text := fmt.Sprintf("%g", volts); slices.Contains(strings.Split(stated, "/"), text) {
		return text
	}
	return ""
}

// chargeA returns the charging current the bank takes before the first string is at its limit.
func (a *auditor) chargeA() (amps float64, first string) {
	return a.shared(func(b *bank) float64 { return b.MaxChargeA })
}

// lossiest returns the least round trip of the batteries, and whose it is; 1 without batteries.
func (a *auditor) lossiest() (trip float64, battery string) {
	trip = 1
	for _, b := range a.strings {
		if b.count > 0 && (battery == "" || b.RoundTrip < trip) {
			trip, battery = b.RoundTrip, b.ID
		}
	}
	return trip, battery
}
