package view

import (
	"fmt"

	"cartwright/optimize/plan"
)

// wiring shows every cable path of a plan; in short without the bounds of its figures.
func (p Plans) wiring(one *plan.Plan) section {
	u := p.units()
	if p.Full {
		return section{title: detailTitle(one, "wiring"), table: u.wiringTable(one.Runs)}
	}
	t := &table{columns: []column{
		text("run"), text("cable"), text("device"), number("cut\n" + u.unit("m")), number("design\nA"), number("device\nA"),
	}}
	for _, r := range one.Runs {
		device, rating := u.device(r)
		design := fixed(r.DesignA, 1)
		if r.Run == bond {
			design = none
		}
		cable := r
		if r.Run != bond {
			cable.Ground, cable.Conduit = "", ""
		}
		t.row(runLabel(r), u.conductors(cable), items(device...), u.cut(r), design, rating)
	}
	t.notes = []string{"Cut: each conductor, one way. --full adds ground, ampacity, drop, fault."}
	return section{title: detailTitle(one, "wiring"), table: t}
}

// wiringTable shows cable paths with what each carries, what protects it and, on the second line of each,
// the bound of each figure. A path without a device has the inverter's own breaker only where a rating says
// so; a path of owned parts may have none at all, and that must not read like protection.
func (u units) wiringTable(runs []plan.Run) *table {
	t := &table{columns: []column{
		text("run"), text("cable, ground, device"), number("length\n" + u.unit("m")), number("design\nA"), number("device\nA"),
		number("ampacity\nA"), number("drop\n%"), number("fault\nkA"),
	}}
	cut := false
	for _, r := range runs {
		device, rating := u.device(r)
		length := fixed(roundedAway(u.figure(r.LengthM, "m"), 0, 2), 2)
		if r.BoughtM > r.LengthM {
			length, cut = length+"\ncut "+u.cut(r), true
		}
		if r.Run == bond {
			t.row(runLabel(r), u.conductors(r), length, none, none, none, none, none)
			continue
		}
		ampacity := fixed(r.AllowedA, 1)
		if r.AllowedA == 0 {
			ampacity = none // it depends on the device
		}
		fault := fixed(r.FaultA/1000, 1)
		if r.InterruptingA > 0 {
			fault += "\n<=" + fixed(r.InterruptingA/1000, 1)
		}
		t.row(runLabel(r), items(append([]string{u.conductors(r)}, device...)...), length, fixed(r.DesignA, 1),
			rating+"\n>="+fixed(r.RequiredA, 1),
			ampacity+"\n>="+fixed(r.DesignA, 1),
			fixed(r.DropPct, 2)+"\n<="+fixed(r.DropLimitPct, 2), fault)
	}
	t.notes = []string{
		"Second line of a run: the bound of the figure above it. Fault: what can flow into a short circuit, " +
			"and what the device can interrupt. Length: one way.",
	}
	if cut {
		t.notes = append(t.notes, "Cut: what each conductor is cut to, slack and whole steps included.")
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
		label += " " + r.Name
	case r.Battery != "":
		label += " " + r.Battery
	}
	return label
}

// conductors lists what is pulled on a run: its conductors, the ground, series links and conduit.
func (u units) conductors(r plan.Run) string {
	var parts []string
	all := r.Conductors * max(r.Sets, 1)
	if all > 0 && r.Cable != "" {
		parts = append(parts, fmt.Sprintf("%d x %s", all, r.Cable))
	}
	if r.Sets > 1 {
		parts = append(parts, fmt.Sprintf("%d sets", r.Sets))
	}
	if r.Ground != "" {
		ground := "1 x " + r.Ground
		if r.Ground == r.Cable {
			ground += " ground"
		}
		parts = append(parts, ground)
	}
	if r.Links > 0 {
		parts = append(parts, fmt.Sprintf("%s of %s", count(r.Links, "link", "links"), u.with(r.LinkM, "m")))
	}
	if r.Conduit != "" {
		parts = append(parts, "in "+r.Conduit)
	}
	return items(parts...)
}

// device names what protects a run, and its rating.
func (u units) device(r plan.Run) (names []string, rating string) {
	rating = fixed(r.DeviceA, 0)
	switch {
	case r.OwnDevice && r.Device == "":
		names = []string{"the battery's own"}
	case r.OwnDevice:
		names = []string{"the battery's own", r.Device + " at the bus bars"}
	case r.Device == "" && r.DeviceA > 0:
		names = []string{"own breaker"}
	case r.Device == "" && r.Run == bond:
		names, rating = []string{none}, none
	case r.Device == "":
		names, rating = []string{"NO FUSE OR BREAKER"}, none
	case r.Devices == 2:
		names = []string{"2 x " + r.Device, "one at each end"}
	default:
		names = []string{r.Device}
	}
	if r.StringFuses > 0 {
		names = append(names, fmt.Sprintf("%d x %s", r.StringFuses, r.StringFuse))
	}
	return names, rating
}

// bond is the run that needs no device: it carries no current until something is wrong.
const bond = "bond"

// cut returns what each conductor of a run is cut to.
func (u units) cut(r plan.Run) string {
	return fixed(roundedAway(u.figure(max(r.BoughtM, r.LengthM), "m"), 0, 2), 2)
}
