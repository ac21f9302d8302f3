package picture

import (
	"fmt"
	"math"

	"cartwright/cmd/cartwright/picture/scene"
	"cartwright/cmd/cartwright/picture/told"
	"cartwright/optimize/plan"
)

// boardKg returns the mass of what hangs on the board: all that is neither frame, deck item, battery module, casters
// nor an array on the cart.
func (q *Subject) boardKg() float64 {
	c := &q.Scenario.Cart
	frame, _ := q.frame()
	m := q.Plan.MassKg - frame
	for _, d := range c.DeckItems {
		m -= d.MassKg
	}
	for _, s := range q.Plan.Shelves {
		m -= s.MassKg
	}
	if set := q.casters(); set != nil {
		m -= set.MassKg
	}
	return math.Max(0, m-q.arrayKg())
}

// arrayKg returns the mass of the array where it is on the cart.
func (q *Subject) arrayKg() float64 {
	if sun := q.Scenario.Sun; sun == nil || !sun.OnCart || len(q.Plan.Core.Solar) == 0 {
		return 0
	}
	a := q.Plan.Core.Solar[0]
	for i := range q.Catalog.Solar {
		if m := &q.Catalog.Solar[i]; m.ID == a.Part {
			return m.MassKg * float64(a.Series*a.Parallel*a.Inputs)
		}
	}
	return 0
}

// frame returns the frame's mass and how high its weight is: as stated, or as its pieces add up.
func (q *Subject) frame() (kg, heightM float64) {
	c := &q.Scenario.Cart
	if len(c.Pieces) == 0 {
		return c.Frame.MassKg, c.Frame.HeightM
	}
	moment := 0.0
	for _, p := range c.Pieces {
		for i := range q.Catalog.Sections {
			if x := &q.Catalog.Sections[i]; x.ID == p.Section {
				m := p.LengthM * float64(p.Count) * x.KgPerM
				kg, moment = kg+m, moment+m*p.HeightM
			}
		}
	}
	if kg > 0 {
		heightM = moment / kg
	}
	return kg, heightM
}

// sidewaysM returns how far the centre of gravity is from the middle, towards positive offsets.
func (q *Subject) sidewaysM() float64 {
	c := &q.Scenario.Cart
	moment := q.boardKg() * c.Backboard.OffsetM // the frame's is in the middle
	for _, d := range c.DeckItems {
		moment += d.MassKg * d.OffsetM
	}
	if q.Plan.MassKg <= 0 {
		return 0
	}
	return moment / q.Plan.MassKg
}

// limit returns one of the plan's limits.
func (q *Subject) limit(name string) (plan.Limit, bool) {
	for _, l := range q.Plan.Limits {
		if l.Name == name {
			return l, true
		}
	}
	return plan.Limit{}, false
}

// wheel is a place where the cart stands on the floor in a view, and how many wheels are there.
type wheel struct {
	xM    float64
	count int
}

// wheels returns where the wheels are in this view. Of three, one is in the middle of an end.
func (v *elevation) wheels() []wheel {
	c := &v.Scenario.Cart
	half := c.TrackM / 2
	if v.side {
		half = c.WheelbaseM / 2
	}
	switch {
	case c.Casters == 3 && v.side:
		return []wheel{{-half, 2}, {half, 1}}
	case c.Casters == 3:
		return []wheel{{-half, 1}, {0, 1}, {half, 1}}
	}
	return []wheel{{-half, c.Casters / 2}, {half, c.Casters - c.Casters/2}}
}

// ground draws floor, wheels, what they carry on a level floor and how far they are apart, and returns the Y
// below it all.
func (v *elevation) ground() float64 {
	c := &v.Scenario.Cart
	r := v.wheelM() / 2
	apart, reach, name := c.TrackM, 0.0, "track "
	if v.side {
		apart, name = c.WheelbaseM, "wheelbase "
	}
	reach = apart/2 + 1.6*r
	v.s.Add(scene.Line(v.at(-reach, 0), v.at(reach, 0), outline()))
	low := v.zero.Y
	line := func(x, y float64, words string) {
		t := scene.Text{At: scene.Point{X: x, Y: y}, Words: words, Size: smallSize, Align: scene.Middle}
		for !v.s.Free(t.Box()) {
			t.At.Y += scene.Leading(smallSize)
		}
		v.s.Write(t)
		low = math.Max(low, t.At.Y)
	}
	for _, w := range v.wheels() {
		v.s.Add(scene.Disc{At: v.at(w.xM, r), R: r * v.scale, Pen: outline(), Fill: scene.Paper},
			scene.Disc{At: v.at(w.xM, r), R: 1.5, Fill: scene.Black})
		line(v.at(w.xM, 0).X, v.zero.Y+16, v.level(w))
	}
	y := low + 14
	for _, x := range []float64{-apart / 2, apart / 2} {
		p := v.at(x, 0)
		v.s.Add(scene.Line(scene.Point{X: p.X, Y: y - 4}, scene.Point{X: p.X, Y: y + 4}, thin()))
	}
	v.s.Add(scene.Line(scene.Point{X: v.at(-apart/2, 0).X, Y: y}, scene.Point{X: v.at(apart/2, 0).X, Y: y}, thin()))
	low += 14
	line(v.zero.X, low+16, name+v.Units.Length(apart))
	which := plan.LimitTiltSideways
	if v.side {
		which = plan.LimitTiltLength
	}
	if l, ok := v.limit(which); ok {
		line(v.zero.X, low+16, "tips at "+told.Angle(l.Value)+",")
		line(v.zero.X, low+15, "must stand "+told.Angle(l.Limit))
	}
	return low
}

// level words what each wheel at a place carries on a level floor.
func (v *elevation) level(w wheel) string {
	m, c := v.Plan.MassKg, &v.Scenario.Cart
	share := m / float64(c.Casters) // lengthways everything is taken to be in the middle
	switch {
	case c.Casters == 3 && v.side:
		share = m / 2 / float64(w.count)
	case c.Casters == 3 && w.xM == 0:
		share = m / 2
	case c.Casters == 3:
		share = m/4 + m*v.sidewaysM()*math.Copysign(1, w.xM)/c.TrackM
	case !v.side:
		share = m * (0.5 + v.sidewaysM()*math.Copysign(1, w.xM)/c.TrackM) / float64(w.count)
	}
	if w.count > 1 {
		return fmt.Sprintf("%d x %s", w.count, v.Units.Mass(share))
	}
	return v.Units.Mass(share)
}

// balance draws the centre of gravity, and the line over the nearer edge along which the cart tips, with the
// plumb line beside it.
func (v *elevation) balance() {
	h, x := v.Plan.Balance.CGHeightMM/1000, 0.0
	apart, which := v.Scenario.Cart.WheelbaseM, plan.LimitTiltLength
	if !v.side {
		apart, which, x = v.Scenario.Cart.TrackM, plan.LimitTiltSideways, v.sidewaysM()
	}
	edge, inward := apart/2, -1.0
	if x < 0 {
		edge, inward = -apart/2, 1
	}
	if l, ok := v.limit(which); ok && l.Value > 0 && l.Value < 89 {
		lean := scene.Pen{Ink: scene.Vermilion, Width: 1.6}
		top := h
		v.s.Add(
			scene.Line(v.at(edge, 0), v.at(edge, top), scene.Pen{Ink: scene.Grey, Width: 1, Dash: 2}),
			scene.Line(v.at(edge, 0), v.at(edge+inward*top*math.Tan(l.Value*math.Pi/180), top), lean),
		)
		from, to := 270.0, 270-l.Value
		if inward > 0 {
			to = 270 + l.Value
		}
		v.s.Add(scene.Arc(v.at(edge, 0), 0.45*top*v.scale, from, to, lean))
	}
	cog(v.s, v.at(x, h))
	if v.side {
		mark(v.s, scene.Point{X: v.at(x, h).X + 16, Y: v.at(x, h).Y}, v.keys.add(fmt.Sprintf(
			"centre of gravity of all %s, %s above the floor. The slanting line runs to the wheels over which the cart tips; its angle is how far the cart leans then",
			v.Units.Mass(v.Plan.MassKg), v.Units.Length(h))))
	}
	if v.side {
		c := &v.Plan.Casters
		v.keys.add(fmt.Sprintf("casters: %d x %s, %s, rated %s each; they carry %s each with one off the floor, factor %s. Below each: its load on a level floor",
			c.Count, c.Part, v.name(c.Part), v.Units.Mass(c.RatingEachKg), v.Units.Mass(c.LoadEachKg), told.Number(v.Scenario.CasterFactor, 2)))
	}
}

// cog draws the sign of a centre of gravity: a disc with two quarters black.
func cog(s *scene.Scene, at scene.Point) {
	const r = 6.5
	s.Add(scene.Disc{At: at, R: r, Pen: outline(), Fill: scene.Paper})
	for _, from := range []float64{0, 180} {
		quarter := scene.Arc(at, r, from, from+90, scene.Pen{})
		quarter.Points = append(quarter.Points, at)
		quarter.Closed, quarter.Fill = true, scene.Black
		s.Add(quarter)
	}
}
