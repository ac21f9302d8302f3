package nec_test

import (
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/wiring/nec"
	"cartwright/scenarios/ratings"
)

// TestTerminalColumn: NFPA 70 110.14(C)(1), three independent texts: 60 °C up to 100 A, 75 °C above,
// unless marked; the 90 °C column never serves a termination.
func TestTerminalColumn(t *testing.T) {
	for _, c := range []struct {
		name                                   string
		statedC, deviceA, deviceC, insulationC float64
		want                                   nec.Column
		ok                                     bool
	}{
		{"100 A by rule", 0, 100, 75, 90, nec.Col60, true},
		{"above 100 A by rule", 0, 101, 75, 90, nec.Col75, true},
		{"15 A by rule", 0, 15, 75, 90, nec.Col60, true},
		{"110 A by rule, device for 90", 0, 110, 90, 90, nec.Col75, true},
		{"marked 75, small", 75, 20, 75, 90, nec.Col75, true},
		{"marked 60, large", 60, 200, 75, 90, nec.Col60, true},
		{"device for 60 only", 75, 200, 60, 90, nec.Col60, true},
		{"insulation for 60 only", 75, 200, 75, 60, nec.Col60, true},
		{"insulation for 70", 75, 200, 75, 70, nec.Col60, true},
		{"insulation below the table", 75, 200, 75, 50, 0, false},
	} {
		got, ok := nec.TerminalColumn(c.statedC, c.deviceA, c.deviceC, c.insulationC)
		if got != c.want || ok != c.ok {
			t.Errorf("%s: TerminalColumn = %v, %v; want %v, %v", c.name, got, ok, c.want, c.ok)
		}
	}
}

// TestLargestDeviceA: NFPA 70 240.4(B) and (C), two independent texts; ratings of 240.6(A).
func TestLargestDeviceA(t *testing.T) {
	breakers, fuses := ratings.Standard("nec", "breaker"), ratings.Standard("nec", "fuse")
	for _, c := range []struct {
		name        string
		ratings     []float64
		ampacityA   float64
		wantLargest float64
	}{
		{"standard itself", breakers, 100, 100},
		{"standard but for roundoff", breakers, 3 * (100.0 / 3) * (1 + 1e-12), 100},
		{"just above a standard", breakers, 100.001, 110},
		{"115 A of 2 AWG", breakers, 115, 125},
		{"650 A", breakers, 650, 700},
		{"601 A is a fuse's", fuses, 600.5, 601},
		{"601 A is no breaker's", breakers, 600.5, 700},
		{"800 A itself", breakers, 800, 800},
		{"799 A goes up to 800", breakers, 799, 800},
		{"801 A does not go up to 1000", breakers, 801, 801},
		{"1000 A itself", breakers, 1000, 1000},
		{"above the last", breakers, 6500, 6500},
		{"below the first", breakers, 10, 15},
		{"below the first fuse", fuses, 0.5, 1},
	} {
		if got := nec.LargestDeviceA(c.ratings, c.ampacityA); got != c.wantLargest {
			t.Errorf("%s: LargestDeviceA(%v) = %v, want %v", c.name, c.ampacityA, got, c.wantLargest)
		}
	}
}

func TestNextStandard(t *testing.T) {
	list := ratings.Standard("nec", "breaker")
	for _, c := range []struct {
		amps, want float64
		ok         bool
	}{
		{0, 15, true},
		{15, 15, true},
		{15.1, 20, true},
		{6000, 6000, true},
		{6001, 0, false},
	} {
		if got, ok := nec.NextStandard(list, c.amps); got != c.want || ok != c.ok {
			t.Errorf("NextStandard(%v) = %v, %v; want %v, %v", c.amps, got, ok, c.want, c.ok)
		}
	}
}

// TestSmallConductorA holds each row of NFPA 70 240.4(D): three independent texts.
func TestSmallConductorA(t *testing.T) {
	for _, c := range []struct {
		material string
		size     catalog.Size
		want     float64
		ok       bool
	}{
		{"copper", "14 AWG", 15, true},
		{"copper", "12 AWG", 20, true},
		{"copper", "10 AWG", 30, true},
		{"copper", "8 AWG", 0, false},
		{"aluminium", "12 AWG", 15, true},
		{"aluminium", "10 AWG", 25, true},
		{"aluminium", "8 AWG", 0, false},
		{"aluminium", "14 AWG", 0, false},
		{"silver", "12 AWG", 0, false},
	} {
		if got, ok := nec.SmallConductorA(c.material, c.size); got != c.want || ok != c.ok {
			t.Errorf("SmallConductorA(%s, %s) = %v, %v; want %v, %v", c.material, c.size, got, ok, c.want, c.ok)
		}
	}
}

// TestParallelAllowed: NFPA 70 310.10(G)(1), two independent texts that still call it 310.4 and 310.10(H).
func TestParallelAllowed(t *testing.T) {
	for size, want := range map[catalog.Size]bool{
		"2 AWG": false, "1 AWG": false, "1/0 AWG": true, "2/0 AWG": true, "4/0 AWG": true, "250 kcmil": true,
		"70 mm2": false, // no size of this code
	} {
		if got := nec.ParallelAllowed(size); got != want {
			t.Errorf("ParallelAllowed(%s) = %v, want %v", size, got, want)
		}
	}
}

// TestContinuousA: NFPA 70 215.3, three independent texts.
func TestContinuousA(t *testing.T) {
	if got := nec.ContinuousA(80); got != 100 {
		t.Errorf("ContinuousA(80) = %v, want 100", got)
	}
}
