package picture

import (
	"fmt"
	"math"
	"strings"

	"cartwright/cmd/cartwright/picture/scene"
	"cartwright/cmd/cartwright/picture/told"
	"cartwright/optimize/plan"
)

// Point is a plan on the trade-off between cost and something else.
type Point struct {
	At   float64 // the other figure
	Cost float64 // in the currency
	Name string
	Knee bool // the step that gains the most for its money
}

// Tradeoff is a staircase of plans: for each figure the cheapest plan.
type Tradeoff struct {
	Title     string
	XName     string
	YName     string
	Points    []Point // X rising
	CostAlong bool    // cost is the X axis: the figure is what money buys
	Falls     bool    // cost falls along X: a plan serves from its own figure on
}

// Costs draws what a usable kWh costs in each plan as bars, and below it the trade-off where one is given.
func Costs(name, currency string, plans []plan.Plan, t *Tradeoff) *scene.Scene {
	s := &scene.Scene{W: pageWidth, Title: name + ": what a usable kWh costs"}
	y := heading(s, name+": what a usable kWh costs", "Cost of the whole plan, what is bought now, over the energy that may be used, in "+currency+" for each kWh.")
	y = bars(s, y+4, plans)
	if t != nil && len(t.Points) > 0 {
		y = t.draw(s, y+26)
	}
	s.H = y + margin
	return s
}

// Names returns a plan's core in a few words. No line is broken between a number and what it counts.
func Names(p *plan.Plan) string {
	var words []string
	add := func(n int, part string) { words = append(words, fmt.Sprint(n, scene.Stuck, "x", scene.Stuck, part)) }
	for _, b := range p.Core.Batteries {
		add(b.Strings*max(1, b.Series), b.Part)
	}
	add(p.Core.Inverter.Units, p.Core.Inverter.Part)
	for _, a := range p.Core.Solar {
		add(a.Series*a.Parallel*a.Inputs, a.Part)
	}
	return strings.Join(words, ", ")
}

// bars draws a bar a plan, and returns the Y below.
func bars(s *scene.Scene, y float64, plans []plan.Plan) float64 {
	most := 1e-9
	for i := range plans {
		most = math.Max(most, plans[i].CostPerUsableKWh)
	}
	const names = 270.0
	room := s.W - 2*margin - names - 70
	ascent, _ := scene.Rise(smallSize)
	for i := range plans {
		p := &plans[i]
		lines := scene.Wrap(fmt.Sprintf("%d: %s", p.Rank, Names(p)), smallSize, false, names-10, 3)
		height := math.Max(20, float64(len(lines))*scene.Leading(smallSize)+4)
		for k, l := range lines {
			s.Write(scene.Text{At: scene.Point{X: margin, Y: y + ascent + 2 + float64(k)*scene.Leading(smallSize)}, Words: l, Size: smallSize})
		}
		width := math.Max(0, p.CostPerUsableKWh/most*room)
		bar := scene.Box{X: margin + names, Y: y + height/2 - 7, W: width, H: 14}
		s.Add(scene.Rect(bar, thin(), scene.Sky))
		s.Write(scene.Text{At: scene.Point{X: bar.Right() + 6, Y: bar.Y + 11}, Words: told.Fixed(p.CostPerUsableKWh, 2), Size: smallSize})
		y += height + 4
	}
	return y
}
