package scenarios

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"cartwright/catalog"
	"cartwright/catalog/quantity"
)

// written returns a scenario as text that reads back to the same one, every value spelt out. A measured
// profile comes as the text of loads.csv.
func written(s *Scenario) (text, profile string) {
	var b strings.Builder
	line := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	q := func(si float64, d quantity.Dimension) string { return strconv.Quote(quantity.Format(si, d)) }
	m := func(v float64) string { return q(v, quantity.Length) }
	money := func(c catalog.Cents) string { return fmt.Sprintf("%d.%02d", c/100, c%100) }
	num := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
	line("name: %s\ncurrency: %s\nrules: %s\nunits: %s", strconv.Quote(s.Name), s.Currency, s.Rules, s.Units)
	if s.CatalogDir != "" {
		line("catalog: %s", strconv.Quote(s.CatalogDir))
	}
	line("bus: {nominal: %s, low: %s, high: %s}", q(s.Bus.NominalV, quantity.Voltage), q(s.Bus.LowV, quantity.Voltage), q(s.Bus.HighV, quantity.Voltage))
	if s.Measured != nil {
		line("measured: loads.csv")
		profile = writtenProfile(s.Measured)
	} else {
		line("loads:")
	}
	for _, l := range s.Loads {
		line("  - name: %s\n    watts: %s\n    count: %d\n    power_factor: %s\n    duty: %s\n    start: %s\n    dc: %v", strconv.Quote(l.Name),
			q(l.Watts, quantity.Power), l.Count, num(l.PowerFactor), q(l.Duty, quantity.Ratio), num(l.Start), l.DC)
		if l.Circuit != "" {
			line("    circuit: %s", strconv.Quote(l.Circuit))
		}
		if !l.DC {
			line("    leg: %s", l.Leg)
		}
		if !l.AllDay {
			line("    from: \"%02d:%02d\"\n    to: \"%02d:%02d\"", l.FromMin/60, l.FromMin%60, l.ToMin/60, l.ToMin%60)
		}
	}
	if s.OneAtATime != nil {
		line("one_at_a_time:")
		for _, list := range s.OneAtATime {
			var names []string
			for _, i := range list {
				names = append(names, strconv.Quote(s.Loads[i].Name))
			}
			line("  - [%s]", strings.Join(names, ", "))
		}
	}
	line("autonomy: %s\nuse: {days: %s}", q(s.AutonomyH, quantity.Duration), num(s.UseDays))
	if r := s.Recharge; r != nil {
		supply := ""
		if w := r.Supply; w != nil {
			supply = fmt.Sprintf(", supply: {volts: %s, device: %s}", q(w.Volts, quantity.Voltage), q(w.DeviceA, quantity.Current))
		}
		line("recharge: {within: %s, from: %s%s}", q(r.WithinH, quantity.Duration), r.From, supply)
	}
	c := s.Cart
	line("cart:\n  casters: %d\n  wheelbase: %s\n  track: %s\n  caster_mass_height: %s", c.Casters, m(c.WheelbaseM), m(c.TrackM), m(c.CasterMassHeightM))
	line("  rolling: %s\n  grip: %s", q(c.Rolling, quantity.Ratio), num(c.Grip))
	if c.Pieces == nil {
		line("  frame: {mass: %s, height: %s}", q(c.Frame.MassKg, quantity.Mass), m(c.Frame.HeightM))
	} else {
		line("  frame:\n    pieces:")
		for _, p := range c.Pieces {
			line("      - {section: %s, length: %s, count: %d, height: %s}", strconv.Quote(p.Section), m(p.LengthM), p.Count, m(p.HeightM))
		}
	}
	line("  deck_items:")
	if len(c.DeckItems) == 0 {
		line("    []")
	}
	for _, d := range c.DeckItems {
		line("    - {name: %s, mass: %s, height: %s, offset: %s}", strconv.Quote(d.Name), q(d.MassKg, quantity.Mass), m(d.HeightM), m(d.OffsetM))
	}
	line("  shelves:")
	for _, x := range c.Shelves {
		most := ""
		if !math.IsInf(x.MaxMassKg, 1) {
			most = ", max_mass: " + q(x.MaxMassKg, quantity.Mass)
		}
		if r := x.Rails; r != nil {
			most += fmt.Sprintf(", rails: {section: %s, span: %s, count: %d}", strconv.Quote(r.Section), m(r.SpanM), r.Count)
		}
		line("    - {name: %s, elevation: %s, length: %s, depth: %s, clear_height: %s, gap: %s, stack: %d%s}", strconv.Quote(x.Name),
			m(x.ElevationM), m(x.LengthM), m(x.DepthM), m(x.ClearHeightM), m(x.GapM), x.Stack, most)
	}
	line("  backboard: {elevation: %s, offset: %s}", m(c.Backboard.ElevationM), m(c.Backboard.OffsetM))
	line("limits:\n  tilt: %s\n  reserve: %s\n  slope: %s", q(s.Limits.TiltDeg, quantity.Angle), q(s.Limits.Reserve, quantity.Ratio), q(s.Limits.Slope, quantity.Ratio))
	if !math.IsInf(s.Limits.MassKg, 1) {
		line("  mass: %s", q(s.Limits.MassKg, quantity.Mass))
	}
	if s.Limits.Budget != math.MaxInt64 {
		line("  budget: %s", money(s.Limits.Budget))
	}
	if s.Limits.PushN != 0 {
		line("  push: %s", q(s.Limits.PushN, quantity.Force))
	}
	if s.Limits.SharedProtocols {
		line("  protocols: shared")
	}
	if s.Limits.Served != 0 {
		line("  served: %s", q(s.Limits.Served, quantity.Ratio))
	}
	if s.Cable != (CableWish{}) {
		line("cable:\n  slack: %s\n  strand: %s", q(s.Cable.Slack, quantity.Ratio), map[bool]string{false: "any", true: "fine"}[s.Cable.Fine])
		if s.Cable.StepM != 0 {
			line("  step: %s", m(s.Cable.StepM))
		}
	}
	line("caster_factor: %s\nac_fault: %s", num(s.CasterFactor), q(s.ACFaultA, quantity.Current))
	writtenWiring(s, line, q)
	grid := ""
	if s.GridCentsPerKWh != 0 {
		grid = ", grid: " + num(s.GridCentsPerKWh/100)
	}
	line("sold: %s\nmoney: {tax: %s%s}", money(s.Sold), q(s.Tax, quantity.Ratio), grid)
	if v := s.Savings; v != nil {
		line("savings: {now: %s, per_month: %s}", money(v.Now), money(v.PerMonth))
	}
	if s.Sun != nil {
		writtenSun(s.Sun, line, q)
	}
	line("solver: {time_limit: %s, plans: %d}", strconv.Quote(num(s.Solver.TimeLimitS)+" s"), s.Solver.Plans)
	return b.String(), profile
}

// writtenSun writes a sun of monthly figures; a file of hours is not written.
func writtenSun(x *Sun, line func(string, ...any), q func(float64, quantity.Dimension) string) {
	line("sun:\n  latitude: %s\n  tilt: %s\n  azimuth: %s\n  ground: %s\n  losses: %s\n  coldest: %s\n  hottest: %s",
		q(x.LatitudeDeg, quantity.Angle), q(x.TiltDeg, quantity.Angle), q(x.AzimuthDeg, quantity.Angle), q(x.Ground, quantity.Ratio),
		q(x.Losses, quantity.Ratio), q(x.ColdestC, quantity.Temperature), q(x.HottestC, quantity.Temperature))
	if x.Most > 0 {
		line("  most: %d", x.Most)
	} else {
		line("  room: {length: %s, width: %s}", q(x.Room.LengthM, quantity.Length), q(x.Room.WidthM, quantity.Length))
	}
	if x.OnCart {
		line("  on: cart\n  height: %s", q(x.HeightM, quantity.Length))
	}
	var light, warmth []string
	for m := range months {
		light = append(light, strconv.FormatFloat(x.MonthlyKWhM2[m], 'f', -1, 64))
		warmth = append(warmth, q(x.WarmthC[m], quantity.Temperature))
	}
	line("  monthly: [%s]\n  warmth: [%s]", strings.Join(light, ", "), strings.Join(warmth, ", "))
}

// writtenWiring writes runs, circuits, needs and what is owned.
func writtenWiring(s *Scenario, line func(string, ...any), q func(float64, quantity.Dimension) string) {
	terminal := func(c float64) string {
		if c == 0 {
			return ""
		}
		return ", terminal: " + q(c, quantity.Temperature)
	}
	conduit := func(name string) string {
		if name == "" {
			return ""
		}
		return ", conduit: " + strconv.Quote(name)
	}
	list := func(key string, n int) {
		if n > 0 {
			line("%s:", key)
		}
	}
	list("runs", len(s.Runs))
	for _, r := range s.Runs {
		own := ""
		if r.OwnBreakerA != 0 {
			own = ", own_breaker: " + q(r.OwnBreakerA, quantity.Current)
		}
		if r.Kind == RunString {
			own += ", link: " + q(r.LinkM, quantity.Length)
		}
		line("  - {run: %s, length: %s, ambient: %s, bundled: %d, drop: %s%s%s%s}", r.Kind, q(r.LengthM, quantity.Length),
			q(r.AmbientC, quantity.Temperature), r.Bundled, q(r.Drop, quantity.Ratio), terminal(r.TerminalC), own, conduit(r.Conduit))
	}
	list("circuits", len(s.Circuits))
	for _, c := range s.Circuits {
		end := ""
		if r := c.Receptacle; r != nil {
			rating := ""
			if r.RatingA != 0 {
				rating = ", rating: " + q(r.RatingA, quantity.Current)
			}
			end = fmt.Sprintf(", receptacle: {role: %s, count: %d%s}", strconv.Quote(r.Role), r.Count, rating)
		}
		volts, neutral := q(c.Volts, quantity.Voltage), fmt.Sprintf(", neutral: %v", c.Neutral)
		if c.DC {
			volts, neutral = "dc", ""
		}
		line("  - {name: %s, volts: %s, device: %s, length: %s%s, ambient: %s, bundled: %d, drop: %s%s%s%s}",
			strconv.Quote(c.Name), volts, q(c.DeviceA, quantity.Current), q(c.LengthM, quantity.Length),
			neutral, q(c.AmbientC, quantity.Temperature), c.Bundled, q(c.Drop, quantity.Ratio), terminal(c.TerminalC), end, conduit(c.Conduit))
	}
	list("needs", len(s.Needs))
	for _, n := range s.Needs {
		rating := ""
		if n.RatingA != 0 {
			rating = ", rating: " + q(n.RatingA, quantity.Current)
		}
		line("  - {role: %s, count: %d%s}", strconv.Quote(n.Role), n.Count, rating)
	}
	list("have", len(s.Have))
	for _, h := range s.Have {
		count, sell := strconv.FormatFloat(h.Count, 'f', -1, 64), ""
		if h.ByLength {
			count = q(h.Count, quantity.Length)
		}
		if h.Ends > 0 {
			count += fmt.Sprintf(", ends: %d", h.Ends)
		}
		if h.Keep {
			count += ", keep: true"
		}
		if h.Sell != nil {
			sell = fmt.Sprintf(", sell: %d.%02d", *h.Sell/100, *h.Sell%100)
		}
		line("  - {part: %s, count: %s%s}", strconv.Quote(h.PartID), count, sell)
	}
}

// writtenProfile writes a measured profile with times of day.
func writtenProfile(m *Measured) string {
	var b strings.Builder
	b.WriteString("time,watts\n")
	if m.ByLeg {
		b.Reset()
		b.WriteString("time,watts_a,watts_b\n")
	}
	for i := range m.LegA {
		t := (m.StartMin + i*m.StepMin) % dayMin
		fmt.Fprintf(&b, "%02d:%02d,%v", t/60, t%60, m.LegA[i])
		if m.ByLeg {
			fmt.Fprintf(&b, ",%v", m.LegB[i])
		}
		b.WriteByte('\n')
	}
	return b.String()
}
