package catalog_test

import (
	"math"
	"testing"

	"cartwright/catalog"
)

func TestParseSize(t *testing.T) {
	for _, test := range []struct{ text, want string }{
		{"14 AWG", "14 AWG"}, {"4/0 AWG", "4/0 AWG"}, {" 2awg ", "2 AWG"}, {"250 kcmil", "250 kcmil"}, {"250KCMIL", "250 kcmil"},
		{"1.5 mm2", "1.5 mm2"}, {"35 MM²", "35 mm2"}, {"35.0mm2", "35 mm2"},
		{"", ""}, {"35", ""}, {"AWG", ""}, {"0 AWG", ""}, {"37 AWG", ""}, {"5/0 AWG", ""}, {"0/0 AWG", ""}, {"x/0 AWG", ""},
		{"-35 mm2", ""}, {"0 mm2", ""}, {"NaN mm2", ""}, {"Inf mm2", ""}, {"x kcmil", ""}, {"-1 kcmil", ""}, {"35 cm2", ""},
	} {
		t.Run(test.text, func(t *testing.T) {
			got, err := catalog.ParseSize(test.text)
			if string(got) != test.want || (err == nil) != (test.want != "") {
				t.Errorf("got %q, %v; want %q", got, err, test.want)
			}
		})
	}
}

// Areas of NEC (NFPA 70) chapter 9 table 8, column "circular mils", which are rounded to three or four digits:
// at most 0.1 % from the formula of ASTM B258.
func TestAreaMM2(t *testing.T) {
	const mm2PerCmil = 5.067075e-4 // definition of the circular mil
	for _, test := range []struct {
		size  catalog.Size
		cmil  float64
		gauge int
	}{
		{"14 AWG", 4110, 14}, {"12 AWG", 6530, 12}, {"10 AWG", 10380, 10}, {"8 AWG", 16510, 8}, {"6 AWG", 26240, 6},
		{"4 AWG", 41740, 4}, {"2 AWG", 66360, 2}, {"1 AWG", 83690, 1}, {"1/0 AWG", 105600, 0}, {"2/0 AWG", 133100, -1},
		{"3/0 AWG", 167800, -2}, {"4/0 AWG", 211600, -3},
	} {
		t.Run(string(test.size), func(t *testing.T) {
			want := test.cmil * mm2PerCmil
			if got := test.size.AreaMM2(); math.Abs(got-want) > want*0.001 {
				t.Errorf("area %.4f mm2, want %.4f", got, want)
			}
			if n, ok := test.size.Gauge(); !ok || n != test.gauge {
				t.Errorf("gauge %d, %v, want %d", n, ok, test.gauge)
			}
			if test.size.Metric() {
				t.Error("a gauge is not metric")
			}
		})
	}
	if got, want := catalog.Size("250 kcmil").AreaMM2(), 126.676875; math.Abs(got-want) > 1e-9 {
		t.Errorf("250 kcmil: %v mm2, want %v", got, want)
	}
	if s := catalog.Size("1.5 mm2"); s.AreaMM2() != 1.5 || !s.Metric() {
		t.Errorf("1.5 mm2: %v, metric %v", s.AreaMM2(), s.Metric())
	}
	if _, ok := catalog.Size("250 kcmil").Gauge(); ok {
		t.Error("250 kcmil is no gauge")
	}
}
