package picture

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"cartwright/catalog"
	"cartwright/cmd/cartwright/picture/told"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// names are what people may write, and what would break a drawing that trusted them.
func names() *rapid.Generator[string] {
	return rapid.OneOf(
		rapid.SampledFrom([]string{
			`</text><script>alert(1)</script>`, `"><svg onload=alert(1)>`, `&lt;&amp;`, "]]>", "'; DROP", "", " ",
			"a name that is longer than any column of the drawing and goes on and on",
			strings.Repeat("W", 90), "電池モジュール", "бочка", "نص", "zero\u200bwidth", "line\nbreak", "tab\tstop", "\x00\x1b[31m",
		}),
		rapid.StringN(0, 40, 80),
	)
}

// drawSubject returns a cart of any build, wired in any way, with any names: not one that could be planned,
// but all that could come of one.
func drawSubject(t *rapid.T) (*Subject, []plan.Plan) {
	length := func(low, high float64, what string) float64 { return rapid.Float64Range(low, high).Draw(t, what) }
	name := func(what string) string { return names().Draw(t, what) }
	s := &scenarios.Scenario{Name: name("scenario"), Currency: "USD", Rules: rapid.SampledFrom([]scenarios.Rules{scenarios.NEC, scenarios.IEC}).Draw(t, "rules")}
	s.Bus.NominalV, s.CasterFactor = 48, 1.25
	s.Cart = scenarios.Cart{
		Casters: rapid.SampledFrom([]int{3, 4, 6}).Draw(t, "casters"), WheelbaseM: length(0.2, 2, "wheelbase"), TrackM: length(0.2, 1.2, "track"),
		Frame:     scenarios.Mass{MassKg: 30, HeightM: length(0.1, 1, "frame")},
		Backboard: scenarios.Backboard{ElevationM: length(0.1, 1.5, "board"), OffsetM: length(-0.5, 0.5, "offset")},
	}
	for i := range rapid.IntRange(0, 4).Draw(t, "items") {
		s.Cart.DeckItems = append(s.Cart.DeckItems, scenarios.Mass{
			Name: name(fmt.Sprint("item", i)), MassKg: 5, HeightM: length(0, 1.5, "height"), OffsetM: length(-0.4, 0.4, "aside")})
	}
	c := &catalog.Catalog{}
	p := plan.Plan{Rank: 1, MassKg: 200, UsableKWh: 5, AutonomyH: length(0.1, 60, "autonomy"), CostPerUsableKWh: 100}
	for i := range rapid.IntRange(1, 4).Draw(t, "kinds") {
		b := catalog.Battery{LengthM: length(0.05, 0.8, "l"), WidthM: length(0.05, 0.8, "w"), HeightM: length(0.05, 0.6, "h")}
		b.ID, b.Name, b.MassKg = fmt.Sprint(name("battery"), i), name("battery's name"), 20
		c.Batteries = append(c.Batteries, b)
		p.Core.Batteries = append(p.Core.Batteries, plan.CoreBattery{Part: b.ID, Strings: 2, Series: rapid.IntRange(1, 4).Draw(t, "series")})
	}
	for i := range rapid.IntRange(1, 4).Draw(t, "shelves") {
		sh := scenarios.Shelf{Name: fmt.Sprint(name("shelf"), i), ElevationM: length(0.05, 1.2, "elevation"), LengthM: length(0.2, 2, "long"),
			DepthM: length(0.2, 1, "deep"), ClearHeightM: length(0.1, 0.8, "clear"), GapM: 0.01}
		s.Cart.Shelves = append(s.Cart.Shelves, sh)
		on := plan.Shelf{Shelf: sh.Name}
		for k := range c.Batteries {
			more := append(on.Batteries, plan.ShelfModules{Part: c.Batteries[k].ID, Modules: rapid.IntRange(0, 9).Draw(t, "modules")})
			if fits(c, &sh, more) {
				on.Batteries = more
			}
		}
		p.Shelves = append(p.Shelves, on)
	}
	inverter := catalog.Inverter{Efficiency: 0.9}
	inverter.ID, inverter.Name = name("inverter"), name("inverter's name")
	c.Inverters = append(c.Inverters, inverter)
	p.Core.Inverter = plan.CoreInverter{Part: inverter.ID, Units: rapid.IntRange(1, 3).Draw(t, "units")}
	p.Core.Solar = append(p.Core.Solar, plan.CoreSolar{Part: name("module"), Series: 2, Parallel: 2, Inputs: 1})
	p.Casters = plan.Casters{Part: name("set"), Count: s.Cart.Casters, LoadEachKg: 80, RatingEachKg: 100}
	p.Balance = plan.Balance{CGHeightMM: length(100, 1200, "cg"), TiltDeg: 20, RequiredDeg: 10}
	p.Limits = []plan.Limit{{Name: plan.LimitTiltSideways, Value: length(-10, 90, "side"), Limit: 10}, {Name: plan.LimitTiltLength, Value: 40, Limit: 10}}
	for i := range rapid.IntRange(0, 14).Draw(t, "runs") {
		kind := rapid.SampledFrom([]string{"string", "main", "feeder", "branch", "dc", "inlet", "solar", "bond"}).Draw(t, "kind")
		d := catalog.Device{Type: rapid.SampledFrom([]string{"fuse", "breaker"}).Draw(t, "type"), Class: name("class")}
		d.ID = fmt.Sprint(name("device"), i)
		c.Devices = append(c.Devices, d)
		r := plan.Run{Run: kind, Name: name("circuit"), Battery: c.Batteries[0].ID, Cable: name("cable"), Device: d.ID, Count: rapid.IntRange(1, 5).Draw(t, "count"),
			Sets: rapid.IntRange(1, 2).Draw(t, "sets"), Conductors: rapid.IntRange(1, 3).Draw(t, "conductors"), LengthM: length(0.1, 30, "run"),
			DesignA: 10, DeviceA: 10, DropPct: 1, FaultA: 12345, InterruptingA: 20000, Devices: rapid.IntRange(0, 2).Draw(t, "devices"), Conduit: name("conduit")}
		if rapid.Bool().Draw(t, "no device") {
			r.Device = ""
		}
		if kind != "string" && kind != "main" {
			r.Ground = name("ground")
		}
		s.Circuits = append(s.Circuits, scenarios.Circuit{Name: r.Name, Volts: 120})
		p.Circuits = append(p.Circuits, plan.Circuit{Circuit: r.Name, Leg: "A", Loads: []string{name("load"), name("other load")}})
		p.Runs = append(p.Runs, r)
	}
	for _, role := range []string{"shunt", "disconnect", "load-centre"} {
		x := catalog.Sundry{Role: role}
		x.ID, x.Name = role+name("sundry"), name("sundry's name")
		c.Sundries = append(c.Sundries, x)
		p.Bill = append(p.Bill, plan.Line{Part: x.ID, Kind: "sundry", Quantity: 1})
	}
	s.Loads = []scenarios.Load{{Name: "lamp", Watts: 100, Count: 1, AllDay: true, Duty: 1, Start: 1, PowerFactor: 1, Leg: scenarios.LegAuto, DC: true}}
	units := rapid.SampledFrom([]told.Units{told.US, told.Metric}).Draw(t, "units")
	return &Subject{Scenario: s, Catalog: c, Plan: &p, Units: units}, []plan.Plan{p}
}

// fits reports whether modules stand on a shelf without reaching beyond it.
func fits(c *catalog.Catalog, sh *scenarios.Shelf, modules []plan.ShelfModules) bool {
	q := &Subject{Catalog: c, Plan: &plan.Plan{Shelves: []plan.Shelf{{Shelf: sh.Name, Batteries: modules}}}}
	for _, m := range q.standing(sh) {
		if m.AlongM+m.LengthM > sh.LengthM || m.AcrossM < 0 || m.AcrossM+m.DepthM > sh.DepthM {
			return false
		}
	}
	return true
}

func TestTextsOfAnyCartDoNotOverlap(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		q, plans := drawSubject(rt)
		for what, s := range drawings(t, q, plans) {
			legible(rt, what, s)
			if what == "wiring" || strings.HasPrefix(what, "sheet: ") {
				unstruck(rt, what, s)
			}
			well(rt, what, s.SVG())
		}
	})
}

// well fails where SVG is not well-formed XML, or has an element or attribute that nobody drew.
func well(t *rapid.T, what string, text []byte) {
	d := xml.NewDecoder(strings.NewReader(string(text)))
	drawn := map[string]bool{"svg": true, "title": true, "style": true, "rect": true, "polygon": true, "polyline": true, "circle": true, "text": true}
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		if err != nil {
			t.Fatalf("%s: %v", what, err)
		}
		start, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		if !drawn[start.Name.Local] {
			t.Fatalf("%s: an element %s", what, start.Name.Local)
		}
		for _, a := range start.Attr {
			if strings.HasPrefix(a.Name.Local, "on") || a.Name.Local == "href" {
				t.Fatalf("%s: an attribute %s", what, a.Name.Local)
			}
		}
	}
}
