package optimize_test

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	"cartwright/catalog"
	"cartwright/catalog/quantity"
	"cartwright/scenarios"
)

// scenarioText writes a scenario without measured loads as a file in metric units.
func scenarioText(s *scenarios.Scenario) string {
	var b strings.Builder
	line := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	q := func(d quantity.Dimension) func(float64) string {
		return func(si float64) string { return strconv.Quote(quantity.Format(si, d)) }
	}
	kg, m, amps, volts, c := q(quantity.Mass), q(quantity.Length), q(quantity.Current), q(quantity.Voltage), q(quantity.Temperature)
	share, hours := q(quantity.Ratio), q(quantity.Duration)
	money := func(cents catalog.Cents) string { return fmt.Sprintf("%d.%02d", cents/100, cents%100) }
	// where writes a key only where it has a value other than the one that stands for none.
	where := func(has bool, key, value string) string {
		if !has {
			return ""
		}
		return ", " + key + ": " + value
	}
	line("name: %q\ncurrency: %s\nrules: %s", s.Name, s.Currency, s.Rules)
	line("bus: {nominal: %s, low: %s, high: %s}", volts(s.Bus.NominalV), volts(s.Bus.LowV), volts(s.Bus.HighV))
	line("autonomy: %s\nloads:", hours(s.AutonomyH))
	clock := func(min int) string { return fmt.Sprintf("\"%02d:%02d\"", min/60, min%60) }
	for _, l := range s.Loads {
		line("  - {name: %q, watts: %s, count: %d, duty: %s, start: %v, dc: %v%s%s%s}", l.Name, q(quantity.Power)(l.Watts),
			l.Count, share(l.Duty), l.Start, l.DC, where(!l.DC, "leg", string(l.Leg)),
			where(!l.AllDay, "from", clock(l.FromMin)), where(!l.AllDay, "to", clock(l.ToMin)))
	}
	if r := s.Recharge; r != nil {
		line("recharge: {within: %s, from: %s}", hours(r.WithinH), r.From)
	}
	k := s.Cart
	line("cart:\n  casters: %d\n  wheelbase: %s\n  track: %s\n  caster_mass_height: %s", k.Casters, m(k.WheelbaseM), m(k.TrackM), m(k.CasterMassHeightM))
	line("  frame: {mass: %s, height: %s}\n  backboard: {elevation: %s, offset: %s}", kg(k.Frame.MassKg), m(k.Frame.HeightM),
		m(k.Backboard.ElevationM), m(k.Backboard.OffsetM))
	list := func(key string, n int) {
		if n > 0 {
			line("%s:", key)
		}
	}
	list("  deck_items", len(k.DeckItems))
	for _, d := range k.DeckItems {
		line("    - {name: %q, mass: %s, height: %s, offset: %s}", d.Name, kg(d.MassKg), m(d.HeightM), m(d.OffsetM))
	}
	list("  shelves", len(k.Shelves))
	for _, x := range k.Shelves {
		line("    - {name: %q, elevation: %s, length: %s, depth: %s, clear_height: %s, gap: %s%s}", x.Name, m(x.ElevationM),
			m(x.LengthM), m(x.DepthM), m(x.ClearHeightM), m(x.GapM), where(!math.IsInf(x.MaxMassKg, 1), "max_mass", kg(x.MaxMassKg)))
	}
	l := s.Limits
	line("limits: {tilt: %s, reserve: %s, slope: %s%s%s%s}", q(quantity.Angle)(l.TiltDeg), share(l.Reserve), share(l.Slope),
		where(!math.IsInf(l.MassKg, 1), "mass", kg(l.MassKg)), where(l.Budget != math.MaxInt64, "budget", money(l.Budget)),
		where(l.PushN != 0, "push", q(quantity.Force)(l.PushN)))
	line("caster_factor: %v\nac_fault: %s\nsold: %s\nmoney: {tax: %s}", s.CasterFactor, amps(s.ACFaultA), money(s.Sold), share(s.Tax))
	list("runs", len(s.Runs))
	for _, r := range s.Runs {
		line("  - {run: %s, length: %s, ambient: %s, bundled: %d, drop: %s%s%s}", r.Kind, m(r.LengthM), c(r.AmbientC), r.Bundled,
			share(r.Drop), where(r.TerminalC != 0, "terminal", c(r.TerminalC)), where(r.OwnBreakerA != 0, "own_breaker", amps(r.OwnBreakerA)))
	}
	list("circuits", len(s.Circuits))
	for _, x := range s.Circuits {
		end := ""
		if r := x.Receptacle; r != nil {
			end = fmt.Sprintf("{role: %q, count: %d%s}", r.Role, r.Count, where(r.RatingA != 0, "rating", amps(r.RatingA)))
		}
		line("  - {name: %q, volts: %s, device: %s, length: %s, neutral: %v, ambient: %s, bundled: %d, drop: %s%s%s}", x.Name,
			volts(x.Volts), amps(x.DeviceA), m(x.LengthM), x.Neutral, c(x.AmbientC), x.Bundled, share(x.Drop),
			where(x.TerminalC != 0, "terminal", c(x.TerminalC)), where(end != "", "receptacle", end))
	}
	list("needs", len(s.Needs))
	for _, n := range s.Needs {
		line("  - {role: %q, count: %d%s}", n.Role, n.Count, where(n.RatingA != 0, "rating", amps(n.RatingA)))
	}
	list("have", len(s.Have))
	for _, h := range s.Have {
		count, sell := fmt.Sprint(h.Count), ""
		if h.ByLength {
			count = m(h.Count)
		}
		if h.Sell != nil {
			sell = money(*h.Sell)
		}
		line("  - {part: %s, count: %s%s%s}", h.PartID, count, where(h.Ends > 0, "ends", fmt.Sprint(h.Ends)), where(sell != "", "sell", sell))
	}
	line("solver: {time_limit: \"%v s\", plans: %d}", s.Solver.TimeLimitS, s.Solver.Plans)
	return b.String()
}

// usQuantities are the units of a scenario's file that have a US one, and how many of it make one of the
// metric: the international yard and pound agreement of 1959, and standard gravity, 9.80665 m/s2.
var usQuantities = map[string]struct{ unit, each string }{
	"kg": {"lb", "1/0.45359237"},
	"m":  {"in", "1/0.0254"},
	"N":  {"lbf", "1/4.4482216152605"},
}

var metric = regexp.MustCompile(`"(-?[0-9.e-]+) (kg|m|N|C)"`)

// scenarioInUS changes a file to pounds, inches, pounds of force and degrees Fahrenheit.
func scenarioInUS(t *testing.T, text string) string {
	t.Helper()
	return metric.ReplaceAllStringFunc(text, func(found string) string {
		part := metric.FindStringSubmatch(found)
		if part[2] == "C" {
			x, err := strconv.ParseFloat(part[1], 64)
			if err != nil {
				t.Fatal(err)
			}
			return fmt.Sprintf("\"%v F\"", x*9/5+32) // whole degrees are drawn: exact
		}
		us := usQuantities[part[2]]
		return fmt.Sprintf("%q", multiplied(t, part[1], us.each)+" "+us.unit)
	})
}

// opened reads a scenario's file.
func opened(t *testing.T, text string) *scenarios.Scenario {
	t.Helper()
	s, err := scenarios.OpenFS(fstest.MapFS{"cart/scenario.yaml": {Data: []byte(text)}}, "cart")
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	return s
}
