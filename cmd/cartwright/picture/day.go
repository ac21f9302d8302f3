package picture

import (
	"fmt"
	"math"

	"cartwright/catalog"
	"cartwright/cmd/cartwright/picture/scene"
	"cartwright/optimize/energy"
)

// Day draws the load on the bus, and below it over the same hours the store of energy from full to empty, without
// any charging. It begins where the loads ask the most of the store.
func Day(q *Subject) (*scene.Scene, error) {
	load, err := q.load()
	if err != nil {
		return nil, err
	}
	s := &scene.Scene{W: pageWidth, Title: q.Scenario.Name + ": the day's load and the store of energy"}
	stretch := stretch{busLoad: load, start: load.worst(q.Plan.AutonomyH), long: math.Max(24, q.Plan.AutonomyH)}
	y := heading(s, q.Scenario.Name+": the day and the store", fmt.Sprintf(
		"What the bus gives, the inverter's own losses included. The store holds %s kWh that may be used; it lasts %s h from %s on, when the loads ask the most of it.",
		number(q.Plan.UsableKWh, 2), number(q.Plan.AutonomyH, 1), clock(stretch.start)))
	y = stretch.power(s, y+10)
	y = stretch.store(s, y+34, q.Plan.UsableKWh)
	s.H = y + margin
	return s, nil
}

// busLoad is the watts that the bus gives, step by step, going round.
type busLoad struct {
	watts []float64
	stepH float64
	fromH float64 // time of day at which the record begins
}

// load returns what a plan's bus is asked for.
func (q *Subject) load() (*busLoad, error) {
	d, err := energy.DemandOf(q.Scenario)
	if err != nil {
		return nil, err
	}
	inverter := q.inverter()
	if inverter == nil {
		return nil, fmt.Errorf("picture: there is no inverter %q in the catalogue", q.Plan.Core.Inverter.Part)
	}
	l := &busLoad{watts: d.BusW(inverter.Efficiency, float64(q.Plan.Core.Inverter.Units)*inverter.IdleW), stepH: d.StepH}
	if m := q.Scenario.Measured; m != nil {
		l.fromH = float64(m.StartMin) / 60
	}
	return l, nil
}

func (q *Subject) inverter() *catalog.Inverter {
	for i := range q.Catalog.Inverters {
		if q.Catalog.Inverters[i].ID == q.Plan.Core.Inverter.Part {
			return &q.Catalog.Inverters[i]
		}
	}
	return nil
}

// usedWh returns the energy of the stretch of so many hours that begins so many hours after the record.
func (l *busLoad) usedWh(start, length float64) float64 {
	sum, n := 0.0, float64(len(l.watts))
	for at, end := start/l.stepH, (start+length)/l.stepH; at < end-1e-9; {
		next := math.Min(end, math.Floor(at+1e-9)+1)
		step := math.Mod(math.Floor(at+1e-9), n)
		if step < 0 {
			step += n
		}
		sum += (next - at) * l.watts[int(step)] * l.stepH
		at = next
	}
	return sum
}

// worst returns the time of day at which the stretch of so many hours begins that takes the most energy. It
// begins or ends where a step does.
func (l *busLoad) worst(length float64) float64 {
	most, at := -1.0, 0.0
	for i := range l.watts {
		edge := float64(i) * l.stepH
		for _, start := range []float64{edge, edge - math.Mod(length, l.stepH*float64(len(l.watts)))} {
			if wh := l.usedWh(start, length); wh > most*(1+1e-9) {
				most, at = wh, start
			}
		}
	}
	return math.Mod(at+l.fromH+24*1000, 24)
}

// stretch is the hours that are drawn: from a time of day on, so long.
type stretch struct {
	*busLoad
	start, long float64
}

// axes returns the axes of one of the two charts, ruled.
func (l *stretch) axes(s *scene.Scene, y, most float64, xName, yName string) *axes {
	a := &axes{s: s, box: scene.Box{X: margin + 52, Y: y + 16, W: s.W - 2*margin - 60, H: 170}, maxX: l.long, maxY: most}
	var clocks []tick
	for _, t := range hours(l.start, l.start+l.long) {
		clocks = append(clocks, tick{t.value - l.start, t.label})
	}
	a.rule(clocks, ticks(0, most), xName, yName)
	return a
}

// most points are drawn along a stretch: more than can be seen.
const mostPoints = 1500

// power draws the load, and returns the Y below.
func (l *stretch) power(s *scene.Scene, y float64) float64 {
	most := 1.0
	for _, w := range l.watts {
		most = math.Max(most, w)
	}
	a := l.axes(s, y, most, "", "load on the bus, W")
	area := scene.Path{Closed: true, Pen: scene.Pen{Ink: scene.Blue, Width: 1.6}, Fill: scene.Shade}
	area.Points = append(area.Points, a.at(0, 0))
	step := math.Max(l.stepH, l.long/mostPoints)
	began := l.start - l.fromH
	first := step - math.Mod(began+24*1000, step) // up to where a step of the record ends
	for h, next := 0.0, first; h < l.long-1e-9; h, next = next, next+step {
		next = math.Min(next, l.long)
		w := l.usedWh(began+h, next-h) / (next - h)
		area.Points = append(area.Points, a.at(h, w), a.at(next, w))
	}
	area.Points = append(area.Points, a.at(l.long, 0))
	s.Add(area)
	return a.box.Bottom() + 24
}

// store draws what is left in the store, and returns the Y below.
func (l *stretch) store(s *scene.Scene, y, usableKWh float64) float64 {
	a := l.axes(s, y, math.Max(usableKWh, 1e-6), "time of day", "left in the store, kWh")
	left := scene.Path{Pen: scene.Pen{Ink: scene.Vermilion, Width: 2}}
	step := math.Max(l.stepH, l.long/mostPoints) / 2
	for h := 0.0; h < l.long+step; h += step {
		at := math.Min(h, l.long)
		left.Points = append(left.Points, a.at(at, math.Max(0, usableKWh-l.usedWh(l.start-l.fromH, at)/1000)))
	}
	s.Add(left)
	return a.box.Bottom() + 40
}
