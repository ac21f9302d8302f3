package audit

import (
	"math"

	"cartwright/catalog"
	"cartwright/optimize/chassis"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

const (
	ruleMass           = "mass"
	ruleMassFigure     = "mass figure"
	ruleCasterCount    = "caster count"
	ruleCasterLoad     = "caster load"
	ruleCasterFigures  = "caster figures"
	ruleTiltSideways   = "tilt, sideways"
	ruleTiltLength     = "tilt, lengthways"
	ruleBalanceFigures = "balance figures"
	rulePush           = "push"
	ruleHold           = "hold"
)

var balanceRules = []Rule{
	{ruleMass, "kg", "everything installed, frame and deck items <= most", fromScenario},
	{ruleMassFigure, "kg", "the stated mass is true", fromParts},
	{ruleCasterCount, "", "the set has as many wheels as the cart", fromScenario},
	{ruleCasterLoad, "kg", "caster factor * M / min(casters - 1, 3) <= rating of each", "caster handbooks, five texts; the factor: " + practice},
	{ruleCasterFigures, "", "the stated count, load and rating of the casters are true", fromParts},
	{ruleTiltSideways, "deg", "sum m (edge - |y|) / sum m h >= tan of the required angle; the edge is at track/2, on three wheels a side of the triangle", "statics; 10 deg: IEC 62368-1"},
	{ruleTiltLength, "deg", "the same over the wheelbase, y = 0", "statics; 10 deg: IEC 62368-1"},
	{ruleBalanceFigures, "", "the stated height of the centre of mass and the stated angles are true", fromParts},
	{rulePush, "N", "(rolling + slope) * M * g <= most", "UK HSE guidance L23 and INDG143"},
	{ruleHold, "%", "on a slope the braked wheels' share of the grip >= the slope", "statics of a block on a slope, tan = friction; the grip: " + practice},
}

// load is everything on the cart, added up: mass, and the moments of mass that decide when it tips.
type load struct {
	kg     float64
	height float64 // kg·m about the floor
	side   float64 // kg·m, of each body's distance from the wheels' line on its own side
}

// put adds a body of a mass at a height above the floor and an offset from the middle of a cart.
func (l *load) put(kg, heightM, offsetM float64, cart *scenarios.Cart) {
	l.kg += kg
	l.height += kg * heightM
	l.side += kg * toSideM(cart, math.Abs(offsetM))
}

// toSideM returns how far a point, halfway along the cart and offset sideways, is inside the line from wheel to wheel;
// negative outside.
func toSideM(cart *scenarios.Cart, offsetM float64) float64 {
	// The line's ends: a wheel at one end of the cart, and the next one at the other end.
	x0, y0 := 0.0, cart.TrackM/2
	x1, y1 := cart.WheelbaseM, cart.TrackM/2
	if cart.Casters == 3 {
		y1 = 0 // the single wheel
	}
	x, y := cart.WheelbaseM/2, offsetM
	across := (x1-x0)*(y0-y) - (x0-x)*(y1-y0) // twice the area between the line and the point
	return across / math.Hypot(x1-x0, y1-y0)
}

// tipsDeg returns the angle in degrees at which the cart tips against a holding moment in kg·m; 90 without mass.
func (l *load) tipsDeg(holding float64) float64 {
	if l.kg == 0 {
		return 90
	}
	return math.Atan2(holding, l.height) * 180 / math.Pi
}

// load adds up everything on the cart. Modules count where the shelves say they stand.
func (a *auditor) load() load {
	var l load
	cart := &a.s.Cart
	frame := a.frame()
	l.put(frame.MassKg, frame.HeightM, frame.OffsetM, cart)
	for _, d := range cart.DeckItems {
		l.put(d.MassKg, d.HeightM, d.OffsetM, cart)
	}
	for _, stated := range a.p.Shelves {
		sh := a.shelf(stated.Shelf)
		for _, m := range stated.Batteries {
			if b := a.stock.batteries[m.Part]; b != nil && sh != nil {
				// Stacked modules count as if all layers were full: the safe side.
				l.put(float64(m.Modules)*b.MassKg, sh.ElevationM+layersOf(sh, b)*b.HeightM/2, 0, cart)
			}
		}
	}
	t := a.installedTally()
	for _, x := range t.order {
		kg := t.quantity[x] * a.stock.masses[x.part]
		switch kind := a.stock.kinds[x.part]; {
		case x.ends || kind == catalog.KindBattery || kind == catalog.KindSection:
			// Ends weigh nothing; modules stand on shelves; the frame is counted.
		case kind == catalog.KindSolar:
			if a.s.Sun != nil && a.s.Sun.OnCart {
				l.put(kg, a.s.Sun.HeightM, 0, cart)
			}
		case kind == catalog.KindCasters:
			l.put(kg, cart.CasterMassHeightM, 0, cart)
		default:
			l.put(kg, cart.Backboard.ElevationM, cart.Backboard.OffsetM, cart)
		}
	}
	return l
}

// massKg returns the mass of everything on the cart, by the core's count of modules.
func (a *auditor) massKg() float64 {
	mass := a.frame().MassKg
	for _, d := range a.s.Cart.DeckItems {
		mass += d.MassKg
	}
	t := a.installedTally()
	for _, x := range t.order {
		kind := a.stock.kinds[x.part]
		onGround := kind == catalog.KindSolar && !(a.s.Sun != nil && a.s.Sun.OnCart)
		if !x.ends && kind != catalog.KindSection && !onGround {
			mass += t.quantity[x] * a.stock.masses[x.part]
		}
	}
	return mass
}

// balance checks whether the cart can be rolled, and stands.
func (a *auditor) balance() {
	s, mass, l := a.s, a.massKg(), a.load()
	if !math.IsInf(s.Limits.MassKg, 1) {
		a.limited(ruleMass, plan.LimitMass, mass, s.Limits.MassKg, false, "")
	}
	if set := a.stock.casters[a.p.Casters.Part]; set != nil {
		a.exactly(ruleCasterCount, float64(set.SetOf), float64(s.Cart.Casters), set.ID)
		a.limited(ruleCasterLoad, plan.LimitCaster, a.wheelKg(), set.RatingKg, false, set.ID)
	}
	a.limited(ruleTiltSideways, plan.LimitTiltSideways, l.tipsDeg(l.side), s.Limits.TiltDeg, true, "")
	a.limited(ruleTiltLength, plan.LimitTiltLength, l.tipsDeg(l.kg*s.Cart.WheelbaseM/2), s.Limits.TiltDeg, true, "")
	if s.Limits.PushN > 0 {
		push := (s.Cart.Rolling + s.Limits.Slope) * mass * chassis.StandardGravity
		a.limited(rulePush, plan.LimitPush, push, s.Limits.PushN, false, "")
	}
	if set := a.stock.casters[a.p.Casters.Part]; set != nil && s.Limits.Slope > 0 {
		a.limited(ruleHold, plan.LimitHold, 100*s.Cart.Grip*float64(set.Brakes)/float64(s.Cart.Casters), 100*s.Limits.Slope, true, set.ID)
	}
}

// standing is the most wheels that are sure to carry a cart on an uneven floor: three points define a plane.
const standing = 3

// wheelKg returns what each wheel must carry, with one of them in the air.
func (a *auditor) wheelKg() float64 {
	wheels := math.Min(float64(a.s.Cart.Casters-1), standing)
	return a.s.CasterFactor * a.massKg() / wheels
}

// figuresOfBalance checks whether the stated mass, caster load, height and angles are true.
func (a *auditor) figuresOfBalance() {
	l := a.load()
	a.truly(ruleMassFigure, a.p.MassKg, a.massKg(), "")
	a.truly(ruleCasterFigures, float64(a.p.Casters.Count), float64(a.s.Cart.Casters), "count")
	a.truly(ruleCasterFigures, a.p.Casters.LoadEachKg, a.wheelKg(), "load_each_kg")
	if set := a.stock.casters[a.p.Casters.Part]; set != nil {
		a.truly(ruleCasterFigures, a.p.Casters.RatingEachKg, set.RatingKg, "rating_each_kg")
	}
	b, tips := &a.p.Balance, math.Min(l.tipsDeg(l.side), l.tipsDeg(l.kg*a.s.Cart.WheelbaseM/2))
	a.truly(ruleBalanceFigures, b.CGHeightMM, 1000*l.height/l.kg, "cg_height_mm")
	a.truly(ruleBalanceFigures, b.TiltDeg, tips, "tilt_deg")
	a.truly(ruleBalanceFigures, b.RequiredDeg, a.s.Limits.TiltDeg, "required_deg")
}
