package nec_test

import (
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/wiring/conductor"
	"cartwright/optimize/wiring/nec"
)

// metrePerKft is the metres in a thousand feet, by definition.
const metrePerKft = 304.8

// resistanceRows is NFPA 70 chapter 9 table 8 (2020, 2023), stranded, uncoated, ohm per 1000 ft at 75 °C:
// three independent texts, but 14 AWG from memory and aluminium of 12, 10 and 8 AWG in one text.
var resistanceRows = []struct {
	size   catalog.Size
	cu, al float64 // 0: not in the table
}{
	{"14 AWG", 3.14, 0},
	{"12 AWG", 1.98, 3.25},
	{"10 AWG", 1.24, 2.04},
	{"8 AWG", 0.778, 1.28},
	{"6 AWG", 0.491, 0.808},
	{"4 AWG", 0.308, 0.508},
	{"3 AWG", 0.245, 0.403},
	{"2 AWG", 0.194, 0.319},
	{"1 AWG", 0.154, 0.253},
	{"1/0 AWG", 0.122, 0.201},
	{"2/0 AWG", 0.0967, 0.159},
	{"3/0 AWG", 0.0766, 0.126},
	{"4/0 AWG", 0.0608, 0.1},
	{"250 kcmil", 0.0515, 0.0847},
	{"300 kcmil", 0.0429, 0.0707},
	{"350 kcmil", 0.0367, 0.0605},
	{"400 kcmil", 0.0321, 0.0529},
	{"500 kcmil", 0.0258, 0.0424},
}

func TestResistancePerM(t *testing.T) {
	for _, r := range resistanceRows {
		for material, want := range map[string]float64{"copper": r.cu, "aluminium": r.al} {
			got, ok := nec.ResistancePerM(material, r.size)
			// A few roundings of the division by 304.8 m.
			if math.Abs(got*metrePerKft-want) > 1e-12 || ok != (want > 0) {
				t.Errorf("ResistancePerM(%s, %s) = %v ohm/kft, %v; want %v", material, r.size, got*metrePerKft, ok, want)
			}
		}
	}
	if ohm, ok := nec.ResistancePerM("copper", "35 mm2"); ok {
		t.Errorf("metric: ResistancePerM = %v, true; want not in table", ohm)
	}
}

// TestResistanceAgainstCopper holds the table against the resistivity of copper of IEC 60028,
// 0.017241 ohm·mm2/m at 20 °C and 0.00393/K, and the area of ASTM B258. A strand's lay and the table's
// rounding add up to 4 %.
func TestResistanceAgainstCopper(t *testing.T) {
	const resistivity = 0.017241 // ohm·mm2/m at 20 °C, IEC 60028
	for _, r := range resistanceRows {
		got, _ := nec.ResistancePerM("copper", r.size)
		solid := conductor.ResistanceAt(resistivity/r.size.AreaMM2(), conductor.CopperPerK, 20, 75)
		if ratio := got / solid; ratio < 1 || ratio > 1.04 {
			t.Errorf("%s: table over physics %.4f, want 1 to 1.04", r.size, ratio)
		}
	}
}
