package view

import (
	"fmt"

	"cartwright/optimize/plan"
)

// wiring shows every cable path of a plan.
func wiring(one *plan.Plan) section {
	return section{title: detailTitle(one, "wiring"), table: wiringTable(one.Runs)}
}

// wiringTable shows cable paths with what each carries, what protects it and, on the second line of each,
// the bound of each figure. A path without a device has the inverter's own breaker only where a rating says
// so; a path of owned parts may have none at all, and that must not read like protection.
func wiringTable(runs []plan.Run) *table {
	t := &table{columns: []column{
		text("run"), text("cable, ground,\ndevice"), number("length\nm"), number("design\nA"), number("device\nA"),
		number("ampacity\nA"), number("drop\n%"), number("fault\nkA"),
	}}
	for _, r := range runs {
		device, rating, interrupts := r.Device, fixed(r.DeviceA, 0), "\n<="+fixed(r.InterruptingA/1000, 1)
		switch {
		case device == "" && r.DeviceA > 0:
			device, interrupts = "own breaker", ""
		case device == "":
			device, rating, interrupts = "NO FUSE OR BREAKER", none, ""
		}
		ampacity := fixed(r.AllowedA, 1)
		if r.AllowedA == 0 {
			ampacity = none // it depends on the device
		}
		t.row(runLabel(r), cableLabel(r)+device,
			fixed(roundedAway(r.LengthM, 0, 2), 2), fixed(r.DesignA, 1),
			rating+"\n>="+fixed(r.RequiredA, 1),
			ampacity+"\n>="+fixed(r.DesignA, 1),
			fixed(r.DropPct, 2)+"\n<="+fixed(r.DropLimitPct, 2),
			fixed(r.FaultA/1000, 1)+interrupts)
	}
	t.notes = []string{
		"Second line of a run: the bound of the figure above it. Fault: what can flow into a short circuit, " +
			"and what the device can interrupt. Length: one way.",
	}
	return t
}

// runLabel names a run: what it is for, of which battery or circuit, and how many are alike.
func runLabel(r plan.Run) string {
	label := r.Run
	if r.Count > 1 {
		label = fmt.Sprintf("%d x %s", r.Count, r.Run)
	}
	switch {
	case r.Name != "":
		label += "\n" + r.Name
	case r.Battery != "":
		label += "\n" + r.Battery
	}
	return label
}

// cableLabel lists the conductors of a run, a line each, every line ended.
func cableLabel(r plan.Run) string {
	conductors := r.Conductors * max(r.Sets, 1)
	label := fmt.Sprintf("%d x %s\n", conductors, r.Cable)
	if r.Sets > 1 {
		label = fmt.Sprintf("%d x %s, %d sets\n", conductors, r.Cable, r.Sets)
	}
	if r.Ground != "" {
		label += "1 x " + r.Ground + " ground\n"
	}
	return label
}
