package scenarios

import (
	"fmt"
	"io/fs"
	"math"
	"reflect"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	"cartwright/catalog"
	"cartwright/catalog/problem"
	"cartwright/catalog/quantity"

	"pgregory.net/rapid"
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
	line("name: %s\ncurrency: %s\nrules: %s", strconv.Quote(s.Name), s.Currency, s.Rules)
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
		line("  - name: %s\n    watts: %s\n    count: %d\n    duty: %s\n    start: %s\n    dc: %v", strconv.Quote(l.Name),
			q(l.Watts, quantity.Power), l.Count, q(l.Duty, quantity.Ratio), num(l.Start), l.DC)
		if !l.DC {
			line("    leg: %s", l.Leg)
		}
		if !l.AllDay {
			line("    from: \"%02d:%02d\"\n    to: \"%02d:%02d\"", l.FromMin/60, l.FromMin%60, l.ToMin/60, l.ToMin%60)
		}
	}
	line("autonomy: %s", q(s.AutonomyH, quantity.Duration))
	if r := s.Recharge; r != nil {
		line("recharge: {within: %s, from: %s}", q(r.WithinH, quantity.Duration), r.From)
	}
	c := s.Cart
	line("cart:\n  casters: %d\n  wheelbase: %s\n  track: %s\n  caster_mass_height: %s", c.Casters, m(c.WheelbaseM), m(c.TrackM), m(c.CasterMassHeightM))
	line("  frame: {mass: %s, height: %s}\n  deck_items:", q(c.Frame.MassKg, quantity.Mass), m(c.Frame.HeightM))
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
		line("    - {name: %s, elevation: %s, length: %s, depth: %s, clear_height: %s, gap: %s%s}", strconv.Quote(x.Name),
			m(x.ElevationM), m(x.LengthM), m(x.DepthM), m(x.ClearHeightM), m(x.GapM), most)
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
	line("caster_factor: %s\nac_fault: %s", num(s.CasterFactor), q(s.ACFaultA, quantity.Current))
	writtenWiring(s, line, q)
	line("sold: %s\nmoney: {tax: %s}", money(s.Sold), q(s.Tax, quantity.Ratio))
	if v := s.Savings; v != nil {
		line("savings: {now: %s, per_month: %s}", money(v.Now), money(v.PerMonth))
	}
	line("solver: {time_limit: %s, plans: %d}", strconv.Quote(num(s.Solver.TimeLimitS)+" s"), s.Solver.Plans)
	return b.String(), profile
}

// writtenWiring writes runs, circuits, needs and what is owned.
func writtenWiring(s *Scenario, line func(string, ...any), q func(float64, quantity.Dimension) string) {
	terminal := func(c float64) string {
		if c == 0 {
			return ""
		}
		return ", terminal: " + q(c, quantity.Temperature)
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
		line("  - {run: %s, length: %s, ambient: %s, bundled: %d, drop: %s%s%s}", r.Kind, q(r.LengthM, quantity.Length),
			q(r.AmbientC, quantity.Temperature), r.Bundled, q(r.Drop, quantity.Ratio), terminal(r.TerminalC), own)
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
		line("  - {name: %s, volts: %s, device: %s, length: %s, neutral: %v, ambient: %s, bundled: %d, drop: %s%s%s}",
			strconv.Quote(c.Name), q(c.Volts, quantity.Voltage), q(c.DeviceA, quantity.Current), q(c.LengthM, quantity.Length),
			c.Neutral, q(c.AmbientC, quantity.Temperature), c.Bundled, q(c.Drop, quantity.Ratio), terminal(c.TerminalC), end)
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

// reopened reads what written wrote.
func reopened(s *Scenario) (*Scenario, string, error) {
	text, profile := written(s)
	files := fstest.MapFS{"cart/scenario.yaml": {Data: []byte(text)}, "cart/loads.csv": {Data: []byte(profile)}}
	again, err := OpenFS(files, "cart")
	return again, text, err
}

// bare returns a scenario without its places, which writing does not keep.
func bare(s *Scenario) *Scenario {
	c := *s
	c.File, c.Dir, c.places = "", "", nil
	c.Runs, c.Circuits = append([]Run(nil), s.Runs...), append([]Circuit(nil), s.Circuits...)
	c.Needs, c.Have = append([]Need(nil), s.Needs...), append([]Holding(nil), s.Have...)
	for i := range c.Runs {
		c.Runs[i].Pos = problem.Pos{}
	}
	for i := range c.Circuits {
		c.Circuits[i].Pos = problem.Pos{}
	}
	for i := range c.Needs {
		c.Needs[i].Pos = problem.Pos{}
	}
	for i := range c.Have {
		c.Have[i].Pos = problem.Pos{}
	}
	return &c
}

// same fails the test where a scenario, written and read, is another.
func same(t interface {
	Helper()
	Fatalf(string, ...any)
}, s *Scenario) {
	t.Helper()
	again, text, err := reopened(s)
	if err != nil {
		t.Fatalf("what was written cannot be read:\n%s\n%v", text, err)
	}
	if got, want := bare(again), bare(s); !reflect.DeepEqual(got, want) {
		t.Fatalf("wrote\n%+v\nread\n%+v\nfrom\n%s", want, got, text)
	}
}

func TestDemosRoundTrip(t *testing.T) {
	for _, name := range DemoNames() {
		t.Run(name, func(t *testing.T) {
			s, err := Demo(name)
			if err != nil {
				t.Fatal(err)
			}
			same(t, s)
		})
	}
}

func TestRoundTrip(t *testing.T) {
	demo, err := Demo("cider-shed")
	if err != nil {
		t.Fatal(err)
	}
	rapid.Check(t, func(t *rapid.T) {
		s := *demo
		size := rapid.Float64Range(1e-3, maxLengthM)
		share := rapid.Float64Range(0, 1)
		s.Name = rapid.StringMatching(`[!-~]([ -~é’]{0,20}[!-~])?`).Draw(t, "name")
		s.Loads = nil
		for i := range rapid.IntRange(1, 4).Draw(t, "loads") {
			l := Load{
				Name: fmt.Sprint("load ", i), Watts: rapid.Float64Range(1e-3, maxPowerW).Draw(t, "watts"),
				Count: rapid.IntRange(1, maxCount).Draw(t, "count"), AllDay: true, Leg: LegAuto,
				Duty: share.Draw(t, "duty"), Start: rapid.Float64Range(1, 100).Draw(t, "start"),
				DC: rapid.Bool().Draw(t, "dc"),
			}
			if !l.DC {
				l.Leg = rapid.SampledFrom([]Leg{LegA, LegB, LegBoth, LegAuto}).Draw(t, "leg")
			}
			if rapid.Bool().Draw(t, "hours") {
				l.AllDay, l.FromMin = false, rapid.IntRange(0, dayMin-1).Draw(t, "from")
				l.ToMin = rapid.IntRange(0, dayMin).Filter(func(m int) bool { return m != l.FromMin }).Draw(t, "to")
			}
			s.Loads = append(s.Loads, l)
		}
		s.AutonomyH = rapid.Float64Range(1e-3, maxHours).Draw(t, "autonomy")
		s.Cart.Shelves = []Shelf{{Name: "one", LengthM: size.Draw(t, "length"), DepthM: size.Draw(t, "depth"),
			ClearHeightM: size.Draw(t, "clear"), GapM: size.Draw(t, "gap"), MaxMassKg: math.Inf(1)}}
		s.Cart.Backboard.OffsetM = -size.Draw(t, "offset")
		s.Limits = Limits{MassKg: math.Inf(1), Budget: catalog.Cents(rapid.Int64Range(0, maxMoney*100).Draw(t, "budget")),
			TiltDeg: rapid.Float64Range(0.1, 44.9).Draw(t, "tilt"), Reserve: share.Draw(t, "reserve") * 0.99, Slope: share.Draw(t, "slope")}
		price := catalog.Cents(rapid.Int64Range(0, maxMoney*100).Draw(t, "sell"))
		s.Have = []Holding{
			{PartID: "a", Count: float64(rapid.IntRange(0, maxCount).Draw(t, "pieces")), Sell: &price, SellCentsPerM: float64(price)},
			{PartID: "b", Count: size.Draw(t, "metres"), ByLength: true, Ends: rapid.IntRange(0, maxCount).Draw(t, "ends")},
		}
		s.Solver = Solver{TimeLimitS: float64(rapid.IntRange(1, 86400000).Draw(t, "ms")) / 1000, Plans: rapid.IntRange(1, 1000).Draw(t, "plans")}
		same(t, &s)
	})
}

// FuzzScenario asks of any text that the reader never fails but by telling of mistakes in it, and that
// what it accepts is read the same when written out.
func FuzzScenario(f *testing.F) {
	for _, name := range DemoNames() {
		data, err := fs.ReadFile(DemoFS(), name+"/"+FileName)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(data))
	}
	f.Add("name: 1\nrules: iec\nloads: [{}]\ncart: {shelves: [a]}\n")
	day := "time,watts\n"
	for h := range 24 {
		day += fmt.Sprintf("%02d:00,%d\n", h, h)
	}
	f.Fuzz(func(t *testing.T, text string) {
		files := fstest.MapFS{"cart/scenario.yaml": {Data: []byte(text)}, "cart/loads.csv": {Data: []byte(day)}}
		s, err := OpenFS(files, "cart")
		if err != nil {
			for _, l := range strings.Split(err.Error(), "\n") {
				if !strings.HasPrefix(l, "cart/scenario.yaml:") && !strings.HasPrefix(l, "cart/loads.csv:") {
					t.Fatalf("%q fails with no place: %q", text, l)
				}
			}
			return
		}
		if s.Measured != nil && len(s.Loads) > 0 {
			t.Fatalf("%q has loads and is measured", text)
		}
		same(t, s)
	})
}
