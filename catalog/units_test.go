package catalog_test

import (
	"encoding/csv"
	"math"
	"math/big"
	"reflect"
	"strings"
	"testing"
	"testing/fstest"

	"cartwright/catalog"

	"pgregory.net/rapid"
)

// Pairs of headers and cells that say the same, to the last bit. The pound and the foot are exact by the
// international yard and pound agreement of 1959: 1 lb = 0.45359237 kg, 1 ft = 0.3048 m, 1 in = 25.4 mm.
func TestUnitPairs(t *testing.T) {
	for _, test := range []struct{ file, metric, metricCell, us, usCell string }{
		{"batteries.csv", "mass_kg", "45.359237", "mass_lb", "100"},
		{"batteries.csv", "length_mm", "508", "length_in", "20"},
		{"batteries.csv", "width_mm", "2.54", "width_in", "0.1"},
		{"batteries.csv", "height_mm", "63.5", "height_in", "2.5"},
		{"inverters.csv", "mass_kg", "0.45359237", "mass_lb", "1"},
		{"cables.csv", "price_per_m", "10", "price_per_ft", "3.048"},
		{"cables.csv", "mass_kg_per_m", "1.488163943569553805774278215223097", "mass_lb_per_ft", "1"}, // 0.45359237 / 0.3048
		{"devices.csv", "mass_kg", "0.226796185", "mass_lb", "0.5"},
		{"busbars.csv", "mass_kg", "4.5359237", "mass_lb", "10"},
		{"casters.csv", "mass_kg", "9.0718474", "mass_lb", "20"},
		{"casters.csv", "rating_kg", "136.077711", "rating_lb", "300"},
		{"casters.csv", "wheel_mm", "127", "wheel_in", "5"},
		{"solar.csv", "mass_kg", "22.6796185", "mass_lb", "50"},
		{"sundries.csv", "mass_kg", "0.45359237", "mass_lb", "1"},
		{"sundries.csv", "volume_ml", "294.967152", "volume_in3", "18"}, // 16.387064 ml each
		{"cables.csv", "outer_mm", "12.7", "outer_in", "1/2"},
		{"solar.csv", "mass_kg", "0.45359237", "mass_lb", "1"},
		{"batteries.csv", "length_mm", "441.325", "length_in", "17 3/8"},
		{"batteries.csv", "height_mm", "441.325", "height_in", "17-3/8"},
		{"conduits.csv", "inside_mm2", "343.87028", "inside_in2", "0.533"}, // 645.16 mm2 each
		{"conduits.csv", "price_per_m", "10", "price_per_ft", "$3.048"},
		{"sections.csv", "width_mm", "38.1", "width_in", "1 1/2"},
		{"sections.csv", "mass_kg_per_m", "1.488163943569553805774278215223097", "mass_lb_per_ft", "1"},
	} {
		t.Run(test.file+" "+test.us, func(t *testing.T) {
			metric := mustRead(t, with(map[string]string{test.file: setCell(t, smallest[test.file], test.metric, test.metric, test.metricCell)}))
			us := mustRead(t, with(map[string]string{test.file: setCell(t, smallest[test.file], test.metric, test.us, test.usCell)}))
			if a, b := unplaced(metric), unplaced(us); !reflect.DeepEqual(a, b) {
				t.Errorf("metric %+v\nUS %+v", a, b)
			}
		})
	}
}

// setCell renames a column of a file of one row and sets its cell, or adds the column.
func setCell(t *testing.T, data, column, name, text string) string {
	t.Helper()
	rows, err := csv.NewReader(strings.NewReader(data)).ReadAll()
	if err != nil || len(rows) != 2 {
		t.Fatalf("%q: %v", data, err)
	}
	at := -1
	for i, h := range rows[0] {
		if h == column {
			at = i
		}
	}
	if at < 0 {
		rows[0], rows[1], at = append(rows[0], ""), append(rows[1], ""), len(rows[0])
	}
	rows[0][at], rows[1][at] = name, text
	return strings.Join(rows[0], ",") + "\n" + strings.Join(rows[1], ",") + "\n"
}

// Any catalogue, written in pounds, inches and feet, is the same catalogue.
func TestUSUnitsAreTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := someCatalog(t)
		files := written(t, c)
		for _, k := range catalog.Kinds() {
			inUS(t, files, "cart/"+k.File(), catalog.Columns(k))
		}
		inUS(t, files, "cart/"+catalog.OffersFile, catalog.OfferColumns())
		back, err := catalog.Read(files, "cart", "cart")
		if err != nil {
			t.Fatalf("refused in US units:\n%v", err)
		}
		near(t, reflect.ValueOf(unplaced(back)).Elem(), reflect.ValueOf(c).Elem())
	})
}

// inUS rewrites a file's paired columns in US units, to 30 digits.
func inUS(t *rapid.T, files fstest.MapFS, name string, columns []catalog.Column) {
	rows, err := csv.NewReader(strings.NewReader(string(files[name].Data))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for i, c := range columns {
		if c.US == "" {
			continue
		}
		rows[0][i] = c.US
		for _, row := range rows[1:] {
			if row[i] != "" {
				row[i] = converted(row[i], c.Name, c.US)
			}
		}
	}
	var b strings.Builder
	if err := csv.NewWriter(&b).WriteAll(rows); err != nil {
		t.Fatal(err)
	}
	files[name] = &fstest.MapFile{Data: []byte(b.String()), Mode: 0o644}
}

// factors are how many metric units of a header are in one US unit of its pair, longest endings first.
var factors = []struct{ metric, us, over, under string }{
	{"_kg_per_m", "_lb_per_ft", "0.45359237", "0.3048"},
	{"_per_m", "_per_ft", "1", "0.3048"},
	{"_kg", "_lb", "0.45359237", "1"},
	{"_mm", "_in", "25.4", "1"},
	{"_m", "_ft", "0.3048", "1"},
	{"_ml", "_in3", "16.387064", "1"},
	{"_mm2", "_in2", "645.16", "1"},
}

// converted returns a metric number in the US unit of its pair. It is cut after 30 places, not rounded, so
// that a number at its upper bound stays within.
func converted(metric, name, us string) string {
	for _, f := range factors {
		if stem, ok := strings.CutSuffix(name, f.metric); !ok || stem+f.us != us {
			continue
		}
		x, _ := new(big.Rat).SetString(metric)
		over, _ := new(big.Rat).SetString(f.over)
		under, _ := new(big.Rat).SetString(f.under)
		text := x.Mul(x.Quo(x, over), under).FloatString(40)
		return text[:len(text)-10]
	}
	panic("no factor for " + name + " and " + us)
}

// near compares two catalogues field by field. A decimal of 30 places stands for a fraction without end,
// so a float64 may come out one unit in its last place aside, 2^-52 of it.
func near(t *rapid.T, a, b reflect.Value) {
	switch a.Kind() {
	case reflect.Float64:
		if x, y := a.Float(), b.Float(); math.Abs(x-y) > math.Abs(y)*0x1p-52 {
			t.Fatalf("%v is not %v", x, y)
		}
	case reflect.Struct:
		for i := range a.NumField() {
			if a.Type().Field(i).IsExported() {
				near(t, a.Field(i), b.Field(i))
			}
		}
	case reflect.Slice:
		if a.Len() != b.Len() {
			t.Fatalf("%d rows are not %d", a.Len(), b.Len())
		}
		for i := range a.Len() {
			near(t, a.Index(i), b.Index(i))
		}
	default:
		if !reflect.DeepEqual(a.Interface(), b.Interface()) {
			t.Fatalf("%v is not %v", a, b)
		}
	}
}
