package catalog_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"cartwright/catalog"
)

func TestFileOfAKind(t *testing.T) {
	var got []string
	for _, k := range catalog.Kinds() {
		got = append(got, string(k)+" "+k.File())
	}
	want := []string{"battery batteries.csv", "inverter inverters.csv", "cable cables.csv", "device devices.csv",
		"busbar busbars.csv", "casters casters.csv", "solar solar.csv", "sundry sundries.csv", "conduit conduits.csv", "section sections.csv"}
	if !slices.Equal(got, want) {
		t.Errorf("got %q", got)
	}
	if file := catalog.Kind("wheel").File(); file != "" {
		t.Errorf("a kind that is none has the file %q", file)
	}
}

// The columns as the format states them: * is required, / separates the two names of a pair, ( ) is what an
// empty cell stands for.
func TestColumns(t *testing.T) {
	const each = "id* name* price* price_low price_high mass_kg/mass_lb* vendor as_of "
	for kind, want := range map[catalog.Kind]string{
		catalog.KindBattery: each + "chemistry* parallel_group nominal_v* min_v* max_v* capacity_kwh* usable_fraction* round_trip(1) " +
			"max_discharge_a* peak_discharge_a(max_discharge_a) max_charge_a* resistance_mohm* short_circuit_a(max_v / resistance) " +
			"cycle_life calendar_years max_parallel max_series(1) max_fuse_a own_device_a own_interrupting_a protocols length_mm/length_in* width_mm/width_in* height_mm/height_in* notes",
		catalog.KindInverter: each + "dc_min_v* dc_max_v* ac_v* continuous_w* surge_w* leg_w(120/240: half of continuous_w, else continuous_w) " +
			"leg_surge_w(120/240: half of surge_w, else surge_w) efficiency* idle_w* charger_a(0) charger_ac_v(ac_v) protocols solar_max_w(0) solar_max_voc_v(0) mppt_min_v(0) mppt_max_v(0) mppt_max_a(0) " +
			"mppt_inputs(1 where solar_max_w is stated, else 0) max_units(1) notes",
		catalog.KindCable: "id* name* price_per_m/price_per_ft* price_low_per_m/price_low_per_ft price_high_per_m/price_high_per_ft " +
			"mass_kg_per_m/mass_lb_per_ft* vendor as_of size* material* insulation_c* end_price(0) use(any) " +
			"strand(building) outer_mm/outer_in notes",
		catalog.KindDevice: each + "type* class rating_a* poles(1) max_dc_v(0) interrupting_dc_a(0) max_ac_v(0) interrupting_ac_a(0) " +
			"terminal_c(75) polarised mount listed notes",
		catalog.KindBusbar:  each + "rating_a* studs* notes",
		catalog.KindCasters: each + "set_of(4) rating_kg/rating_lb* brakes(0) swivel(0) wheel_mm/wheel_in(0) notes",
		catalog.KindSolar: each + "watts* voc_v* vmp_v* isc_a* imp_a* voc_temp_pct_per_c* power_temp_pct_per_c(-0.35) noct_c(45) max_fuse_a " +
			"max_system_v(600) length_mm/length_in width_mm/width_in notes",
		catalog.KindSundry: each + "role* rating_a spaces mount volume_ml/volume_in3 notes",
		catalog.KindConduit: "id* name* price_per_m/price_per_ft* price_low_per_m/price_low_per_ft price_high_per_m/price_high_per_ft " +
			"mass_kg_per_m/mass_lb_per_ft* vendor as_of trade_size* type* inside_mm2/inside_in2* end_price(0) notes",
		catalog.KindSection: "id* name* price_per_m/price_per_ft price_low_per_m/price_low_per_ft price_high_per_m/price_high_per_ft " +
			"mass_kg_per_m/mass_lb_per_ft(of steel, from its sides) vendor as_of shape* width_mm/width_in height_mm/height_in wall_mm/wall_in " +
			"yield_mpa(235) notes",
	} {
		t.Run(string(kind), func(t *testing.T) {
			if got := spelt(catalog.Columns(kind)); got != want {
				t.Errorf("got  %s\nwant %s", got, want)
			}
		})
	}
	t.Run("offers", func(t *testing.T) {
		const want = "part* vendor* price* price_per_m/price_per_ft min_qty(1) min_m/min_ft shipping(0) as_of notes"
		if got := spelt(catalog.OfferColumns()); got != want {
			t.Errorf("got  %s\nwant %s", got, want)
		}
	})
	if c := catalog.Columns("wheel"); c != nil {
		t.Errorf("a kind that is none has the columns %v", c)
	}
}

func spelt(columns []catalog.Column) string {
	var words []string
	for _, c := range columns {
		word := c.Name
		if c.US != "" {
			word += "/" + c.US
		}
		if c.Default != "" {
			word += "(" + c.Default + ")"
		}
		if c.Required {
			word += "*"
		}
		words = append(words, word)
	}
	return strings.Join(words, " ")
}

// full is a writer with no room.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no space left") }

func TestWriteErrors(t *testing.T) {
	c := catalog.Embedded()
	for _, k := range catalog.Kinds() {
		if err := c.Write(k, full{}); err == nil {
			t.Errorf("%s: writing to a full disk succeeds", k)
		}
	}
	if err := c.WriteOffers(full{}); err == nil {
		t.Error("offers: writing to a full disk succeeds")
	}
	var b strings.Builder
	if err := c.Write("wheel", &b); err == nil || err.Error() != `catalog: there is no kind of part "wheel"` || b.Len() > 0 {
		t.Errorf("got %v and %q", err, b.String())
	}
}

func TestFind(t *testing.T) {
	c := mustRead(t, with(nil))
	for i, id := range []string{"pack", "inv", "wire", "fuse", "bars", "wheels", "sun", "shunt"} {
		e, ok := c.Find(id)
		if !ok || e.ID != id || e.Kind != catalog.Kinds()[i] || e.Base() != e.Part {
			t.Errorf("%s: got %+v, %v", id, e, ok)
		}
	}
	if _, ok := c.Find("none"); ok {
		t.Error("a part that is none is found")
	}
	if got := strings.Join(c.IDs(), " "); got != "bars fuse inv pack pipe shunt sun tube wheels wire" {
		t.Errorf("ids %q", got)
	}
}

func TestCents(t *testing.T) {
	for _, test := range []struct {
		amount float64
		want   catalog.Cents
	}{{0, 0}, {12.34, 1234}, {0.005, 1}, {-0.005, -1}, {1e9, 1e11}} {
		if got := catalog.CentsFrom(test.amount); got != test.want {
			t.Errorf("%v is %d cents, want %d", test.amount, got, test.want)
		}
	}
	if got := catalog.Cents(-305).Units(); got != -3.05 {
		t.Errorf("-305 cents are %v", got)
	}
}
