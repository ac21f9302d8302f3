package catalog_test

import (
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"cartwright/catalog"
	"cartwright/catalog/problem"
)

func TestDefaults(t *testing.T) {
	c := mustRead(t, with(nil))
	b, i, w, d := c.Batteries[0], c.Inverters[0], c.Cables[0], c.Devices[0]
	for _, test := range []struct {
		name      string
		got, want any
	}{
		{"round_trip", b.RoundTrip, 1.0},
		{"peak_discharge_a is max_discharge_a", b.PeakDischargeA, 100.0},
		{"short_circuit_a is max_v / resistance", b.ShortCircuitA, 58.4 / 0.020},
		{"cycle_life", b.CycleLife, 0.0},
		{"max_parallel", b.MaxParallel, 0},
		{"max_series", b.MaxSeries, 1},
		{"parallel_group", b.Group, ""},
		{"leg_w is half", i.LegW, 3000.0},
		{"charger_a", i.ChargerA, 0.0},
		{"calendar_years", b.CalendarYears, 0.0},
		{"max_fuse_a", b.MaxFuseA, 0.0},
		{"own_device_a", b.OwnDeviceA, 0.0},
		{"own_interrupting_a", b.OwnInterruptingA, 0.0},
		{"protocols", len(b.Protocols), 0},
		{"leg_surge_w is half", i.LegSurgeW, 6000.0},
		{"charger_ac_v is ac_v", i.ChargerACV, "120/240"},
		{"strand", w.Fine, false},
		{"outer_mm", w.OuterM, 0.0},
		{"polarised", d.Polarised, catalog.Unknown},
		{"mount", d.Mount, ""},
		{"listed", d.Listed, catalog.Unknown},
		{"power_temp_pct_per_c", c.Solar[0].PowerTempPctPerC, -0.35},
		{"noct_c", c.Solar[0].NOCTC, 45.0},
		{"solar max_fuse_a", c.Solar[0].MaxFuseA, 0.0},
		{"max_system_v", c.Solar[0].MaxSystemV, 600.0},
		{"size of a module", c.Solar[0].LengthM + c.Solar[0].WidthM, 0.0},
		{"sundry mount", c.Sundries[0].Mount, ""},
		{"sundry volume", c.Sundries[0].VolumeM3, 0.0},
		{"conduit end_price", c.Conduits[0].EndPrice, catalog.Cents(0)},
		{"section price", c.Sections[0].CentsPerM, 0.0},
		{"yield_mpa", c.Sections[0].YieldPa, 235e6},
		{"height of a tube", c.Sections[0].HeightM, 0.04},
		{"mppt_inputs", i.MPPTInputs, 0},
		{"max_units", i.MaxUnits, 1},
		{"end_price", w.EndPrice, catalog.Cents(0)},
		{"poles", d.Poles, 1},
		{"terminal_c", d.TerminalC, 75.0},
		{"max_dc_v", d.MaxDCV, 0.0},
		{"set_of", c.Casters[0].SetOf, 4},
		{"brakes", c.Casters[0].Brakes, 0},
		{"sundry rating_a", c.Sundries[0].RatingA, 0.0},
		{"sundry spaces", c.Sundries[0].Spaces, 0},
		{"as_of", b.AsOf.IsZero(), true},
		{"min_qty", c.Offers[0].MinQty, 1.0},
		{"shipping", c.Offers[0].Shipping, catalog.Cents(0)},
	} {
		t.Run(test.name, func(t *testing.T) {
			if test.got != test.want {
				t.Errorf("got %v, want %v", test.got, test.want)
			}
		})
	}
}

// A solar input is there where solar watts are; the whole power is on the one leg of a two-wire inverter.
func TestDefaultsThatHangOnOthers(t *testing.T) {
	c := mustRead(t, with(map[string]string{"inverters.csv": `id,name,price,mass_kg,dc_min_v,dc_max_v,ac_v,continuous_w,surge_w,efficiency,idle_w,solar_max_w,leg_w
sunny,Inverter,900,12,42,62,120/240,6000,12000,0.93,40,4000,
one,Inverter,900,12,42,62,230,6000,12000,0.93,40,0,
uneven,Inverter,900,12,42,62,120/240,6000,12000,0.93,40,,4000
`}))
	for i, want := range []struct {
		inputs int
		leg    float64
	}{{1, 3000}, {0, 6000}, {0, 4000}} {
		if got := c.Inverters[i]; got.MPPTInputs != want.inputs || got.LegW != want.leg {
			t.Errorf("%s: %d inputs, %v W a leg; want %+v", got.ID, got.MPPTInputs, got.LegW, want)
		}
	}
}

// Files are named in messages as the caller shows the folder.
func TestDisplay(t *testing.T) {
	files := with(map[string]string{"busbars.csv": "\n"})
	for display, want := range map[string]string{"": "busbars.csv: ", "parts/": "parts/busbars.csv: ", "my parts": "my parts/busbars.csv: "} {
		if _, err := catalog.Read(files, "cart", display); err == nil || !strings.HasPrefix(err.Error(), want) {
			t.Errorf("shown as %q: %v", display, err)
		}
	}
}

func TestUnitsBecomeSI(t *testing.T) {
	c := mustRead(t, with(map[string]string{
		"casters.csv": "id,name,price,mass_kg,rating_kg,wheel_mm,brakes,swivel,vendor,as_of,notes\n" +
			"wheels,Wheels,80.51,6,160,125,no,yes,a shop,2026-03-14,\"rolls,\n well\"\n",
	}))
	b, w := c.Batteries[0], c.Cables[0]
	if b.CapacityWh != 5120 || b.ResistanceOhm != 0.020 || b.LengthM != 0.442 || b.Price != 100000 {
		t.Errorf("battery: %+v", b)
	}
	if w.CentsPerM != 870 || w.KgPerM != 0.35 || w.Size != "2 AWG" || w.Price != 0 || w.MassKg != 0 {
		t.Errorf("cable: %+v", w)
	}
	want := catalog.Casters{
		Part: catalog.Part{ID: "wheels", Name: "Wheels", Price: 8051, MassKg: 6, Vendor: "a shop",
			AsOf: time.Date(2026, 3, 14, 0, 0, 0, 0, time.UTC), Notes: "rolls, well",
			Pos: problem.Pos{File: "cart/casters.csv", Line: 2, Column: 1}},
		SetOf: 4, RatingKg: 160, Brakes: 0, Swivel: 4, WheelM: 0.125,
	}
	if got := c.Casters[0]; got != want {
		t.Errorf("casters: got %+v\nwant %+v", got, want)
	}
	if o := c.Offers; o[0].Price != 95000 || o[0].CentsPerM != 0 || o[1].Price != 0 || o[1].CentsPerM != 800 {
		t.Errorf("offers: %+v", o)
	}
}

// The same file, as one editor or another may save it.
func TestSavedOtherwise(t *testing.T) {
	plain := smallest["batteries.csv"]
	want := unplaced(mustRead(t, with(nil)))
	for name, data := range map[string]string{
		"byte order mark":       "\ufeff" + plain,
		"CRLF":                  strings.ReplaceAll(plain, "\n", "\r\n"),
		"CR":                    strings.ReplaceAll(plain, "\n", "\r"),
		"no newline at end":     strings.TrimSuffix(plain, "\n"),
		"comments":              "# mine, not theirs\n" + plain + "# the end",
		"quoted comment":        "\"# mine, not \"\"theirs\"\"\",,\n" + plain,
		"empty lines":           "\n\n" + strings.ReplaceAll(plain, "\n", "\n\n"),
		"rows of empty cells":   strings.ReplaceAll(plain, "\n", "\n,,,\n"),
		"spaces":                strings.ReplaceAll(plain, ",", " ,  "),
		"quotes":                `"` + strings.NewReplacer(",", `","`, "\n", "\"\n\"").Replace(strings.TrimSuffix(plain, "\n")) + `"`,
		"empty columns":         strings.ReplaceAll(plain, "\n", ",,\n"),
		"a separator stated":    "sep=,\r\n" + plain,
		"semicolons stated":     "\"sep=;\"\n" + strings.ReplaceAll(plain, ",", ";"),
		"a column of one's own": strings.Replace(strings.ReplaceAll(plain, "\n", ",on the left\n"), "on the left", "shelf of mine", 1),
	} {
		t.Run(name, func(t *testing.T) {
			if got := unplaced(mustRead(t, with(map[string]string{"batteries.csv": data}))); !reflect.DeepEqual(got, want) {
				t.Errorf("got %+v\nwant %+v", got.Batteries, want.Batteries)
			}
		})
	}
}

func TestColumnOrderIsFree(t *testing.T) {
	c := mustRead(t, with(map[string]string{"busbars.csv": "studs,mass_kg,rating_a,id,price,name\n6,1,250,bars,40,Bars\n"}))
	want := mustRead(t, with(nil)).Busbars[0]
	want.Pos.Column = 9 // where the id stands
	if got := c.Busbars[0]; got != want {
		t.Errorf("got %+v, want %+v", got, want)
	}
}

func TestMissingFiles(t *testing.T) {
	t.Run("kinds a cart can do without", func(t *testing.T) {
		c := mustRead(t, with(map[string]string{"cables.csv": "", "devices.csv": "", "solar.csv": "", "sundries.csv": "",
			"conduits.csv": "", "sections.csv": "", "offers.csv": ""}))
		if n := len(c.All()); n != 4 {
			t.Errorf("%d parts, want 4", n)
		}
	})
	t.Run("all but the offers", func(t *testing.T) {
		got := mistakes(t, fstest.MapFS{"cart/offers.csv": {Data: []byte(smallest["offers.csv"])}})
		for i, file := range []string{"batteries", "busbars", "casters", "inverters", "offers", "offers"} {
			if !strings.HasPrefix(got[i], "cart/"+file+".csv") {
				t.Errorf("mistake %d is not of %s: %s", i, file, got[i])
			}
		}
	})
	t.Run("a file for a folder", func(t *testing.T) {
		_, err := catalog.Read(with(nil), "cart/offers.csv", "cart/offers.csv")
		if want := "cart/offers.csv: the catalogue is a file, not a folder; name a folder with batteries.csv"; err == nil || !strings.HasPrefix(err.Error(), want) {
			t.Errorf("got %v", err)
		}
	})
	t.Run("none at all", func(t *testing.T) {
		got := mistakes(t, fstest.MapFS{"cart/readme.txt": {}})
		want := []string{"cart: there is no catalogue in this folder; name a folder with batteries.csv, inverters.csv, cables.csv, " +
			"devices.csv, busbars.csv, casters.csv and, where wanted, solar.csv, sundries.csv, conduits.csv, sections.csv and offers.csv"}
		if !slices.Equal(got, want) {
			t.Errorf("got %q", got)
		}
	})
}

func TestReadDir(t *testing.T) {
	dir := t.TempDir()
	for name, data := range smallest {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(data), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	c, err := catalog.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	if got, want := c.Batteries[0].Pos, (problem.Pos{File: dir + "/batteries.csv", Line: 2, Column: 1}); got != want {
		t.Errorf("the pack stands at %v, want %v", got, want)
	}
	for name, want := range map[string]string{
		filepath.Join(dir, "none"):          ": the catalogue's folder cannot be read: no such file or directory; ",
		filepath.Join(dir, "batteries.csv"): ": the catalogue's folder cannot be read: not a directory; ",
		"":                                  "the catalogue's folder cannot be read: ",
	} {
		_, err := catalog.ReadDir(name)
		if err == nil || !strings.HasPrefix(err.Error(), name+want) || !strings.Contains(err.Error(), "batteries.csv") {
			t.Errorf("%q: got %v", name, err)
		}
	}
}

// Two readings of the same files give the same bytes of complaint.
func TestErrorsAreSteady(t *testing.T) {
	files := with(map[string]string{"batteries.csv": "id,nam,price\nx,y,z\n", "devices.csv": "kind\n1\n", "offers.csv": "part,vendor,price\nq,r,s\n"})
	first := mistakes(t, files)
	for range 20 {
		if again := mistakes(t, files); !slices.Equal(first, again) {
			t.Fatalf("got %q, then %q", first, again)
		}
	}
}
