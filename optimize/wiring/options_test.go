package wiring_test

import (
	"slices"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"

	"pgregory.net/rapid"
)

// drawnRules draws a rule set.
func drawnRules(t *rapid.T) wiring.Rules {
	return wiring.For(rapid.SampledFrom([]scenarios.Rules{scenarios.NEC, scenarios.IEC}).Draw(t, "rules"))
}

// drawnDuty draws a duty that some of drawnCatalog may well serve.
func drawnDuty(t *rapid.T) wiring.Duty {
	d := wiring.Duty{
		Kind:      rapid.SampledFrom([]scenarios.RunKind{scenarios.RunString, scenarios.RunMain, scenarios.RunFeeder, scenarios.RunBranch}).Draw(t, "kind"),
		DesignA:   rapid.Float64Range(1, 400).Draw(t, "design"),
		NominalV:  rapid.SampledFrom([]float64{24, 51.2, 120, 230, 240}).Draw(t, "nominal"),
		DeviceV:   rapid.SampledFrom([]float64{29, 58.4, 120, 230, 240}).Draw(t, "device volts"),
		Poles:     rapid.IntRange(1, 2).Draw(t, "poles"),
		LengthM:   rapid.Float64Range(0, 20).Draw(t, "length"),
		AmbientC:  rapid.Float64Range(-10, 90).Draw(t, "ambient"),
		Bundled:   rapid.IntRange(0, 45).Draw(t, "bundled"),
		TerminalC: rapid.SampledFrom([]float64{0, 60, 75}).Draw(t, "terminal"),
		Drop:      rapid.Float64Range(0, 0.1).Draw(t, "drop"),
	}
	d.DropA, d.Conductors = d.DesignA, d.Poles+1
	d.BoughtM, d.Fine = d.LengthM, rapid.IntRange(0, 4).Draw(t, "fine") == 0
	d.Conduit = rapid.SampledFrom([]string{"", "", "", "emt"}).Draw(t, "conduit")
	d.AC = d.Kind == scenarios.RunFeeder || d.Kind == scenarios.RunBranch
	d.Ground = d.AC
	switch {
	case d.Kind == scenarios.RunBranch:
		d.DesignA = rapid.SampledFrom([]float64{15, 16, 20, 30, 50, 63, 100}).Draw(t, "branch device")
		d.DeviceA = d.DesignA
	case d.Kind == scenarios.RunString:
		d.TwoWay, d.Devices = true, rapid.IntRange(0, 2).Draw(t, "devices")
		d.MostDeviceA = rapid.SampledFrom([]float64{0, 50, 125, 250}).Draw(t, "most device")
		d.Links, d.LinkM = rapid.IntRange(0, 3).Draw(t, "links"), rapid.Float64Range(0, 1).Draw(t, "link")
		if rapid.Bool().Draw(t, "built in") {
			d.BuiltInA, d.BuiltInBreaksA = rapid.SampledFrom([]float64{20, 32, 50, 105, 125, 250}).Draw(t, "built-in rating"), 10000
		}
	case rapid.Bool().Draw(t, "own"):
		d.OwnBreakerA = rapid.SampledFrom([]float64{20, 32, 50, 100, 125, 175, 250, 400}).Draw(t, "own breaker")
	}
	return d
}

// easyDuty draws a duty that is short, cool and alone, so that options abound.
func easyDuty(t *rapid.T) wiring.Duty {
	d := drawnDuty(t)
	d.LengthM, d.AmbientC, d.Bundled, d.Drop = 0.5, 25, 2, 0.1
	return d
}

var drawnSizes = slices.Concat(necSizes, iecSizes, []catalog.Size{"16 AWG", "150 mm2"})

func drawnCatalog(t *rapid.T) *catalog.Catalog {
	c := &catalog.Catalog{}
	for range rapid.IntRange(0, 8).Draw(t, "cables") {
		c.Cables = append(c.Cables, catalog.Cable{
			Size:        rapid.SampledFrom(drawnSizes).Draw(t, "size"),
			Material:    rapid.SampledFrom([]string{"copper", "copper", "aluminium"}).Draw(t, "material"),
			InsulationC: rapid.SampledFrom([]float64{60, 70, 75, 90, 105}).Draw(t, "insulation"),
			GroundOnly:  rapid.IntRange(0, 3).Draw(t, "green") == 0,
			Fine:        rapid.Bool().Draw(t, "fine"),
			OuterM:      rapid.SampledFrom([]float64{0, 0.006, 0.012}).Draw(t, "outer"),
		})
	}
	for range rapid.IntRange(0, 8).Draw(t, "devices") {
		c.Devices = append(c.Devices, catalog.Device{
			Type:      rapid.SampledFrom([]string{"fuse", "breaker"}).Draw(t, "type"),
			Class:     rapid.SampledFrom([]string{"", "gG", "T", "aR", "gPV"}).Draw(t, "class"),
			RatingA:   rapid.SampledFrom([]float64{6, 15, 16, 20, 30, 32, 50, 63, 100, 110, 125, 150, 160, 250, 400, 800, 105}).Draw(t, "rating"),
			Poles:     rapid.IntRange(1, 2).Draw(t, "poles"),
			MaxDCV:    rapid.SampledFrom([]float64{0, 32, 80, 125}).Draw(t, "dc volts"),
			MaxACV:    rapid.SampledFrom([]float64{0, 120, 240}).Draw(t, "ac volts"),
			TerminalC: rapid.SampledFrom([]float64{60, 75, 90}).Draw(t, "terminal"),
			Polarised: rapid.SampledFrom([]catalog.Answer{catalog.Unknown, catalog.Yes, catalog.No}).Draw(t, "polarised"),
			Listed:    rapid.SampledFrom([]catalog.Answer{catalog.Unknown, catalog.Yes, catalog.No}).Draw(t, "listed"),
		})
	}
	for range rapid.IntRange(0, 3).Draw(t, "conduits") {
		c.Conduits = append(c.Conduits, catalog.Conduit{
			Type:      rapid.SampledFrom([]string{"emt", "emt", "pvc-40"}).Draw(t, "conduit"),
			InsideMM2: rapid.Float64Range(50, 3000).Draw(t, "inside"),
		})
	}
	return c
}

// allServing is Options by brute force: every combination through Check, with as many devices as are asked for.
func allServing(r wiring.Rules, d wiring.Duty, c *catalog.Catalog) []wiring.Option {
	type guarding struct {
		dev     *catalog.Device
		n       int
		builtIn bool
	}
	need := max(1, d.Devices)
	guards := []guarding{{nil, 0, false}}
	if d.OwnBreakerA == 0 {
		guards = nil
		if d.BuiltInA > 0 && need == 1 {
			guards = append(guards, guarding{nil, 0, true})
		}
		for i := range c.Devices {
			if d.BuiltInA > 0 && need > 1 {
				guards = append(guards, guarding{&c.Devices[i], need - 1, true})
			}
			guards = append(guards, guarding{&c.Devices[i], need, false})
		}
	}
	grounds := []*catalog.Cable{nil}
	if d.Ground {
		grounds = nil
		for i := range c.Cables {
			grounds = append(grounds, &c.Cables[i])
		}
	}
	pipes := []*catalog.Conduit{nil}
	if d.Conduit != "" {
		pipes = nil
		for i := range c.Conduits {
			if c.Conduits[i].Type == d.Conduit {
				pipes = append(pipes, &c.Conduits[i])
			}
		}
	}
	var options []wiring.Option
	for i := range c.Cables {
		for sets := 1; sets <= 3; sets++ { // one more than is ever allowed
			for _, g := range guards {
				for _, ground := range grounds {
					o := wiring.Option{Cable: &c.Cables[i], Sets: sets, Device: g.dev, Devices: g.n, BuiltIn: g.builtIn, Ground: ground}
					if !r.Check(d, o, 0).OK() {
						continue
					}
					for _, pipe := range pipes {
						if o.Conduit = pipe; pipe == nil || wiring.Holds(r, &d, &o, pipe) {
							options = append(options, o)
						}
					}
				}
			}
		}
	}
	return options
}

func TestOptionsAreAllThatServe(t *testing.T) {
	for name, duty := range map[string]func(*rapid.T) wiring.Duty{"any": drawnDuty, "easy": easyDuty} {
		t.Run(name, rapid.MakeCheck(func(t *rapid.T) {
			r, d, c := drawnRules(t), duty(t), drawnCatalog(t)
			if got, want := wiring.Options(r, d, c), allServing(r, d, c); !slices.Equal(got, want) {
				t.Fatalf("%d options, brute force finds %d\n%+v\n%+v", len(got), len(want), got, want)
			}
		}))
	}
}

// TestUngroundedAndGrounds: the options are the ungrounded ones, each with each of its grounds.
func TestUngroundedAndGrounds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, d, c := drawnRules(t), easyDuty(t), drawnCatalog(t)
		d.Conduit = ""
		var joined []wiring.Option
		for _, o := range wiring.Ungrounded(r, d, c) {
			if o.Ground != nil {
				t.Fatalf("ungrounded option with a ground: %+v", o)
			}
			grounds := wiring.Grounds(r, d, o, c)
			if !d.Ground {
				if grounds != nil {
					t.Fatalf("grounds %v for a duty without", grounds)
				}
				joined = append(joined, o)
			}
			for _, g := range grounds {
				o.Ground = g
				joined = append(joined, o)
			}
		}
		if want := wiring.Options(r, d, c); !slices.Equal(joined, want) {
			t.Fatalf("joined %d, options %d", len(joined), len(want))
		}
	})
}

// narrowCatalog returns a few cables and devices of both rule sets, invented: few enough for brute force
// with every ground, and enough for every kind of run.
func narrowCatalog() *catalog.Catalog {
	c := &catalog.Catalog{}
	for _, size := range []catalog.Size{"12 AWG", "10 AWG", "6 AWG", "2 AWG", "1/0 AWG", "4/0 AWG", "4 mm2", "16 mm2", "50 mm2", "95 mm2"} {
		c.Cables = append(c.Cables, *copperCable(size, 90))
	}
	for _, kind := range []string{"fuse", "breaker"} {
		for _, a := range []float64{20, 50, 125, 250} {
			c.Devices = append(c.Devices, *device(kind, a), *acBreaker(a, 1), *acBreaker(a, 2))
		}
	}
	return c
}

// TestOptionsAbound: every kind of run has options, so that the property tests' agreement is not one of
// empty lists.
func TestOptionsAbound(t *testing.T) {
	c := narrowCatalog()
	own := changed(feederDuty(24), func(d *wiring.Duty) { d.OwnBreakerA = 40 })
	long := changed(busDuty(scenarios.RunString, 100), func(d *wiring.Duty) { d.LengthM = 50 }) // only two sets do
	inside := changed(busDuty(scenarios.RunString, 100), func(d *wiring.Duty) { d.BuiltInA, d.BuiltInBreaksA = 125, 10000 })
	ends := changed(inside, func(d *wiring.Duty) { d.Devices = 2 })
	for _, rules := range []scenarios.Rules{scenarios.NEC, scenarios.IEC} {
		r := wiring.For(rules)
		for _, d := range []wiring.Duty{busDuty(scenarios.RunString, 100), inside, ends, long, busDuty(scenarios.RunMain, 200), feederDuty(30),
			own, branchDuty(20, 120, 1), branchDuty(50, 240, 2)} {
			got, want := wiring.Options(r, d, c), allServing(r, d, c)
			if len(got) == 0 || !slices.Equal(got, want) {
				t.Errorf("%s %s: %d options, brute force finds %d", rules, d.Kind, len(got), len(want))
			}
		}
	}
}

// TestNoOptions: nothing serves from an empty catalogue, or behind an own breaker that is too small.
func TestNoOptions(t *testing.T) {
	if got := wiring.Options(necRules, busDuty(scenarios.RunMain, 80), &catalog.Catalog{}); got != nil {
		t.Errorf("empty catalogue: %+v", got)
	}
	small := changed(busDuty(scenarios.RunMain, 80), func(d *wiring.Duty) { d.OwnBreakerA = 80 })
	if got := wiring.Options(necRules, small, wideCatalog()); got != nil {
		t.Errorf("80 A breaker for 80 A without end: %d options, want none", len(got))
	}
}

// TestAlone: what fails alone is in no option, and what is in an option passes alone: so a reason why a part is left
// out is true.
func TestAlone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, d, c := drawnRules(t), easyDuty(t), drawnCatalog(t)
		passed := func(checks []wiring.Check) bool {
			return !slices.ContainsFunc(checks, func(c wiring.Check) bool { return !c.Passed })
		}
		options := wiring.Options(r, d, c)
		for _, o := range options {
			if !passed(wiring.CableAlone(r, d, o.Cable, o.Sets)) || o.Device != nil && !passed(wiring.DeviceAlone(r, d, o.Device)) {
				t.Fatalf("%+v serves and fails alone", o)
			}
		}
		for i := range c.Devices {
			if dev := &c.Devices[i]; d.OwnBreakerA == 0 && !passed(wiring.DeviceAlone(r, d, dev)) &&
				slices.ContainsFunc(options, func(o wiring.Option) bool { return o.Device == dev }) {
				t.Fatalf("%+v fails alone and serves", dev)
			}
		}
	})
}
