package view

import (
	"testing"
	"time"

	"cartwright/catalog"
	"cartwright/catalog/problem"
	"cartwright/cmd/cartwright/picture/told"
)

// smallCatalogue has a part of each kind, one price too old on the day it is shown.
func smallCatalogue() Parts {
	part := func(id string, price catalog.Cents, kg float64, asOf time.Time) catalog.Part {
		return catalog.Part{ID: id, Name: "Name of " + id, Price: price, MassKg: kg, AsOf: asOf}
	}
	fresh, old := time.Date(2026, 7, 1, 0, 0, 0, 0, time.UTC), time.Date(2025, 7, 1, 0, 0, 0, 0, time.UTC)
	return Parts{
		Where: "my-parts",
		AsOf:  time.Date(2026, 8, 1, 0, 0, 0, 0, time.UTC),
		Catalog: &catalog.Catalog{
			Batteries: []catalog.Battery{{Part: part("slate", 90000, 45, old), Chemistry: "LFP", NominalV: 51.2,
				CapacityWh: 5120, UsableFraction: 0.9, MaxDischargeA: 100}},
			Inverters: []catalog.Inverter{{Part: part("gust", 79000, 24, fresh), ACV: "120/240", DCMinV: 42, DCMaxV: 60,
				ContinuousW: 5000, SurgeW: 10000, Efficiency: 0.925, IdleW: 50}},
			Cables: []catalog.Cable{{Part: part("cu-4-0", 0, 0, fresh), CentsPerM: 1412.5, KgPerM: 1.186, Size: "4/0 AWG",
				Material: "copper", InsulationC: 105, EndPrice: 597}},
			Devices: []catalog.Device{{Part: part("fuse", 5675, 0.34, time.Time{}), Type: "fuse", Class: "T", RatingA: 175,
				Poles: 1, MaxDCV: 125, InterruptingDCA: 20000, TerminalC: 75}},
			Busbars:  []catalog.Busbar{{Part: part("bars", 2400, 0.45, fresh), RatingA: 150, Studs: 4}},
			Casters:  []catalog.Casters{{Part: part("trundle", 8600, 6.8, fresh), SetOf: 4, RatingKg: 160, Brakes: 2, Swivel: 2, WheelM: 0.125}},
			Solar:    []catalog.Solar{{Part: part("sun", 13200, 20.5, fresh), Watts: 400, VocV: 37.2, VmpV: 31.2, IscA: 13.6, ImpA: 12.8}},
			Sundries: []catalog.Sundry{{Part: part("shunt", 3900, 0.35, fresh), Role: "shunt", RatingA: 300}},
			Conduits: []catalog.Conduit{{Part: part("hose-1", 0, 0, fresh), CentsPerM: 690, KgPerM: 0.45, TradeSize: "1", Type: "flexible",
				InsideMM2: 563, EndPrice: 560}},
			Sections: []catalog.Section{{Part: part("tube-40", 0, 0, old), CentsPerM: 660, KgPerM: 2.39, Shape: catalog.SquareTube,
				WidthM: 0.04, HeightM: 0.04, WallM: 0.002, YieldPa: 235e6}, {Part: part("scrap", 0, 0, fresh), KgPerM: 1.57,
				Shape: catalog.Flat, WidthM: 0.005, HeightM: 0.04, YieldPa: 235e6}},
			Own: []catalog.OwnColumn{{Name: "shelf mark", Pos: problem.Pos{File: "my-parts/cables.csv", Line: 1, Column: 9}}},
			Offers: []catalog.Offer{
				{PartID: "slate", Vendor: "yard", Price: 87500, MinQty: 2, Shipping: 9500, AsOf: old},
				{PartID: "cu-4-0", Vendor: "yard", CentsPerM: 1290, MinQty: 10, AsOf: fresh},
			},
		},
	}
}

func TestPartsInEveryFormat(t *testing.T) {
	one := smallCatalogue()
	one.Kind = catalog.KindCable
	american := smallCatalogue()
	american.Units = told.US
	for _, c := range []struct {
		file   string
		answer Parts
		format Format
	}{
		{"parts.txt", smallCatalogue(), Table},
		{"parts.md", smallCatalogue(), Markdown},
		{"parts.csv", smallCatalogue(), CSV},
		{"parts.json", smallCatalogue(), JSON},
		{"parts-cable.txt", one, Table},
		{"parts-cable.csv", one, CSV},
		{"parts-us.txt", american, Table},
	} {
		t.Run(c.file, func(t *testing.T) { shownAs(t, c.file, c.answer, c.format) })
	}
}

// The catalogue that comes with the program fits the screen.
func TestEmbeddedPartsFit(t *testing.T) {
	got, err := Render(Parts{Where: "here", Catalog: catalog.Embedded(), AsOf: time.Date(2026, 8, 1, 0, 0, 0, 0, time.UTC)}, Table, Width)
	if err != nil {
		t.Fatal(err)
	}
	fits(t, string(got))
}
