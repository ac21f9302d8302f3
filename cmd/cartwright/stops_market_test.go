//go:build unix

package main

import (
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cartwright/catalog"
	"cartwright/scenarios"
)

// writeMarket puts a scenario into dir, that of a demo with a catalogue of its own beside it: so many batteries,
// inverters and caster sets, which vary those that come with the program, and offers of so many shops. With the same
// numbers it is the same for ever.
func writeMarket(t *testing.T, dir, demo string, batteries, inverters, casters, shops int) {
	t.Helper()
	dice := rand.New(rand.NewPCG(uint64(batteries), uint64(shops)))
	about := func() float64 { return 0.8 + 0.4*dice.Float64() }
	price := func(c catalog.Cents) catalog.Cents { return catalog.CentsFrom(c.Units() * about()) }
	anew := func(p *catalog.Part, i int) {
		p.ID, p.Price, p.PriceLow, p.PriceHigh = fmt.Sprintf("%s-%d", p.ID, i), price(p.Price), 0, 0
	}
	c := catalog.Embedded()
	few := len(c.Batteries)
	for i := few; i < batteries; i++ {
		b := c.Batteries[i%few]
		anew(&b.Part, i)
		k := about()
		b.CapacityWh, b.MassKg, b.ResistanceOhm = b.CapacityWh*k, b.MassKg*k, b.ResistanceOhm/k
		c.Batteries = append(c.Batteries, b)
	}
	few = len(c.Inverters)
	for i := few; i < inverters; i++ {
		v := c.Inverters[i%few]
		anew(&v.Part, i)
		v.IdleW *= about()
		c.Inverters = append(c.Inverters, v)
	}
	few = len(c.Casters)
	for i := few; i < casters; i++ {
		k := c.Casters[i%few]
		anew(&k.Part, i)
		k.RatingKg *= about()
		c.Casters = append(c.Casters, k)
	}
	c.Offers = nil
	for shop := range shops {
		for i := range c.Batteries {
			if b := &c.Batteries[i]; dice.IntN(3) == 0 {
				o := catalog.Offer{PartID: b.ID, Vendor: fmt.Sprintf("shop %d", shop), Price: price(b.Price), MinQty: 1, Shipping: catalog.CentsFrom(float64(10 * (1 + dice.IntN(9))))}
				three := o
				three.MinQty, three.Price = 3, catalog.CentsFrom(0.93*o.Price.Units())
				c.Offers = append(c.Offers, o, three)
			}
		}
	}
	parts := filepath.Join(dir, "parts")
	if err := os.MkdirAll(parts, 0o755); err != nil {
		t.Fatal(err)
	}
	for _, kind := range catalog.Kinds() {
		var text strings.Builder
		if err := c.Write(kind, &text); err != nil {
			t.Fatal(err)
		}
		put(t, filepath.Join(parts, kind.File()), text.String())
	}
	var text strings.Builder
	if err := c.WriteOffers(&text); err != nil {
		t.Fatal(err)
	}
	put(t, filepath.Join(parts, "offers.csv"), text.String())
	story, err := fs.Sub(scenarios.DemoFS(), demo)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.CopyFS(dir, story); err != nil {
		t.Fatal(err)
	}
	yaml := filepath.Join(dir, scenarios.FileName)
	put(t, yaml, "catalog: parts\n"+get(t, yaml))
}

// put writes a file.
func put(t *testing.T, path, text string) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}
