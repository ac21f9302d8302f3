package catalog_test

import (
	"slices"
	"strings"
	"testing"

	"cartwright/catalog"
)

// What is possible but not plausible is warned of where it stands, and read all the same.
func TestDoubts(t *testing.T) {
	const head = "id,name,price,mass_kg,chemistry,nominal_v,min_v,max_v,capacity_kwh,usable_fraction,max_discharge_a,max_charge_a," +
		"resistance_mohm,length_mm,width_mm,height_mm\n"
	row := func(id, price, mass, kWh, height string) string {
		return strings.Join([]string{id, "Pack", price, mass, "LFP", "51.2", "44.8", "58.4", kWh, "0.9", "100", "50", "20", "442", "420", height}, ",") + "\n"
	}
	sound := row("b", "1000", "45", "5.12", "133") + row("c", "1100", "45", "5.12", "133")
	for _, test := range []struct {
		name, row string
		want      []string
	}{
		{"sound", row("a", "900", "44", "5.12", "133"), nil},
		{"Wh for kWh", row("a", "900", "44", "5120", "133"), []string{
			"2:34: 5120 kWh at 51.2 V are 100000 Ah; check that capacity_kwh is in kWh, not in Wh or Ah"}},
		{"MWh for kWh", row("a", "900", "44", "0.00512", "133"), []string{
			"2:34: 0.00512 kWh at 51.2 V are 0.1 Ah; check that capacity_kwh is in kWh, not in Wh or Ah"}},
		{"grams", row("a", "900", "4.4", "5.12", "133"), []string{
			"2:12: 5.12 kWh in 4.4 kg are 1164 Wh/kg; check mass and capacity; batteries have 20 to 400 Wh/kg"}},
		{"heavy", row("a", "900", "440", "5.12", "133"), []string{
			"2:12: 5.12 kWh in 440 kg are 11.6 Wh/kg; check mass and capacity; batteries have 20 to 400 Wh/kg"}},
		{"flat", row("a", "900", "44", "5.12", "13.3"), []string{
			"2:53: 5.12 kWh in 2.47 litres are 2074 Wh/l; check length, width, height and capacity; batteries have 20 to 900 Wh/l"}},
		{"cheap", row("a", "90", "44", "5.12", "133"), []string{
			"2:8: 17.58 for a kWh, while the median of the batteries is 195.31; check price and capacity"}},
		{"dear", row("a", "12000", "44", "5.12", "133"), []string{
			"2:8: 2343.75 for a kWh, while the median of the batteries is 214.84; check price and capacity"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			c := mustRead(t, with(map[string]string{"batteries.csv": head + test.row + sound, "offers.csv": ""}))
			var got []string
			for _, w := range c.Warnings {
				got = append(got, strings.TrimPrefix(w.Error(), "cart/batteries.csv:"))
			}
			if !slices.Equal(got, test.want) {
				t.Errorf("got  %q\nwant %q", got, test.want)
			}
			if len(c.Batteries) != 3 {
				t.Errorf("%d batteries", len(c.Batteries))
			}
		})
	}
}

// Columns of a person's own are read past, and told.
func TestOwnColumns(t *testing.T) {
	c := mustRead(t, with(map[string]string{
		"busbars.csv":  "id,name,price,mass_kg,rating_a,studs,telephone,seen where\nbars,Bars,40,1,250,6,555,shop\n",
		"sundries.csv": "id,shelf of mine,name,price,mass_kg,role\nshunt,3,Shunt,39,0.4,shunt\n",
	}))
	var got []string
	for _, o := range c.Own {
		got = append(got, o.Pos.String()+" "+o.Name)
	}
	want := []string{"cart/busbars.csv:1:38 telephone", "cart/busbars.csv:1:48 seen where", "cart/sundries.csv:1:4 shelf of mine"}
	if !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
	if got := c.Busbars[0].Studs; got != 6 {
		t.Errorf("%d studs", got)
	}
}

// Both headers of a pair stand side by side, one filled a row; days, money and words as spreadsheets and people write
// them.
func TestCellsAsPeopleWriteThem(t *testing.T) {
	c := mustRead(t, with(map[string]string{
		"casters.csv": "id,name,price,mass_kg,mass_lb,rating_lb,rating_kg,as_of\n" +
			"a,A,\"$1,249.00\",6,,,160,10/25/2026\n" +
			"b,B,€ 80.50,,10,300,,3/3/26\n" +
			"c,C,\"1,249\",,10,300,,2026-03-14\n",
		"inverters.csv": strings.Replace(strings.Replace(smallest["inverters.csv"], ",idle_w", ",idle_w,protocols,charger_ac_v", 1), ",40\n",
			",40,\"RS485; CAN,can  Plain\",240\n", 1),
		"cables.csv":  "id,name,price_per_ft,mass_kg_per_m,size,material,insulation_c,strand\nwire,Wire,\"$2.65\",0.35,2 AWG,copper,90,Fine\n",
		"devices.csv": "id,name,price,mass_kg,type,rating_a,polarised,listed,mount\nfuse,Fuse,45,0.3,breaker,125,Yes,NO,Plug-In\n",
		"offers.csv":  "",
	}))
	a, b, d := c.Casters[0], c.Casters[1], c.Devices[0]
	for _, test := range []struct {
		name      string
		got, want any
	}{
		{"dollars and thousands", a.Price, catalog.Cents(124900)},
		{"euros", b.Price, catalog.Cents(8050)},
		{"thousands alone", c.Casters[2].Price, catalog.Cents(124900)},
		{"kilograms", [2]float64{a.MassKg, a.RatingKg}, [2]float64{6, 160}},
		{"pounds", [2]float64{b.MassKg, b.RatingKg}, [2]float64{4.5359237, 136.077711}},
		{"month, day and year", a.AsOf.Format("2006-01-02"), "2026-10-25"},
		{"a day that is the same both ways", b.AsOf.Format("2006-01-02"), "2026-03-03"},
		{"protocols", strings.Join(c.Inverters[0].Protocols, " "), "can plain rs485"},
		{"what the charger takes", [4]bool{c.Inverters[0].ChargesFrom(240), c.Inverters[0].ChargesFrom(120), c.Inverters[0].ChargesFrom(230),
			(&catalog.Inverter{ChargerACV: "120/240"}).ChargesFrom(120)}, [4]bool{true, false, false, true}},
		{"strand", c.Cables[0].Fine, true},
		{"answers", [2]catalog.Answer{d.Polarised, d.Listed}, [2]catalog.Answer{catalog.Yes, catalog.No}},
		{"mount", d.Mount, "plug-in"},
	} {
		if test.got != test.want {
			t.Errorf("%s: got %v, want %v", test.name, test.got, test.want)
		}
	}
	battery := catalog.Battery{Protocols: []string{"can"}}
	if !battery.SharesProtocol(&c.Inverters[0]) || battery.SharesProtocol(&catalog.Inverter{Protocols: []string{"rs485"}}) ||
		(&catalog.Battery{}).SharesProtocol(&catalog.Inverter{}) {
		t.Error("protocols are not shared as they should be")
	}
}
