package sun_test

import (
	"fmt"
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/energy/sun"

	"pgregory.net/rapid"
)

// A training text on PV calculations (2023 NEC edition), worked example 1: 49.5 V and -0.27 % a degree at -10 C are
// 54.18 V, and 11 of them 596 V of 600. An installer's playbook: 40 V and -0.29 % are 44.1 V at -10 C, 13 of them, and
// 46.4 V at -30 C, 12. A web lesson: 49.5 V and -0.28 % at -5 C are 53.66 V, 18 of them in 1000 V. Each read in 1 text.
func ExampleColdV() {
	for _, x := range []struct{ voc, percent, coldest, limit float64 }{
		{49.5, -0.27, -10, 600}, {40, -0.29, -10, 600}, {40, -0.29, -30, 600}, {49.5, -0.28, -5, 1000},
	} {
		m := &catalog.Solar{VocV: x.voc, VocTempPctPerC: x.percent}
		one := sun.ColdV(m, 1, x.coldest)
		n := int(x.limit / one)
		fmt.Printf("%.2f V, %d in series: %.0f V\n", one, n, sun.ColdV(m, n, x.coldest))
	}
	// Output:
	// 54.18 V, 11 in series: 596 V
	// 44.06 V, 13 in series: 573 V
	// 46.38 V, 12 in series: 557 V
	// 53.66 V, 18 in series: 966 V
}

// Global Sustainable Energy Solutions, training sheet of 2011: 36.4 V at full power, 0.17 V less a degree, are 28.75 V
// in cells of 70 C; read in 1 text. 0.17 V are 0.467 % of 36.4 V; air of 38.75 C and a NOCT of 45 C make 70 C.
func ExampleHotV() {
	m := &catalog.Solar{VmpV: 36.4, VocTempPctPerC: -0.3, PowerTempPctPerC: -100 * 0.17 / 36.4, NOCTC: 45}
	fmt.Printf("%.2f V at %.0f C\n", sun.HotV(m, 1, 38.75), sun.CellC(38.75, 45, 1000))
	// Output: 28.75 V at 70 C
}

// TestColdTable: the factors of NEC table 690.7(A), three independent texts, are those of 0.4 % a degree at the cold end
// of each row, to 0.01.
func TestColdTable(t *testing.T) {
	m := &catalog.Solar{VocV: 1, VocTempPctPerC: -0.4}
	for coldest, factor := range map[float64]float64{20: 1.02, 15: 1.04, 10: 1.06, 5: 1.08, 0: 1.10, -5: 1.12, -10: 1.14, -15: 1.16,
		-20: 1.18, -25: 1.20, -30: 1.21, -35: 1.23, -40: 1.25} {
		if got := sun.ColdV(m, 1, coldest); math.Abs(got-factor) > 0.0101 || coldest >= -25 && math.Abs(got-factor) > 1e-9 {
			t.Errorf("%v C: %v, want %v", coldest, got, factor)
		}
	}
}

// TestVoltsRise: more in series give more, colder air gives more, hotter air gives less; the steeper coefficient counts,
// whichever it is.
func TestVoltsRise(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := &catalog.Solar{VocV: rapid.Float64Range(10, 60).Draw(t, "voc"), VmpV: 30, NOCTC: rapid.Float64Range(40, 50).Draw(t, "noct"),
			VocTempPctPerC: rapid.Float64Range(-0.5, -0.1).Draw(t, "voc percent"), PowerTempPctPerC: rapid.Float64Range(-0.5, -0.1).Draw(t, "power percent")}
		n, air := rapid.IntRange(1, 20).Draw(t, "series"), rapid.Float64Range(-40, 50).Draw(t, "air")
		if cold := sun.ColdV(m, n, air); cold <= sun.ColdV(m, n, air+1) || cold >= sun.ColdV(m, n+1, air) {
			t.Fatal("cold volts fall")
		}
		if hot := sun.HotV(m, n, air); hot <= sun.HotV(m, n, air+1) || hot >= sun.HotV(m, n+1, air) {
			t.Fatal("hot volts rise")
		}
		other := *m
		other.VocTempPctPerC, other.PowerTempPctPerC = m.PowerTempPctPerC, m.VocTempPctPerC
		if sun.HotV(m, n, air) != sun.HotV(&other, n, air) {
			t.Fatal("not by the steeper of the two")
		}
	})
}
