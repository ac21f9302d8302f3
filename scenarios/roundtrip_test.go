package scenarios

import (
	"fmt"
	"io/fs"
	"math"
	"reflect"
	"strings"
	"testing"
	"testing/fstest"

	"cartwright/catalog"
	"cartwright/catalog/problem"

	"pgregory.net/rapid"
)

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
	c.Cart.Pieces, c.Cart.Shelves = append([]Piece(nil), s.Cart.Pieces...), append([]Shelf(nil), s.Cart.Shelves...)
	for i := range c.Cart.Pieces {
		c.Cart.Pieces[i].Pos = problem.Pos{}
	}
	for i, x := range c.Cart.Shelves {
		if x.Rails != nil {
			r := *x.Rails
			r.Pos, c.Cart.Shelves[i].Rails = problem.Pos{}, &r
		}
	}
	if c.Recharge != nil && c.Recharge.Supply != nil {
		w := *c.Recharge.Supply
		w.Pos, c.Recharge = problem.Pos{}, &Recharge{c.Recharge.WithinH, c.Recharge.From, &w}
	}
	if c.Sun != nil {
		x := *c.Sun
		x.Pos, c.Sun = problem.Pos{}, &x
	}
	c.Warnings = nil
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
		s.Loads, s.OneAtATime = nil, nil
		for i := range rapid.IntRange(1, 4).Draw(t, "loads") {
			l := Load{
				Name: fmt.Sprint("load ", i), Watts: rapid.Float64Range(1e-3, maxPowerW).Draw(t, "watts"),
				Count: rapid.IntRange(1, maxCount).Draw(t, "count"), AllDay: true, Leg: LegAuto,
				Duty: share.Draw(t, "duty"), Start: rapid.Float64Range(1, 100).Draw(t, "start"),
				DC: rapid.Bool().Draw(t, "dc"), PowerFactor: rapid.Float64Range(1e-3, 1).Draw(t, "power factor"),
			}
			switch {
			case l.DC:
				l.Circuit = rapid.SampledFrom([]string{"", "lights"}).Draw(t, "dc circuit")
			case rapid.Bool().Draw(t, "on a circuit"):
				l.Circuit, l.Leg = "press", LegBoth
			default:
				l.Leg = rapid.SampledFrom([]Leg{LegA, LegB, LegBoth, LegAuto}).Draw(t, "leg")
			}
			if rapid.Bool().Draw(t, "hours") {
				l.AllDay, l.FromMin = false, rapid.IntRange(0, dayMin-1).Draw(t, "from")
				l.ToMin = rapid.IntRange(0, dayMin).Filter(func(m int) bool { return m != l.FromMin }).Draw(t, "to")
			}
			s.Loads = append(s.Loads, l)
		}
		if len(s.Loads) >= 2 && rapid.Bool().Draw(t, "one at a time") {
			s.OneAtATime = [][]int{{1, 0}}
		}
		s.Circuits = append(append([]Circuit(nil), demo.Circuits...), Circuit{Name: "lights", DC: true, Volts: s.Bus.NominalV, DeviceA: 20,
			LengthM: size.Draw(t, "dc length"), Neutral: true, AmbientC: 30, Bundled: 2, Drop: 0.03,
			Conduit: rapid.SampledFrom([]string{"", "emt"}).Draw(t, "conduit")})
		s.Runs = append(append([]Run(nil), demo.Runs[:3]...),
			Run{Kind: RunInlet, LengthM: size.Draw(t, "inlet"), LinkM: defaultLinkM, AmbientC: 30, Bundled: 2, Drop: 0.03},
			Run{Kind: RunBond, LengthM: size.Draw(t, "bond"), LinkM: defaultLinkM, AmbientC: 30, Bundled: 2, Drop: 0.03, Conduit: "flexible"})
		s.Runs[0].LinkM = size.Draw(t, "link")
		s.Recharge = &Recharge{WithinH: 9, From: "grid", Supply: &Supply{Volts: 240, DeviceA: 30}}
		s.Units = rapid.SampledFrom([]Units{US, Metric}).Draw(t, "units")
		s.UseDays = rapid.Float64Range(0.1, 366).Draw(t, "days")
		s.Cable = CableWish{Slack: share.Draw(t, "slack"), StepM: size.Draw(t, "step"), Fine: rapid.Bool().Draw(t, "fine")}
		s.GridCentsPerKWh = float64(rapid.IntRange(0, 9999).Draw(t, "grid")) / 100 * 100
		s.Cart.Rolling, s.Cart.Grip = rapid.Float64Range(1e-3, 1).Draw(t, "rolling"), rapid.Float64Range(1e-3, 2).Draw(t, "grip")
		if rapid.Bool().Draw(t, "pieces") {
			s.Cart.Frame = Mass{Name: "frame"}
			s.Cart.Pieces = []Piece{{Section: "tube-40", LengthM: size.Draw(t, "piece"), Count: 4, HeightM: size.Draw(t, "height")}}
		}
		s.AutonomyH = rapid.Float64Range(1e-3, maxHours).Draw(t, "autonomy")
		s.Cart.Shelves = []Shelf{{Name: "one", LengthM: size.Draw(t, "length"), DepthM: size.Draw(t, "depth"),
			ClearHeightM: size.Draw(t, "clear"), GapM: size.Draw(t, "gap"), MaxMassKg: math.Inf(1),
			Stack: rapid.IntRange(1, maxStack).Draw(t, "stack"), Rails: &Rails{Section: "angle-40", SpanM: size.Draw(t, "span"), Count: 3}}}
		s.Cart.Backboard.OffsetM = -size.Draw(t, "offset")
		s.Limits = Limits{MassKg: math.Inf(1), Budget: catalog.Cents(rapid.Int64Range(0, maxMoney*100).Draw(t, "budget")),
			TiltDeg: rapid.Float64Range(0.1, 44.9).Draw(t, "tilt"), Reserve: share.Draw(t, "reserve") * 0.99, Slope: share.Draw(t, "slope"),
			SharedProtocols: rapid.Bool().Draw(t, "protocols")}
		price := catalog.Cents(rapid.Int64Range(0, maxMoney*100).Draw(t, "sell"))
		s.Have = []Holding{
			{PartID: "a", Count: float64(rapid.IntRange(0, maxCount).Draw(t, "pieces")), Sell: &price, SellCentsPerM: float64(price)},
			{PartID: "b", Count: size.Draw(t, "metres"), ByLength: true, Ends: rapid.IntRange(0, maxCount).Draw(t, "ends")},
			{PartID: "c", Count: 1, Keep: rapid.Bool().Draw(t, "keep")},
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
