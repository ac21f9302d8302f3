package audit_test

import (
	"context"
	"math"
	"strings"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// Units as the demos are written in, by definition.
const (
	foot  = 0.3048
	inch  = 0.0254
	pound = 0.45359237
)

// byHand is a figure of a demo's first plan, worked out with pencil and tables from the parts of that plan.
type byHand struct {
	what string
	got  float64
	want float64
}

// dropOf returns a drop in percent as chapter 9 table 8 has it: amperes, feet there and back, ohm per 1000 ft.
func dropOf(amps, feet, ohmPerKft, volts float64) float64 {
	return 100 * amps * 2 * feet * ohmPerKft / 1000 / volts
}

// body is a mass at a height and an offset.
type body struct{ kg, height, off float64 }

// tipsAt returns the height of the centre of mass in mm and the angle at which a cart of four wheels tips sideways.
func tipsAt(track float64, bodies ...body) (cgMM, deg float64) {
	kg, height, side := 0.0, 0.0, 0.0
	for _, b := range bodies {
		kg += b.kg
		height += b.kg * b.height
		side += b.kg * (track/2 - math.Abs(b.off))
	}
	return 1000 * height / kg, math.Atan2(side, height) * 180 / math.Pi
}

// The first plan of each demo, computed once more: currents, fault, ampacities by NEC table 310.16 and IEC 60364-5-52
// table B.52.3, drops by chapter 9 table 8 and IEC 60228, casters, tilt, energy. The windows' energy and the mass of
// the small parts are taken from a script of its own and from the plan.
func TestDemosByHand(t *testing.T) {
	for name, figures := range map[string]func(t *testing.T, p *plan.Plan) []byHand{
		"cider-shed": ciderByHand, "lantern-market": lanternByHand, "star-party": starByHand,
	} {
		t.Run(name, func(t *testing.T) {
			s, err := scenarios.Demo(name)
			if err != nil {
				t.Fatal(err)
			}
			res, err := optimize.Rank(context.Background(), question.Problem{Scenario: s, Catalog: catalog.Embedded()}, question.Options{Plans: 1})
			if err != nil || len(res.Plans) == 0 {
				t.Fatal(err)
			}
			for _, f := range figures(t, &res.Plans[0]) {
				if math.Abs(f.got-f.want) > 1e-6*math.Abs(f.want) {
					t.Errorf("%s is %.8g, by hand %.8g", f.what, f.got, f.want)
				}
			}
		})
	}
}

func runOf(t *testing.T, p *plan.Plan, kind, of string) *plan.Run {
	t.Helper()
	for i := range p.Runs {
		if r := &p.Runs[i]; r.Run == kind && (r.Name == of || r.Battery == of) {
			return r
		}
	}
	t.Fatalf("the first plan has no %s %s; work the demo out anew", kind, of)
	return nil
}

func limitOf(t *testing.T, p *plan.Plan, name string) *plan.Limit {
	t.Helper()
	for i := range p.Limits {
		if p.Limits[i].Name == name {
			return &p.Limits[i]
		}
	}
	t.Fatalf("no limit %s", name)
	return nil
}

// coreIs fails unless the plan has the core that was worked out.
func coreIs(t *testing.T, p *plan.Plan, inverter string, batteries ...string) {
	t.Helper()
	var parts []string
	for _, b := range p.Core.Batteries {
		parts = append(parts, b.Part)
	}
	if got, want := strings.Join(parts, " "), strings.Join(batteries, " "); got != want || p.Core.Inverter.Part != inverter {
		t.Fatalf("the first plan has %s and %s, worked out are %s and %s: work the demo out anew", got, p.Core.Inverter.Part, want, inverter)
	}
}

func ciderByHand(t *testing.T, p *plan.Plan) []byHand {
	coreIs(t, p, "inv-split-5", "lfp-rack-5", "lfp-floor-16")
	rack, floor, main := runOf(t, p, "string", "lfp-rack-5"), runOf(t, p, "string", "lfp-floor-16"), runOf(t, p, "main", "")
	feeder, gauges := runOf(t, p, "feeder", ""), runOf(t, p, "dc", "gauges")
	const (
		mainA = 5000 / (0.925 * 46)
		busA  = mainA + 8.0/46 // and the vat gauges
		// At two in the afternoon: cold room, transfer pump, washer, press pump, lamps, printer, kettle.
		peak = 650/0.9 + 370/0.9 + 1500 + 750/0.9 + 120 + 90 + 1200
	)
	usable := (5.12 + 16.08) * 0.9 * math.Sqrt(0.95) * 0.9
	small := p.MassKg - 92*pound - 14*pound - 18*pound - 45 - 127 - 5.2 // inverter, cables, devices on the backboard
	cg, tilt := tipsAt(24*inch, body{92 * pound, 15 * inch, 0}, body{14 * pound, 34 * inch, 8 * inch}, body{18 * pound, 40 * inch, -6 * inch},
		body{45, 6*inch + 0.133/2, 0}, body{127, 17*inch + 0.8/2, 0}, body{5.2, 3 * inch, 0}, body{small, 36 * inch, 9 * inch})
	return []byHand{
		{"usable kWh", p.UsableKWh, usable},
		{"power", limitOf(t, p, plan.LimitPower).Limit, peak},
		{"surge: the press pump starts", limitOf(t, p, plan.LimitSurge).Limit, peak + 2*750/0.9},
		{"leg A: half of both 240 V pumps, bench, lamps", limitOf(t, p, plan.LimitLeg).Limit, (650/0.9+750/0.9)/2 + 1500 + 90 + 120},
		{"recharge, by 16,343.459 Wh in 18 h", limitOf(t, p, plan.LimitCharger).Limit, 16343.459459459 / 0.95 / 48 / 10},
		{"what the bank takes", limitOf(t, p, plan.LimitCharge).Value, math.Min(50*(1/22.0+1/8.0)*22, 150*(1/22.0+1/8.0)*8)},
		{"bus current", limitOf(t, p, plan.LimitBusCurrent).Limit, busA},
		{"what the bank gives", limitOf(t, p, plan.LimitBusCurrent).Value, math.Min(100*(1/22.0+1/8.0)*22, 200*(1/22.0+1/8.0)*8)},
		{"bars", limitOf(t, p, plan.LimitBusbarCurrent).Value, 1.25 * busA},
		{"rack: its own limit", rack.DesignA, 100}, {"rack: 1 AWG, 130 A at 75 C, 145 * 0.96 at 90 C", rack.AllowedA, 130},
		{"rack: the other feeds a fault", rack.FaultA, 58.4 / 0.008}, {"rack: its own device", rack.DeviceA, 125},
		{"rack: drop", rack.DropPct, dropOf(100, 3, 0.154, 48)},
		{"floor: the whole bus", floor.DesignA, busA}, {"floor: its own current", floor.FaultA, 58.4 / 0.008},
		{"main", main.DesignA, mainA}, {"main asks for", main.RequiredA, 1.25 * mainA}, {"main: 2/0 AWG at 75 C", main.AllowedA, 175},
		{"main: both strings", main.FaultA, 58.4/0.022 + 58.4/0.008}, {"main: drop", main.DropPct, dropOf(mainA, 4, 0.0967, 48)},
		{"feeder: all of a leg", feeder.DesignA, math.Max(5000.0/240, 2500.0/120)}, {"feeder: drop", feeder.DropPct, dropOf(5000.0/240, 4, 0.778, 240)},
		{"feeder: cut to 4.4 ft and so to 5", feeder.BoughtM, 5 * foot},
		{"gauges: drop", gauges.DropPct, dropOf(15, 12, 3.14, 48)},
		{"bench: the printer runs ten hours", p.Circuits[3].CurrentA, (1500 + 1.25*90) / 120},
		{"caster load", p.Casters.LoadEachKg, 1.33 * p.MassKg / 3},
		{"centre of mass", p.Balance.CGHeightMM, cg}, {"tilt", p.Balance.TiltDeg, tilt},
	}
}

func lanternByHand(t *testing.T, p *plan.Plan) []byHand {
	coreIs(t, p, "inv-230-3-48", "lfp-rack-5-old", "lfp-rack-7")
	rack, main, feeder, ramp := runOf(t, p, "string", "lfp-rack-7"), runOf(t, p, "main", ""), runOf(t, p, "feeder", ""), runOf(t, p, "dc", "ramp")
	const (
		mainA = 3000 / (0.93 * 46)
		busA  = mainA + 24.0/46
		peak  = 420 + 600 + 1350 + 90 + 180 + 160/0.7
		hot   = 1 + 0.00393*50 // IEC 60228 is at 20 C, a loaded conductor at 70 C
	)
	return []byHand{
		{"usable kWh", p.UsableKWh, (5.12*0.75*math.Sqrt(0.92) + 7.17*0.9*math.Sqrt(0.95)) * 0.9},
		{"power", limitOf(t, p, plan.LimitPower).Limit, peak},
		{"surge: the ice chest starts", limitOf(t, p, plan.LimitSurge).Limit, peak + 4*160/0.7},
		{"recharge, by 8,849.656 Wh in 9 h, the old one lossiest", limitOf(t, p, plan.LimitCharger).Limit, 8849.655913978 / 0.92 / 48 / 12},
		{"80 % of the harbour's socket", limitOf(t, p, plan.LimitCharger).Value, 0.8 * 230 * 16 * 0.93 / 48},
		{"bus current", limitOf(t, p, plan.LimitBusCurrent).Limit, busA},
		{"what the bank gives", limitOf(t, p, plan.LimitBusCurrent).Value, math.Min(80*(1/34.0+1/17.0)*34, 120*(1/34.0+1/17.0)*17)},
		{"rack: the whole bus", rack.DesignA, busA}, {"rack: 35 mm2, XLPE, method C", rack.AllowedA, 171}, {"rack: its own device", rack.DeviceA, 160},
		{"rack: its own current", rack.FaultA, 58.4 / 0.017}, {"rack: drop", rack.DropPct, 100 * busA * 1.6 * 0.554e-3 * hot / 48},
		{"main", main.DesignA, mainA}, {"main: 16 mm2, XLPE, method C", main.AllowedA, 107}, {"main: both strings", main.FaultA, 58.4/0.034 + 58.4/0.017},
		{"main: drop", main.DropPct, 100 * mainA * 2.4 * 1.21e-3 * hot / 48},
		{"feeder", feeder.DesignA, 3000.0 / 230}, {"feeder: 1.5 mm2, PVC, method B1", feeder.AllowedA, 17.5},
		{"ramp: 1.5 mm2, PVC, method C", ramp.AllowedA, 19.5}, {"ramp: drop", ramp.DropPct, 100 * 10 * 8 * 13.3e-3 * hot / 48},
		{"ramp: 5 % of slack", ramp.BoughtM, 4.2},
		{"caster load", p.Casters.LoadEachKg, 1.5 * p.MassKg / 3},
		{"push", limitOf(t, p, plan.LimitPush).Value, (0.02 + 0.098) * p.MassKg * 9.80665},
		{"hold: two of four brake", limitOf(t, p, plan.LimitHold).Value, 100 * 0.5 * 2 / 4},
	}
}

func starByHand(t *testing.T, p *plan.Plan) []byHand {
	coreIs(t, p, "inv-120-1-24", "nmc-used-7s")
	cell, main, feeder := runOf(t, p, "string", "nmc-used-7s"), runOf(t, p, "main", ""), runOf(t, p, "feeder", "")
	const mainA = 1000 / (0.89 * 22)
	small := p.MassKg - 34*pound - 9*pound - 11*pound - 3*20.5 - 3.4
	cg, tilt := tipsAt(19*inch, body{34 * pound, 13 * inch, 0}, body{9 * pound, 26 * inch, 0}, body{11 * pound, 28 * inch, 5 * inch},
		body{2 * 20.5, 9*inch + 0.115/2, 0}, body{20.5, 22*inch + 0.115/2, 0}, body{3.4, 0.08, 0}, body{small, 24 * inch, -4 * inch})
	return []byHand{
		{"usable kWh", p.UsableKWh, 3 * 3 * 0.75 * math.Sqrt(0.95) * 0.85},
		{"bus current", limitOf(t, p, plan.LimitBusCurrent).Limit, mainA}, {"what three strings give", limitOf(t, p, plan.LimitBusCurrent).Value, 3 * 80},
		{"string: the whole bus", cell.DesignA, mainA}, {"string: 3 AWG, 85 A at 60 C", cell.AllowedA, 85},
		{"string: the two others", cell.FaultA, 2 * 28.7 / 0.015}, {"string: drop", cell.DropPct, dropOf(mainA, 2, 0.245, 24)},
		{"main: all three", main.FaultA, 3 * 28.7 / 0.015}, {"main: drop", main.DropPct, dropOf(mainA, 2.5, 0.245, 24)},
		{"feeder", feeder.DesignA, 1000.0 / 120}, {"feeder: the inverter's own", feeder.DeviceA, 15}, {"feeder: drop", feeder.DropPct, dropOf(1000.0/120, 2, 1.98, 120)},
		{"tray: two in one column of 30 cm and 35 across", limitOf(t, p, plan.LimitShelfRoom+"tray").Value, 2 * (0.3 + 0.5*inch) / ((30 + 0.5) * inch)},
		{"caster load", p.Casters.LoadEachKg, 2 * p.MassKg / 3},
		{"push on grass", limitOf(t, p, plan.LimitPush).Value, (0.06 + 0.09) * p.MassKg * 9.80665},
		{"centre of mass", p.Balance.CGHeightMM, cg}, {"tilt", p.Balance.TiltDeg, tilt},
	}
}
