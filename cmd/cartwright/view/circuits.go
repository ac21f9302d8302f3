package view

import (
	"fmt"
	"strings"

	"cartwright/optimize/plan"
)

// circuits shows what is connected to each circuit, on which leg, and how much of its device that takes.
func (p Plans) circuits(one *plan.Plan) section {
	if !p.Full {
		return section{title: detailTitle(one, "circuits"), prose: circuitText(one.Circuits)}
	}
	t := &table{columns: []column{
		text("circuit"), text("leg"), text("loads"), number("together\nA"), number("device\nA"), number("left\nA"),
	}}
	for _, c := range one.Circuits {
		leg, loads := c.Leg, items(c.Loads...)
		if leg == "" {
			leg = none
		}
		if len(c.Loads) == 0 {
			loads = "nothing"
		}
		t.row(c.Circuit, leg, loads, fixed(c.CurrentA, 1), fixed(c.DeviceA, 0), fixed(c.DeviceA-c.CurrentA, 1))
	}
	return section{title: detailTitle(one, "circuits"), table: t}
}

// circuitText says the same in a line each.
func circuitText(circuits []plan.Circuit) []string {
	var lines []string
	for _, c := range circuits {
		leg, loads := "", "nothing"
		switch c.Leg {
		case "":
		case "both":
			leg = " (both legs)"
		default:
			leg = " (leg " + c.Leg + ")"
		}
		if len(c.Loads) > 0 {
			loads = strings.Join(c.Loads, ", ")
		}
		lines = append(lines, fmt.Sprintf("%s%s: %s; %s of %s A.", c.Circuit, leg, loads, fixed(c.CurrentA, 1), fixed(c.DeviceA, 0)))
	}
	return lines
}
