package iec_test

import (
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/wiring/iec"
)

// TestFuseFactor: IEC 60269-1/-2 gG fuses. 1.6 from 16 A: two independent texts; 1.9 above 4 A: one text;
// 2.1 up to 4 A: from memory.
func TestFuseFactor(t *testing.T) {
	for _, c := range []struct{ ratingA, want float64 }{
		{2, 2.1}, {4, 2.1}, {4.1, 1.9}, {6, 1.9}, {10, 1.9}, {15.9, 1.9}, {16, 1.6}, {630, 1.6},
	} {
		if got := iec.FuseFactor(c.ratingA); got != c.want {
			t.Errorf("FuseFactor(%v) = %v, want %v", c.ratingA, got, c.want)
		}
	}
}

// TestFuseShare: texts on IEC 60364-4-43 give condition 2 for gG fuses as I_n ≤ I_z / 1.31 below 16 A and
// I_n ≤ I_z / 1.1 from there (two independent texts for the latter). The texts print two decimals.
func TestFuseShare(t *testing.T) {
	for _, c := range []struct{ ratingA, k3 float64 }{{10, 1.31}, {16, 1.10}} {
		got := iec.FuseFactor(c.ratingA) / iec.OverloadA(1)
		if math.Abs(got-c.k3) > 0.005 {
			t.Errorf("a %v A fuse needs %.4f times its rating of the cable, want %v", c.ratingA, got, c.k3)
		}
	}
}

// TestFuseFactorOf: gPV fuses operate at 1.45 of their rating (IEC 60269-6, from memory), all others as gG.
func TestFuseFactorOf(t *testing.T) {
	for _, c := range []struct {
		class   string
		ratingA float64
		want    float64
	}{{"gPV", 15, 1.45}, {"gpv", 100, 1.45}, {"gG", 15, 1.9}, {"gG", 16, 1.6}, {"", 16, 1.6}, {"T", 16, 1.6}} {
		if got := iec.FuseFactorOf(c.class, c.ratingA); got != c.want {
			t.Errorf("%q of %v A: %v, want %v", c.class, c.ratingA, got, c.want)
		}
	}
}

// TestOverloadA: IEC 60364-4-43 clause 433.1, condition 2: three independent texts.
func TestOverloadA(t *testing.T) {
	if got := iec.OverloadA(100); got != 145 {
		t.Errorf("OverloadA(100) = %v, want 145", got)
	}
}

// TestParallelAllowed: 50 mm2 by analogy with 1/0 AWG, 53.5 mm2: common practice, no source.
func TestParallelAllowed(t *testing.T) {
	for size, want := range map[catalog.Size]bool{"35 mm2": false, "50 mm2": true, "70 mm2": true} {
		if got := iec.ParallelAllowed(size); got != want {
			t.Errorf("ParallelAllowed(%s) = %v, want %v", size, got, want)
		}
	}
}

// TestGroundAreaMM2 holds each row of IEC 60364-5-54 table 54.2: two independent texts, a guide to electrical
// installation and a course on table 54.7 of BS 7671.
func TestGroundAreaMM2(t *testing.T) {
	for _, c := range []struct{ lineMM2, want float64 }{
		{1.5, 1.5}, {10, 10}, {16, 16}, {25, 16}, {35, 16}, {50, 25}, {70, 35}, {120, 60},
	} {
		if got := iec.GroundAreaMM2(c.lineMM2); got != c.want {
			t.Errorf("GroundAreaMM2(%v) = %v, want %v", c.lineMM2, got, c.want)
		}
	}
}

// TestSourcesStated: each table and rule says where it comes from and how far it is confirmed.
func TestSourcesStated(t *testing.T) {
	names := map[string]bool{}
	for _, s := range iec.Sources() {
		if s.Kind == "" || s.Name == "" || s.Source == "" || s.Confidence == "" || names[s.Name] {
			t.Errorf("source %+v has an empty field or a name that was there before", s)
		}
		names[s.Name] = true
	}
	if want := 13; len(names) != want {
		t.Errorf("%d sources, want %d: one for each table and rule", len(names), want)
	}
}
