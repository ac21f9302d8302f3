package catalog_test

import (
	"io/fs"
	"maps"
	"strings"
	"testing"
	"testing/fstest"

	"cartwright/catalog"
	"cartwright/catalog/problem"
)

// smallest is a catalogue of one part of each kind, and one offer of each sort.
var smallest = map[string]string{
	"batteries.csv": `id,name,price,mass_kg,chemistry,nominal_v,min_v,max_v,capacity_kwh,usable_fraction,max_discharge_a,max_charge_a,resistance_mohm,length_mm,width_mm,height_mm
pack,Pack,1000,45,LFP,51.2,44.8,58.4,5.12,0.9,100,50,20,442,420,133
`,
	"inverters.csv": `id,name,price,mass_kg,dc_min_v,dc_max_v,ac_v,continuous_w,surge_w,efficiency,idle_w
inv,Inverter,900,12,42,62,120/240,6000,12000,0.93,40
`,
	"cables.csv": `id,name,price_per_m,mass_kg_per_m,size,material,insulation_c
wire,Wire,8.70,0.35,2 AWG,copper,90
`,
	"devices.csv": `id,name,price,mass_kg,type,rating_a
fuse,Fuse,45,0.3,fuse,125
`,
	"busbars.csv": `id,name,price,mass_kg,rating_a,studs
bars,Bars,40,1,250,6
`,
	"casters.csv": `id,name,price,mass_kg,rating_kg
wheels,Wheels,80,6,160
`,
	"solar.csv": `id,name,price,mass_kg,watts,voc_v,vmp_v,isc_a,imp_a,voc_temp_pct_per_c
sun,Module,120,20,400,37.2,31.2,13.6,12.8,-0.27
`,
	"sundries.csv": `id,name,price,mass_kg,role
shunt,Shunt,39,0.4,shunt
`,
	"conduits.csv": `id,name,price_per_m,mass_kg_per_m,trade_size,type,inside_mm2
pipe,Pipe,4,0.7,3/4,EMT,343
`,
	"sections.csv": `id,name,shape,width_mm,wall_mm
tube,Tube,square-tube,40,3
`,
	"offers.csv": `part,vendor,price
pack,shop,950
wire,shop,8
`,
}

// with returns the smallest catalogue's files with some of them replaced; "" takes a file away.
func with(changed map[string]string) fstest.MapFS {
	all := maps.Clone(smallest)
	maps.Copy(all, changed)
	files := fstest.MapFS{}
	for name, data := range all {
		if data != "" {
			files["cart/"+name] = &fstest.MapFile{Data: []byte(data), Mode: 0o644}
		}
	}
	return files
}

// mustRead reads a catalogue that is right.
func mustRead(t testing.TB, files fstest.MapFS) *catalog.Catalog {
	t.Helper()
	c, err := catalog.Read(files, "cart", "cart")
	if err != nil {
		t.Fatalf("a right catalogue is refused:\n%v", err)
	}
	return c
}

// mistakes returns the lines of the error of a catalogue that is wrong.
func mistakes(t testing.TB, files fstest.MapFS) []string {
	t.Helper()
	c, err := catalog.Read(files, "cart", "cart")
	if err == nil {
		t.Fatal("a wrong catalogue is accepted")
	}
	if c != nil {
		t.Error("a wrong catalogue is returned")
	}
	if _, ok := err.(*problem.Error); !ok {
		t.Errorf("the error is a %T, want a *problem.Error", err)
	}
	return strings.Split(err.Error(), "\n")
}

// unplaced returns a copy of a catalogue that has forgotten where its rows stood.
func unplaced(c *catalog.Catalog) *catalog.Catalog {
	d := &catalog.Catalog{
		Batteries: append([]catalog.Battery(nil), c.Batteries...),
		Inverters: append([]catalog.Inverter(nil), c.Inverters...),
		Cables:    append([]catalog.Cable(nil), c.Cables...),
		Devices:   append([]catalog.Device(nil), c.Devices...),
		Busbars:   append([]catalog.Busbar(nil), c.Busbars...),
		Casters:   append([]catalog.Casters(nil), c.Casters...),
		Solar:     append([]catalog.Solar(nil), c.Solar...),
		Sundries:  append([]catalog.Sundry(nil), c.Sundries...),
		Conduits:  append([]catalog.Conduit(nil), c.Conduits...),
		Sections:  append([]catalog.Section(nil), c.Sections...),
		Offers:    append([]catalog.Offer(nil), c.Offers...),
	}
	for _, e := range d.All() {
		e.Pos = problem.Pos{}
	}
	for i := range d.Offers {
		d.Offers[i].Pos = problem.Pos{}
	}
	return d
}

// written returns a catalogue's files as Write and WriteOffers write them.
func written(t interface{ Fatal(...any) }, c *catalog.Catalog) fstest.MapFS {
	files := fstest.MapFS{}
	for _, k := range catalog.Kinds() {
		var b strings.Builder
		if err := c.Write(k, &b); err != nil {
			t.Fatal(err)
		}
		files["cart/"+k.File()] = &fstest.MapFile{Data: []byte(b.String()), Mode: 0o644}
	}
	var b strings.Builder
	if err := c.WriteOffers(&b); err != nil {
		t.Fatal(err)
	}
	files["cart/"+catalog.OffersFile] = &fstest.MapFile{Data: []byte(b.String()), Mode: 0o644}
	return files
}

// readFrom reads the catalogue of any file system.
func readFrom(fsys fs.FS) (*catalog.Catalog, error) { return catalog.Read(fsys, "cart", "cart") }
