package bench_test

import (
	"strings"
	"testing"

	"cartwright/catalog"
	"cartwright/scenarios"
)

// sunny returns a problem with one module, one inverter and room for eight: sun-400 goes with inv-230-3-48.
func sunny(t *testing.T) (*scenarios.Scenario, *catalog.Catalog) {
	t.Helper()
	s, err := scenarios.Demo("goat-dairy")
	if err != nil {
		t.Fatal(err)
	}
	c := catalog.Embedded().Clone()
	for _, m := range c.Solar {
		if m.ID == "sun-400" {
			c.Solar = []catalog.Solar{m}
		}
	}
	for _, i := range c.Inverters {
		if i.ID == "inv-230-3-48" {
			c.Inverters = []catalog.Inverter{i}
		}
	}
	return s, c
}

// Each condition of an array keeps a module off by itself and tells the figure and its place in the files; then no
// supply has an array.
func TestArrayConditions(t *testing.T) {
	s, c := sunny(t)
	if why := laid(t, s, c).WhyNot("sun-400"); len(why) != 0 {
		t.Fatalf("the module should serve: %q", why)
	}
	for place, do := range map[string]func(s *scenarios.Scenario, c *catalog.Catalog){
		"sun)":              func(s *scenarios.Scenario, _ *catalog.Catalog) { s.Sun, s.Limits.Served = nil, 0 },
		"states its inputs": func(_ *scenarios.Scenario, c *catalog.Catalog) { c.Inverters[0].MPPTInputs = 0 },
		"sun.room": func(s *scenarios.Scenario, _ *catalog.Catalog) {
			s.Sun.Most, s.Sun.Room = 0, &scenarios.Room{LengthM: 1, WidthM: 1}
		},
		"length_mm": func(s *scenarios.Scenario, c *catalog.Catalog) {
			s.Sun.Most, s.Sun.Room = 0, &scenarios.Room{LengthM: 9, WidthM: 9}
			c.Solar[0].WidthM = 0
		},
		"mppt_max_a":      func(_ *scenarios.Scenario, c *catalog.Catalog) { c.Inverters[0].MPPTMaxA = 12.7 },
		"solar_max_voc_v": func(_ *scenarios.Scenario, c *catalog.Catalog) { c.Inverters[0].SolarMaxVocV = 37 },
		"max_system_v":    func(_ *scenarios.Scenario, c *catalog.Catalog) { c.Solar[0].MaxSystemV = 37 },
		"mppt_max_v": func(_ *scenarios.Scenario, c *catalog.Catalog) {
			c.Inverters[0].MPPTMaxV, c.Inverters[0].MPPTMinV = 31, 20
		},
		"mppt_min_v": func(_ *scenarios.Scenario, c *catalog.Catalog) { c.Inverters[0].MPPTMinV = 8 * 31.2 },
		"2 poles": func(s *scenarios.Scenario, c *catalog.Catalog) {
			for i := range c.Devices {
				c.Devices[i].Poles = 1
			}
		},
	} {
		t.Run(place, func(t *testing.T) {
			s, c := sunny(t)
			do(s, c)
			b := laid(t, s, c)
			why := strings.Join(b.WhyNot("sun-400"), "; ")
			if !strings.Contains(why, place) {
				t.Errorf("told: %q, without %q", why, place)
			}
			for _, v := range b.Supplies {
				if v.Array != nil {
					t.Errorf("a supply has an array all the same: %+v", *v.Array)
				}
			}
		})
	}
}

// Every array that a supply has meets every condition, and there are some with several modules in series and some on
// both inputs.
func TestArraysMeetConditions(t *testing.T) {
	s, c := sunny(t)
	b := laid(t, s, c)
	series, inputs := 0, 0
	for _, v := range b.Supplies {
		if v.Array != nil {
			series, inputs = max(series, v.Array.Series), max(inputs, v.Array.Inputs)
			if n := v.Array.Modules(); n > s.Sun.Most {
				t.Errorf("%d modules, at most %d", n, s.Sun.Most)
			}
		}
	}
	if series < 2 || inputs < 1 {
		t.Errorf("%d in series, %d inputs at the most", series, inputs)
	}
}
