package bench_test

import (
	"context"
	"strings"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/bench"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// serving returns a problem of one battery and one inverter that both serve, with all else of the embedded
// catalogue.
func serving(t *testing.T) (*scenarios.Scenario, *catalog.Catalog) {
	t.Helper()
	s, err := scenarios.Demo("cider-shed")
	if err != nil {
		t.Fatal(err)
	}
	c := catalog.Embedded().Clone()
	s.Have = nil
	s.Limits.Reserve = 0
	for _, b := range c.Batteries {
		if b.ID == "lfp-rack-5" {
			c.Batteries = []catalog.Battery{b}
		}
	}
	for _, i := range c.Inverters {
		if i.ID == "inv-split-6" {
			c.Inverters = []catalog.Inverter{i}
		}
	}
	return s, c
}

func laid(t *testing.T, s *scenarios.Scenario, c *catalog.Catalog) *bench.Bench {
	t.Helper()
	b, err := bench.Lay(context.Background(), question.Problem{Scenario: s, Catalog: c}, "", &bench.Before{})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// Each condition of a battery keeps it out by itself, is named, and tells the figure and its place in the files.
func TestBatteryConditions(t *testing.T) {
	spoil := []struct {
		name, place, figure string
		do                  func(s *scenarios.Scenario, c *catalog.Catalog)
	}{
		{"nominal voltage", "bus.nominal", "120 V", func(_ *scenarios.Scenario, c *catalog.Catalog) { c.Batteries[0].NominalV = 120 }},
		{"max series", "max_series", "2 of 25.6 V", func(_ *scenarios.Scenario, c *catalog.Catalog) {
			b := &c.Batteries[0]
			b.NominalV, b.MinV, b.MaxV, b.MaxSeries = b.NominalV/2, b.MinV/2, b.MaxV/2, 1
		}},
		{"bus high", "bus.high", "90 V", func(_ *scenarios.Scenario, c *catalog.Catalog) { c.Batteries[0].MaxV = 90 }},
		{"bus low", "bus.low", "60 V", func(s *scenarios.Scenario, c *catalog.Catalog) { s.Bus.LowV = 60 }},
		{"usable energy", "limits.reserve", "100 %", func(s *scenarios.Scenario, _ *catalog.Catalog) { s.Limits.Reserve = 1 }},
		{"shelf height", "clear_height", "2 m", func(_ *scenarios.Scenario, c *catalog.Catalog) { c.Batteries[0].HeightM = 2 }},
		{"shelf floor", "length and depth", "3 by", func(_ *scenarios.Scenario, c *catalog.Catalog) { c.Batteries[0].LengthM = 3 }},
		{"room for a string", "length and depth", "takes 15", func(_ *scenarios.Scenario, c *catalog.Catalog) {
			b := &c.Batteries[0]
			b.NominalV, b.MinV, b.MaxV, b.MaxSeries = b.NominalV/16, b.MinV/16, b.MaxV/16, 16
		}},
		{"shelf mass", "max_mass", "500 kg", func(_ *scenarios.Scenario, c *catalog.Catalog) { c.Batteries[0].MassKg = 500 }},
		{"string wiring", "max_fuse_a", "17.55 A", func(_ *scenarios.Scenario, c *catalog.Catalog) {
			c.Batteries[0].MaxDischargeA, c.Batteries[0].MaxFuseA = 14.04, 1 // no device is as small as the maker allows
		}},
		{"protocols", "limits.protocols", "can, rs485", func(s *scenarios.Scenario, c *catalog.Catalog) {
			s.Limits.SharedProtocols = true
			c.Batteries[0].Protocols, c.Inverters[0].Protocols = []string{"can", "rs485"}, nil
		}},
	}
	s, c := serving(t)
	if why := laid(t, s, c).WhyNot("lfp-rack-5"); len(why) != 0 {
		t.Fatalf("the battery should serve: %q", why)
	}
	told := map[string]bool{}
	for _, x := range spoil {
		t.Run(x.name, func(t *testing.T) {
			s, c := serving(t)
			x.do(s, c)
			b := laid(t, s, c)
			first := bench.Unmet(b.BatteryConditions(), b.StandingOf(&c.Batteries[0]))
			if first == nil || first.Name != x.name {
				t.Fatalf("want %q, got %v", x.name, first)
			}
			told[x.name] = true
			why := strings.Join(b.WhyNot("lfp-rack-5"), "; ")
			if !strings.Contains(why, x.place) || !strings.Contains(why, x.figure) {
				t.Errorf("%q should tell %q and %q", why, x.figure, x.place)
			}
			if len(b.Stacks) != 0 || len(b.Reasons) == 0 {
				t.Errorf("the bench still has %d kinds of string, and says %q", len(b.Stacks), b.Reasons)
			}
		})
	}
	for _, k := range laid(t, s, c).BatteryConditions() {
		if !told[k.Name] && k.Name != "to be had" { // only the carts on the way to a target bound what can be bought
			t.Errorf("no case for the condition %q", k.Name)
		}
	}
}

// So does each condition of an inverter.
func TestInverterConditions(t *testing.T) {
	spoil := []struct {
		name, place, figure string
		do                  func(s *scenarios.Scenario, c *catalog.Catalog)
	}{
		{"dc_min_v", "bus.low", "50 V", func(_ *scenarios.Scenario, c *catalog.Catalog) { c.Inverters[0].DCMinV = 50 }},
		{"dc_max_v", "bus.high", "52 V", func(_ *scenarios.Scenario, c *catalog.Catalog) { c.Inverters[0].DCMaxV = 52 }},
		{"ac_v", "ac_v", "230 V", func(_ *scenarios.Scenario, c *catalog.Catalog) { c.Inverters[0].ACV = "230" }},
		{"continuous_w", "continuous_w", "100 W", func(_ *scenarios.Scenario, c *catalog.Catalog) { c.Inverters[0].ContinuousW = 100 }},
		{"leg_w", "leg_w", "100 W a leg", func(_ *scenarios.Scenario, c *catalog.Catalog) { c.Inverters[0].LegW = 100 }},
		{"surge_w", "surge_w", "100 W", func(_ *scenarios.Scenario, c *catalog.Catalog) { c.Inverters[0].SurgeW = 100 }},
		{"leg_surge_w", "leg_surge_w", "100 W a leg", func(_ *scenarios.Scenario, c *catalog.Catalog) { c.Inverters[0].LegSurgeW = 100 }},
		{"charger_ac_v", "charger_ac_v", "230 V", func(s *scenarios.Scenario, c *catalog.Catalog) {
			c.Inverters[0].ChargerACV = "230"
			s.Recharge = &scenarios.Recharge{WithinH: 10, From: "grid", Supply: &scenarios.Supply{Volts: 120, DeviceA: 20}}
		}},
		{"charger_a", "charger_a", "no charger", func(s *scenarios.Scenario, c *catalog.Catalog) {
			c.Inverters[0].ChargerA = 0
			s.Recharge = &scenarios.Recharge{WithinH: 10, From: "grid"}
		}},
		{"main wiring", "the main of it", "A", func(_ *scenarios.Scenario, c *catalog.Catalog) { c.Inverters[0].ContinuousW = 150000 }},
		{"feeder wiring", "the feeder of it", "A", func(s *scenarios.Scenario, c *catalog.Catalog) {
			for i := range s.Runs {
				if s.Runs[i].Kind == scenarios.RunFeeder {
					s.Runs[i].Drop = 1e-6
				}
			}
		}},
	}
	s, c := serving(t)
	if why := laid(t, s, c).WhyNot("inv-split-6"); len(why) != 0 {
		t.Fatalf("the inverter should serve: %q", why)
	}
	told := map[string]bool{}
	for _, x := range spoil {
		t.Run(x.name, func(t *testing.T) {
			s, c := serving(t)
			c.Inverters[0].MaxUnits = 1
			x.do(s, c)
			b := laid(t, s, c)
			first := bench.Unmet(b.InverterConditions(), bench.Serving{Inverter: &c.Inverters[0], Units: 1})
			if first == nil || first.Name != x.name {
				t.Fatalf("want %q, got %v", x.name, first)
			}
			told[x.name] = true
			why := strings.Join(b.WhyNot("inv-split-6"), "; ")
			if !strings.Contains(why, x.place) || !strings.Contains(why, x.figure) {
				t.Errorf("%q should tell %q and %q", why, x.figure, x.place)
			}
			if len(b.Supplies) != 0 || len(b.Reasons) == 0 {
				t.Errorf("the bench still has %d supplies, and says %q", len(b.Supplies), b.Reasons)
			}
		})
	}
	for _, k := range laid(t, s, c).InverterConditions() {
		if !told[k.Name] && k.Name != "to be had" { // as above
			t.Errorf("no case for the condition %q", k.Name)
		}
	}
}

// A cable, a device, a sundry, bus bars and casters that can serve nowhere say on which path, and by how much.
func TestWhyNotOthers(t *testing.T) {
	for _, x := range []struct {
		name, id string
		want     []string
		do       func(s *scenarios.Scenario, c *catalog.Catalog)
	}{
		{"cable", "wire-14", []string{"voltage drop", "%"}, func(s *scenarios.Scenario, _ *catalog.Catalog) {
			for i := range s.Runs {
				s.Runs[i].LengthM = 200
			}
			for i := range s.Circuits {
				s.Circuits[i].LengthM = 200
			}
		}},
		{"device voltage", "fast-150", []string{"device voltage is 10 V"}, func(_ *scenarios.Scenario, c *catalog.Catalog) {
			for i := range c.Devices {
				c.Devices[i].MaxDCV, c.Devices[i].MaxACV = 10, 10
			}
		}},
		{"role", "inlet-30", []string{"nothing asks for a part of role"}, func(s *scenarios.Scenario, _ *catalog.Catalog) { s.Needs = nil }},
		{"shunt on the bus", "shunt-300", []string{"the smallest inverter that serves", "a shunt of", "it has 20 A", "rating_a"}, func(s *scenarios.Scenario, c *catalog.Catalog) {
			s.Needs[0].RatingA = 0
			c.Sundries[0].RatingA = 20
		}},
		{"spaces", "panel-12", []string{"the branch breakers take", "it has 1 (sundries.csv, spaces)"}, func(_ *scenarios.Scenario, c *catalog.Catalog) {
			for i := range c.Sundries {
				if c.Sundries[i].ID == "panel-12" {
					c.Sundries[i].Spaces = 1
				}
			}
		}},
		{"mount", "panel-12", []string{"it takes breakers of mount bayonet", "mount"}, func(_ *scenarios.Scenario, c *catalog.Catalog) {
			for i := range c.Sundries {
				if c.Sundries[i].ID == "panel-12" {
					c.Sundries[i].Mount = "bayonet"
				}
			}
		}},
		{"casters", "caster-125", []string{"set of 4", "6 wheels"}, func(s *scenarios.Scenario, _ *catalog.Catalog) { s.Cart.Casters = 6 }},
		{"bus bars", "bars-150-4", []string{"rating_a"}, func(_ *scenarios.Scenario, c *catalog.Catalog) {
			for i := range c.Busbars {
				c.Busbars[i].RatingA = 20
			}
		}},
	} {
		t.Run(x.name, func(t *testing.T) {
			s, c := serving(t)
			x.do(s, c)
			why := strings.Join(laid(t, s, c).WhyNot(x.id), "; ")
			for _, w := range x.want {
				if !strings.Contains(why, w) {
					t.Errorf("%q should tell %q", why, w)
				}
			}
		})
	}
}

// A device that serves the inlet alone serves: it was once said to suit no run.
func TestWhyNotOnTheInlet(t *testing.T) {
	s, c := serving(t)
	s.Circuits = nil
	for i := range s.Runs {
		if s.Runs[i].Kind == scenarios.RunFeeder {
			s.Runs[i].OwnBreakerA = 50
		}
	}
	for _, d := range c.Devices {
		if d.Type == "breaker" && d.RatingA == s.Recharge.Supply.DeviceA && d.Poles == 2 && d.MaxACV >= 240 {
			if why := laid(t, s, c).WhyNot(d.ID); len(why) != 0 {
				t.Errorf("%s on the inlet of %g A: %q", d.ID, s.Recharge.Supply.DeviceA, why)
			}
			return
		}
	}
	t.Fatal("no breaker of the inlet's rating")
}
