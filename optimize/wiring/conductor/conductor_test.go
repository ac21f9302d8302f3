package conductor_test

import (
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/wiring/conductor"
)

// metrePerInch is the metres in an inch, by definition.
const metrePerInch = 0.0254

// TestDiameterGauges: ASTM B258 as an encyclopedia page prints it (one text), and the circular mils of
// NFPA 70 chapter 9 table 8 (three texts), which are the square of the diameter in mils.
func TestDiameterGauges(t *testing.T) {
	for _, c := range []struct {
		size catalog.Size
		cmil float64
	}{
		{"36 AWG", 25}, {"16 AWG", 2580}, {"14 AWG", 4110}, {"12 AWG", 6530}, {"10 AWG", 10380}, {"8 AWG", 16510},
		{"6 AWG", 26240}, {"4 AWG", 41740}, {"3 AWG", 52620}, {"2 AWG", 66360}, {"1 AWG", 83690},
		{"1/0 AWG", 105600}, {"2/0 AWG", 133100}, {"3/0 AWG", 167800}, {"4/0 AWG", 211600}, {"250 kcmil", 250000},
	} {
		mils := conductor.DiameterM(c.size) / metrePerInch * 1000
		// The table prints whole tens, from 1/0 AWG up hundreds: half of that is at most 0.2 %.
		if got := mils * mils; math.Abs(got/c.cmil-1) > 0.002 {
			t.Errorf("%s: %.0f circular mils, want %v", c.size, got, c.cmil)
		}
	}
}

// TestResistanceAt: NFPA 70 chapter 9 table 8 gives copper 0.00323/K at 75 °C; recomputed from IEC 60028,
// 0.00393/K at 20 °C: 0.00393 / (1 + 0.00393 · 55).
func TestResistanceAt(t *testing.T) {
	at75 := conductor.ResistanceAt(1, conductor.CopperPerK, 20, 75)
	if want := 1 + 0.00393*55; math.Abs(at75-want) > 1e-12 {
		t.Errorf("1 ohm at 20 C is %v ohm at 75 C, want %v", at75, want)
	}
	if perK := conductor.CopperPerK / at75; math.Abs(perK-0.00323) > 0.000005 {
		t.Errorf("coefficient at 75 C %.6f, want 0.00323", perK)
	}
	if same := conductor.ResistanceAt(2, conductor.CopperPerK, 20, 20); same != 2 {
		t.Errorf("unchanged temperature: %v ohm, want 2", same)
	}
}

// TestResistanceAtAgainstFAA: FAA AC 43.13-1B section 11 (one text) shortens a copper run for heat by
// L2 = 254.5·L1 / (234.5 + T2). Resistance must rise as that length falls; the two constants agree to
// 2 parts in 10,000 of the resistance at 100 °C.
func TestResistanceAtAgainstFAA(t *testing.T) {
	for _, tempC := range []float64{20, 50, 75, 100} {
		faa := (234.5 + tempC) / 254.5
		if got := conductor.ResistanceAt(1, conductor.CopperPerK, 20, tempC); math.Abs(got/faa-1) > 2e-4 {
			t.Errorf("at %v C: %.5f times, FAA %.5f times", tempC, got, faa)
		}
	}
}

// TestDropV holds each row of FAA AC 43.13-1B CHG 1 (2001), tables 11-7 and 11-8, p. 11-22 (two
// independent texts): one-way runs, tin-plated copper. Row 3 of 11-7 prints 3.60 for 3.555, and row 2 of
// 11-8 prints .366 for 0.491: misprints, the arithmetic is tested. Lengths of 11-8 are rounded down.
func TestDropV(t *testing.T) {
	const ohmPerFt10 = 0.00126 // No. 10
	for _, c := range []struct {
		name                  string
		runFt, ohmPerFt, want float64
		printed               string
	}{
		{"11-7 row 1", 107, 0.00044, 0.942, ".942"},
		{"11-7 row 2", 90, 0.00028, 0.504, ".504"},
		{"11-7 row 3", 88, 0.00202, 3.555, "3.60"},
		{"11-7 row 4", 100, 0.00306, 6.12, "6.12"},
		{"11-8 row 1", 39, ohmPerFt10, 0.983, ".98"},
		{"11-8 row 2", 19.5, ohmPerFt10, 0.491, ".366"},
		{"11-8 row 3", 156, ohmPerFt10, 3.931, "3.93"},
		{"11-8 row 4", 273, ohmPerFt10, 6.880, "6.88"},
	} {
		const metrePerFt = 0.3048
		got := conductor.DropV(20, c.runFt*metrePerFt, c.ohmPerFt/metrePerFt)
		if math.Abs(got-c.want) > 0.0005 {
			t.Errorf("%s: %.4f V, want %v (printed %s)", c.name, got, c.want, c.printed)
		}
	}
}

// TestSourcesStated: each formula says where it comes from and how far it is confirmed.
func TestSourcesStated(t *testing.T) {
	sources := conductor.Sources()
	if len(sources) != 3 {
		t.Errorf("%d sources, want 3: one for each formula", len(sources))
	}
	for _, s := range sources {
		if s.Kind == "" || s.Name == "" || s.Source == "" || s.Confidence == "" {
			t.Errorf("source %+v has an empty field", s)
		}
	}
}
