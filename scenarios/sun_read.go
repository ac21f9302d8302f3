package scenarios

import (
	"fmt"
	"math"
	"strconv"

	"cartwright/catalog/quantity"
	"cartwright/scenarios/sky"
)

// Keys of the sun.
var (
	sunKeys = []string{"latitude", "tilt", "azimuth", "ground", "losses", "coldest", "hottest", "room", "most", "on",
		"height", "monthly", "warmth", "file", "longitude", "zone"}
	roomKeys = []string{"length", "width"}
)

// Defaults of the sun; common practice, no source.
const (
	defaultGround   = 0.20
	defaultLosses   = 0.10
	defaultHottestC = 40.0
	defaultWarmthC  = 20.0
	southDeg        = 180.0
	months          = 12
	wattHours       = 1000 // of a kWh
	clearestMonth   = 0.8  // of the light outside the air: more is warned of
	mostSolar       = 1000 // modules
)

// sun reads what sunshine the place has and how the modules stand; nil without the key.
func (s section) sun(open opener) *Sun {
	v, ok := s.sub("sun", "sun", false, sunKeys)
	if !ok {
		return nil
	}
	x := &Sun{
		LatitudeDeg: v.quantity("latitude", quantity.Angle, within(-90, 90)),
		TiltDeg:     v.quantity("tilt", quantity.Angle, within(0, 90)),
		Ground:      v.quantity("ground", quantity.Ratio, within(0, 1), defaultGround),
		Losses:      v.quantity("losses", quantity.Ratio, within(0, 1), defaultLosses),
		ColdestC:    v.quantity("coldest", quantity.Temperature, within(minAmbientC, maxAmbientC)),
		HottestC:    v.quantity("hottest", quantity.Temperature, within(minAmbientC, maxAmbientC), defaultHottestC),
		OnCart:      v.choice("on", []string{"ground", "cart"}, "ground") == "cart",
		Pos:         v.pos,
	}
	facing := southDeg
	if x.LatitudeDeg < 0 {
		facing = 0
	}
	x.AzimuthDeg = v.quantity("azimuth", quantity.Angle, within(0, 360), facing)
	if x.ColdestC > x.HottestC {
		v.wrong("coldest", "the coldest air is warmer than the hottest", "swap coldest and hottest")
	}
	v.place(x)
	v.light(x, open)
	return x
}

// place reads what room there is, and how high the modules are on the cart.
func (s section) place(x *Sun) {
	if r, ok := s.sub("room", "room", false, roomKeys); ok {
		x.Room = &Room{LengthM: r.size("length"), WidthM: r.size("width")}
	}
	x.Most = s.integer("most", 1, mostSolar, 0)
	switch {
	case s.has("room") && s.has("most"):
		s.wrong("most", "both room and most say how many modules there may be", "leave one of them out")
	case !s.has("room") && !s.has("most"):
		s.r.problems.Add(s.pos, "sun does not say how many modules there is room for", "add room: {length: 3 m, width: 2 m}, or most: 6")
	}
	switch {
	case x.OnCart:
		x.HeightM = s.quantity("height", quantity.Length, within(0, maxLengthM))
	case s.has("height"):
		s.wrong("height", "height is for modules on the cart, and these are on the ground", "leave it out, or write on: cart")
	}
}

// light reads monthly figures, or a file of hours.
func (s section) light(x *Sun, open opener) {
	switch {
	case s.has("monthly") && s.has("file"):
		s.wrong("file", "both monthly and file say what sunshine there is", "leave one of them out")
	case s.has("file"):
		s.hourly(x, open)
	default:
		for _, key := range []string{"longitude", "zone"} {
			if s.has(key) {
				s.wrong(key, key+" goes with a file of hours; monthly figures go by solar time", "leave it out")
			}
		}
		s.monthly(x)
	}
}

// monthly reads the twelve figures of light and of warmth.
func (s section) monthly(x *Sun) {
	if light, ok := s.twelve("monthly", true, "[2.1, 3.0, 4.2, ...], kWh/m2 a day on the level, January first", s.dailyKWh); ok {
		x.MonthlyKWhM2 = light
		s.checkMonths(x)
	}
	for m := range x.WarmthC {
		x.WarmthC[m] = defaultWarmthC
	}
	if warmth, ok := s.twelve("warmth", false, "[3 C, 4 C, 8 C, ...], mean temperatures, January first", s.monthC); ok {
		x.WarmthC = warmth
	}
}

// twelve reads a list of twelve values, one for each month.
func (s section) twelve(key string, required bool, form string, read func(key string, n *node) (float64, bool)) (list [months]float64, ok bool) {
	n := s.value(key, isList, required, "a list of twelve, for example "+key+": "+form)
	if n == nil {
		return list, false
	}
	if len(n.items) != months {
		s.wrong(key, fmt.Sprintf("%s has %d values", key, len(n.items)), "write twelve, January first")
		return list, false
	}
	ok = true
	for m, item := range n.items {
		s.r.places[s.at(key)+"["+strconv.Itoa(m)+"]"] = item.pos
		v, fine := read(key, item)
		list[m], ok = v, ok && fine
	}
	return list, ok
}

// dailyKWh reads one monthly figure.
func (s section) dailyKWh(key string, n *node) (float64, bool) {
	v, err := strconv.ParseFloat(n.value, 64)
	if n.kind != isNumber || err != nil || !plainNumber.MatchString(n.value) {
		s.r.problems.Add(n.pos, fmt.Sprintf("%s: %q is not a number", key, n.value), "write kWh/m2 a day, for example 4.2")
		return 0, false
	}
	const most = 15 // kWh/m2 a day, more than reaches the earth's air anywhere
	if !(v >= 0 && v <= most) {
		s.r.problems.Add(n.pos, fmt.Sprintf("%s: %s is out of range", key, n.value), fmt.Sprintf("write from 0 to %d kWh/m2 a day", most))
		return 0, false
	}
	return v, true
}

// monthC reads one month's mean temperature.
func (s section) monthC(key string, n *node) (float64, bool) {
	v, err := quantity.Parse(n.value, quantity.Temperature)
	if n.kind != isText || err != nil || !within(minAmbientC, maxAmbientC).holds(v) {
		s.r.problems.Add(n.pos, fmt.Sprintf("%s: %q is not a monthly temperature", key, n.value), "write for example 8 C")
		return 0, false
	}
	return v, true
}

// checkMonths compares each month with the light outside the air at the latitude: where there is none, none may be
// stated, and more than four fifths of it is warned of.
func (s section) checkMonths(x *Sun) {
	if math.IsNaN(x.LatitudeDeg) {
		return
	}
	for m, kWh := range x.MonthlyKWhM2 {
		outside := sky.Day(x.LatitudeDeg, sky.MeanDay(m)) / wattHours
		at := s.r.places[s.at("monthly")+"["+strconv.Itoa(m)+"]"]
		switch {
		case kWh > 0 && !(outside > 0):
			s.r.problems.Add(at, fmt.Sprintf("monthly: %g kWh/m2 a day in month %d, in which the sun does not rise at this latitude", kWh, m+1), "write 0, or another latitude")
		case kWh > clearestMonth*outside:
			s.r.warnings.Add(at, fmt.Sprintf("monthly: %g kWh/m2 a day in month %d is more than %.3g, four fifths of what arrives outside the air", kWh, m+1, clearestMonth*outside), "check that it is for a day, on a level surface, at this latitude")
		}
	}
}

// hourly reads a file of hours. A public one names its place in its header.
func (s section) hourly(x *Sun, open opener) {
	if s.has("warmth") {
		s.wrong("warmth", "warmth goes with monthly figures; a file has its own", "leave it out")
	}
	name := s.words("file", "weather.csv")
	if name == "" {
		return
	}
	before := s.r.problems.Len()
	w, hours := readWeather(name, s.r, s.nodes["file"].pos, open)
	x.Hours = hours
	longitude, zone := []float64{math.NaN()}, []float64{math.NaN()} // where the file has a mistake that was told
	switch {
	case w.site != nil:
		longitude, zone = []float64{w.site.longitude}, []float64{w.site.zoneH}
	case w.layout.name == "" && w.layout.columns != nil: // our own: they have to be stated
		longitude, zone = nil, nil
	}
	x.LongitudeDeg = s.quantity("longitude", quantity.Angle, within(-180, 180), longitude...)
	x.ZoneH = s.zone(zone)
	w.checkSite(x, s)
	if hours == nil || s.r.problems.Len() > before || math.IsNaN(x.LatitudeDeg) {
		return
	}
	w.checkNights(x, s)
	if hours.GHI != nil {
		w.checkClosure(x, s)
	}
}

// zone reads how far the clock is ahead of Greenwich's: hours, with or without their unit.
func (s section) zone(def []float64) float64 {
	const west, east = -12, 14
	if n := s.nodes["zone"]; n != nil && n.kind == isText {
		return s.quantity("zone", quantity.Duration, within(west, east), def...)
	}
	return s.number("zone", within(west, east), "-5", def...)
}

// checkServed reports a share to be served without sun.
func (s *Scenario) checkServed(top section) {
	if s.Limits.Served > 0 && s.Sun == nil && !top.has("sun") {
		top.r.problems.Add(top.r.places["limits.served"], "served is a share of a year with sun, and there is no sun", "add sun, or leave served out")
	}
}
