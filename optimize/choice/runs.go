package choice

import (
	"cartwright/optimize/bench"
	"cartwright/optimize/plan"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// runs returns the wiring schedule: strings, mains, solar runs, feeders, circuits, inlet, bond.
func runs(b *bench.Bench, c *Choice) []plan.Run {
	total, count := 0.0, 0
	for i, k := range c.Stacks {
		total += float64(c.Strings[i]) * b.Stacks[k].ShortA
		count += c.Strings[i]
	}
	v := &b.Supplies[c.Supply]
	circuits := map[string]*scenarios.Circuit{}
	for i := range b.Scenario.Circuits {
		circuits["branch "+b.Scenario.Circuits[i].Name] = &b.Scenario.Circuits[i]
	}
	var list []plan.Run
	for i := range c.Fills {
		f := &c.Fills[i]
		switch f.Kind {
		case SlotString:
			st := &b.Stacks[f.Stack]
			d, _ := wiring.StringDuty(b.Scenario, st.Battery, v.BusA, count)
			r := wired(b, &d, f, wiring.StringFaultA(st.ShortA, total))
			r.Battery = st.Battery.ID
			list = append(list, r)
		case SlotMain:
			d, _ := wiring.MainDuty(b.Scenario, v.UnitA)
			list = append(list, wired(b, &d, f, total))
		case SlotFeeder:
			d, _ := wiring.FeederDuty(b.Scenario, v.Inverter)
			list = append(list, wired(b, &d, f, b.Scenario.ACFaultA))
		case SlotSolar:
			x := b.Strung(v.Array)
			d, _ := wiring.SolarDuty(b.Scenario, x)
			r := wired(b, &d, f, d.DesignA)
			if fuse := stringFuse(c); fuse != "" {
				r.StringFuse, r.StringFuses = fuse, v.Array.Parallel
			}
			list = append(list, r)
		case SlotFixed:
			switch circuit := circuits[f.Slot]; {
			case circuit != nil:
				d, _ := wiring.BranchDuty(b.Scenario, circuit)
				fault := b.Scenario.ACFaultA
				if circuit.DC {
					fault = total
				}
				list = append(list, wired(b, &d, f, fault))
			case f.Slot == "inlet":
				d, _ := wiring.InletDuty(b.Scenario)
				list = append(list, wired(b, &d, f, b.Scenario.ACFaultA))
			case f.Slot == "bond":
				d, _ := wiring.BondDuty(b.Scenario)
				list = append(list, bond(&d, f))
			}
		}
	}
	return list
}

// wired returns the run of a number of equal paths, with all its figures.
func wired(b *bench.Bench, d *wiring.Duty, f *Fill, faultA float64) plan.Run {
	w := f.Option.Wire
	r := b.Rules.Check(*d, w, faultA)
	run := plan.Run{
		Run: string(d.Kind), Name: d.Name, Cable: w.Cable.ID, Sets: w.Sets, Count: f.Paths,
		LengthM: d.LengthM, BoughtM: d.BoughtM, Conductors: d.Conductors, DesignA: d.DesignA, RequiredA: r.RequiredA,
		AllowedA: r.AllowedA, DeviceA: r.DeviceA, DropPct: r.DropPct, DropLimitPct: 100 * d.Drop, FaultA: faultA,
		InterruptingA: r.InterruptingA, Links: d.Links, Devices: w.Devices, OwnDevice: w.BuiltIn,
	}
	if d.Links > 0 {
		run.LinkM = d.LinkM
	}
	if w.Ground != nil {
		run.Ground = w.Ground.ID
	}
	if w.Device != nil {
		run.Device = w.Device.ID
	}
	if w.Conduit != nil {
		run.Conduit = w.Conduit.ID
	}
	return run
}

// bond returns the run of the bond: a grounding conductor and nothing else.
func bond(d *wiring.Duty, f *Fill) plan.Run {
	run := plan.Run{Run: string(d.Kind), Ground: f.Option.Wire.Ground.ID, Sets: 1, Count: 1, LengthM: d.LengthM, BoughtM: d.BoughtM}
	if f.Option.Wire.Conduit != nil {
		run.Conduit = f.Option.Wire.Conduit.ID
	}
	return run
}

// stringFuse returns the part that fuses each string of modules, "" where there is none.
func stringFuse(c *Choice) string {
	for i := range c.Fills {
		if c.Fills[i].Kind == SlotStringFuse {
			return c.Fills[i].Option.Part
		}
	}
	return ""
}
