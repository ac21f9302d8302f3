package picture

import (
	"fmt"

	"cartwright/cmd/cartwright/picture/scene"
	"cartwright/cmd/cartwright/picture/told"
	"cartwright/optimize/plan"
)

// Year draws the year of sun as 24 hours by 365 days, the day's load and the year month by month. Without sun it
// is the day alone.
func Year(q *Subject) (*scene.Scene, error) {
	day, err := Day(q)
	if err != nil {
		return nil, err
	}
	t, err := q.track()
	if err != nil || t == nil {
		return day, err
	}
	s := &scene.Scene{W: pageWidth, Title: q.Scenario.Name + ": the year, hour by hour"}
	note := "Each column is a day, from midnight below to midnight above. The darker, the less is in the store."
	if y := q.Plan.Year; y != nil {
		note += fmt.Sprintf(" %s %% of what the bus is asked for comes from sun and store; something is short in %s hours, %s of them at a stretch.",
			told.Fixed(100*y.Served, 1), number(y.ShortH, 0), number(y.LongestShortH, 0))
	}
	y := heading(s, s.Title, note)
	y = t.map24(s, y+20)
	if q.Plan.Year != nil && len(q.Plan.Year.Months) == 12 {
		y = months(s, y+30, q.Plan.Year.Months)
	}
	s.Put(day, scene.Point{Y: y + 10})
	s.H = y + 10 + day.H
	return s, nil
}

// shade is how an hour is filled.
type shade struct {
	ink   scene.Ink
	words string
}

// shades go from dark to light, so that they tell in black and white, too.
func shades() []shade {
	return []shade{
		{scene.Black, "short"}, {scene.Blue, "below a third"}, {scene.Sky, "to two thirds"}, {scene.Yellow, "above"}, {scene.Paper, "full, sun is left over"},
	}
}

// shadeOf returns the place in shades of an hour.
func (t *track) shadeOf(h int) int {
	switch stored := t.StoredWh[h]; {
	case t.ShortWh[h] > 0:
		return 0
	case t.SpilledWh[h] > 0:
		return 4
	case stored < t.capacityWh/3:
		return 1
	case stored < t.capacityWh*2/3:
		return 2
	}
	return 3
}

// firstDays are the days on which months begin, in a year of 365.
func firstDays() []float64 {
	return []float64{0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334}
}

func monthNames() []string {
	return []string{"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"}
}

// map24 draws the hours of the year, and returns the Y below.
func (t *track) map24(s *scene.Scene, y float64) float64 {
	a := &axes{s: s, box: scene.Box{X: margin + 40, Y: y, W: s.W - 2*margin - 44, H: 24 * 8}, maxX: float64(len(t.StoredWh)) / 24, maxY: 24}
	ascent, _ := scene.Rise(smallSize)
	for m, first := range firstDays() {
		const middle = 15.2 // days; half a month
		s.Write(scene.Text{At: scene.Point{X: a.x(first + middle), Y: a.box.Bottom() + ascent + 5}, Words: monthNames()[m], Size: smallSize, Align: scene.Middle})
		s.Add(scene.Line(scene.Point{X: a.x(first), Y: a.box.Bottom()}, scene.Point{X: a.x(first), Y: a.box.Bottom() + 5}, thin()))
	}
	a.rule(nil, []tick{{0, "00:00"}, {6, "06:00"}, {12, "12:00"}, {18, "18:00"}, {24, "24:00"}}, "", "")
	for day := range len(t.StoredWh) / 24 {
		for h := 0; h < 24; {
			kind, from := t.shadeOf(24*day+h), h
			for h < 24 && t.shadeOf(24*day+h) == kind {
				h++
			}
			low, high := a.at(float64(day), float64(from)), a.at(float64(day+1), float64(h))
			const lap = 0.4 // so that no seam shows between the days
			s.Add(scene.Rect(scene.Box{X: low.X, Y: high.Y, W: high.X - low.X + lap, H: low.Y - high.Y}, scene.Pen{}, shades()[kind].ink))
		}
	}
	s.Add(scene.Rect(a.box, thin(), scene.None))
	x, at := a.box.X, a.box.Bottom()+38
	for _, k := range shades() {
		s.Add(scene.Rect(scene.Box{X: x, Y: at - 10, W: 14, H: 12}, thin(), k.ink))
		s.Write(scene.Text{At: scene.Point{X: x + 19, Y: at}, Words: k.words, Size: smallSize})
		x += 19 + scene.Width(k.words, smallSize, false) + 18
	}
	return at + 6
}

// months draws the year month by month: what the sun gave, what was asked for, what was short and what was left
// over. It returns the Y below.
func months(s *scene.Scene, y float64, list []plan.Month) float64 {
	type bar struct {
		words    string
		ink      scene.Ink
		hatching scene.Hatching
		of       func(plan.Month) float64
	}
	bars := []bar{
		{"sun", scene.Yellow, scene.Plain, func(m plan.Month) float64 { return m.Sun }},
		{"load", scene.Sky, scene.Plain, func(m plan.Month) float64 { return m.Load }},
		{"short", scene.Black, scene.Plain, func(m plan.Month) float64 { return m.Short }},
		{"left over", scene.Paper, scene.Rising, func(m plan.Month) float64 { return m.Spilled }},
	}
	most := 1e-9
	for _, m := range list {
		for _, b := range bars {
			most = max(most, b.of(m))
		}
	}
	a := &axes{s: s, box: scene.Box{X: margin + 52, Y: y + 14, W: s.W - 2*margin - 56, H: 150}, maxX: 12, maxY: most}
	var across []tick
	for m, name := range monthNames() {
		across = append(across, tick{float64(m) + 0.5, name})
	}
	a.rule(nil, ticks(0, most), "", "kWh a month")
	ascent, _ := scene.Rise(smallSize)
	for _, t := range across {
		s.Write(scene.Text{At: scene.Point{X: a.x(t.value), Y: a.box.Bottom() + ascent + 5}, Words: t.label, Size: smallSize, Align: scene.Middle})
	}
	fill := func(box scene.Box, b bar) {
		s.Add(scene.Rect(box, scene.Pen{Ink: scene.Black, Width: 0.6}, b.ink))
		s.Add(scene.Hatch(box, b.hatching, scene.Pen{Ink: scene.Black, Width: 0.7})...)
	}
	for m := range list {
		for k, b := range bars {
			left, width := float64(m)+0.1+0.2*float64(k), 0.18
			top := a.at(left, b.of(list[m]))
			fill(scene.Box{X: top.X, Y: top.Y, W: a.x(left+width) - top.X, H: a.box.Bottom() - top.Y}, b)
		}
	}
	x, at := a.box.X, a.box.Bottom()+36
	for _, b := range bars {
		fill(scene.Box{X: x, Y: at - 10, W: 14, H: 12}, b)
		s.Write(scene.Text{At: scene.Point{X: x + 19, Y: at}, Words: b.words, Size: smallSize})
		x += 19 + scene.Width(b.words, smallSize, false) + 18
	}
	return at + 8
}
