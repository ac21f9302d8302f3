package audit

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"cartwright/catalog"
	"cartwright/scenarios"
)

// necPath is a path of 3 m and a guard, under the nec.
func necPath(cable string, material string, deviceA float64) (*lay, *guard) {
	t := &task{kind: scenarios.RunFeeder, designA: deviceA / continuous, conductors: 2, bundled: 2, ambientC: 30, terminalC: 75}
	return &lay{t, &catalog.Cable{Size: catalog.Size(cable), Material: material, InsulationC: 90}, 1},
		&guard{ratingA: deviceA, breaker: true, terminalC: 75}
}

// Worked examples of 250.122(B): 300 A on 350 kcmil, where 250 kcmil would do, takes 4 AWG to 2 AWG; 20 A on 6
// AWG, where 12 AWG would do, takes 12 AWG to 6 AWG, which is the line itself. Published in trade texts; issue 13.
func TestGroundGrowsWithItsLine(t *testing.T) {
	for _, tt := range []struct {
		line, material string
		deviceA        float64
		ground         string
		least          catalog.Size // the next smaller one falls short
		tooThin        catalog.Size
	}{
		{"350 kcmil", "copper", 255, "copper", "2 AWG", "3 AWG"},
		{"6 AWG", "copper", 20, "copper", "6 AWG", "8 AWG"},
		{"12 AWG", "copper", 20, "copper", "12 AWG", "14 AWG"},
		// Aluminium is not capped by copper conductors: 12 AWG to 6 AWG takes its 10 AWG to 4 AWG.
		{"6 AWG", "copper", 20, "aluminium", "4 AWG", "6 AWG"},
	} {
		w, g := necPath(tt.line, tt.material, tt.deviceA)
		mm2, ok := necRules{}.groundMM2(w, g, &catalog.Cable{Material: tt.ground})
		if !ok || tt.least.AreaMM2() < mm2*(1-1e-9) || tt.tooThin.AreaMM2() >= mm2*(1-1e-9) {
			t.Errorf("behind %g A on %s of %s the ground of %s has %g mm2, want more than %s and up to %s",
				tt.deviceA, tt.line, tt.material, tt.ground, mm2, tt.tooThin, tt.least)
		}
	}
	// The published one: the device of 300 A, 4 AWG by table 250.122, 2 AWG with 350 for 250 kcmil.
	w, g := necPath("350 kcmil", "copper", 300)
	w.designA = 204 // 255 A asked for, which 250 kcmil carries at 75 C
	mm2, _ := necRules{}.groundMM2(w, g, &catalog.Cable{Material: "copper"})
	if two, three := catalog.Size("2 AWG"), catalog.Size("3 AWG"); mm2 > two.AreaMM2() || mm2 <= three.AreaMM2() {
		t.Errorf("behind 300 A on 350 kcmil the ground has %g mm2, want 2 AWG", mm2)
	}
}

// NEC 240.4(B) with 240.6(A): the next size up passes no standard size, of fuses or breakers.
func TestNextSizeUp(t *testing.T) {
	for _, tt := range []struct{ ampacityA, want float64 }{
		{9, 10}, {10, 10}, {12, 15}, {15, 15}, {50, 50}, {51, 60}, {20 * (1 + 1e-12), 20}, {760, 800}, {801, 801}, {600.5, 601}, {0.5, 1},
	} {
		if got := (necRules{}).largestA(&lay{task: &task{}}, tt.ampacityA); math.Abs(got-tt.want) > 1e-6 {
			t.Errorf("on %g A stands %g A, want %g", tt.ampacityA, got, tt.want)
		}
		if got := (necRules{}).largestA(&lay{task: &task{exactA: 20}}, tt.ampacityA); got != tt.ampacityA {
			t.Errorf("of a stated device on %g A stands %g A", tt.ampacityA, got)
		}
	}
}

// Each conductor of a parallel set counts in the bundle: two sets of two are four, 80 %.
func TestSetsAreABundle(t *testing.T) {
	w, _ := necPath("1/0 AWG", "copper", 300)
	w.sets = 2
	if got := (necRules{}).insulationA(w); got != 2*170*0.8 {
		t.Errorf("two sets of 1/0 AWG carry %g A, want 272", got)
	}
	w.bundled = 12
	if got := (necRules{}).insulationA(w); got != 2*170*0.5 {
		t.Errorf("among twelve they carry %g A, want 170", got)
	}
	v := &lay{&task{kind: scenarios.RunMain, bundled: 2, ambientC: 30}, &catalog.Cable{Size: "50 mm2", Material: copper, InsulationC: 70}, 2}
	if got := (iecRules{}).capacityA(v); math.Abs(got-2*168*0.8) > 1e-9 {
		t.Errorf("two sets of 50 mm2 carry %g A, want 268.8", got)
	}
}

// Steel Tube Institute: 3 x 12, 4 x 10 and 8 x 8 AWG fill 0.4171 in2, for which 1 1/4 EMT (0.598 in2 at 40 %) is
// the least; NEC chapter 9 table 1 for one and two conductors.
func TestConduitFill(t *testing.T) {
	sum := 0.0
	for size, n := range map[catalog.Size]float64{"12 AWG": 3, "10 AWG": 4, "8 AWG": 8} {
		mm2, ok := filledMM2(&catalog.Cable{Size: size})
		if !ok {
			t.Fatalf("no area of %s", size)
		}
		sum += n * mm2
	}
	if in2 := sum / squareInchMM2; math.Abs(in2-0.4171) > 5e-5 {
		t.Errorf("fifteen conductors fill %g in2, want 0.4171", in2)
	}
	for conductors, want := range map[int]float64{1: 0.53, 2: 0.31, 3: 0.40, 15: 0.40} {
		if got := fillShare(scenarios.NEC, conductors); got != want {
			t.Errorf("%d conductors fill %g, want %g", conductors, got, want)
		}
	}
	if mm2, ok := filledMM2(&catalog.Cable{Size: "4/0 AWG", OuterM: 0.010}); !ok || math.Abs(mm2-math.Pi*25) > 1e-9 {
		t.Errorf("10 mm across fill %g mm2", mm2)
	}
}

// A text on ABYC E-11: six batteries of 6 V and 2,400 A as a bank of 12 V give 7,200 A, two in series as much as one.
func TestFaultOfABank(t *testing.T) {
	b := &catalog.Battery{ShortCircuitA: 2400}
	a := &auditor{strings: []bank{{b, 3, 2}}}
	if got := a.busFaultA(); got != 7200 {
		t.Errorf("three strings of two give %g A, want 7200", got)
	}
}

// Tubes of EN 10219, whose corners are rounded: 40 x 40 x 3 has 9.32 cm4, 50 x 50 x 3 19.5 cm4. With sharp corners
// they come out 9.4 % and 6.9 % stiffer, which 0.6 of the yield leaves room for.
func TestTubesAgainstTheTable(t *testing.T) {
	for _, tt := range []struct{ side, printed, over float64 }{{0.040, 9.32, 0.095}, {0.050, 19.5, 0.07}} {
		inertia, modulus := bending(&catalog.Section{Shape: catalog.SquareTube, WidthM: tt.side, HeightM: tt.side, WallM: 0.003})
		cm4 := inertia * 1e8
		if cm4 < tt.printed || cm4 > tt.printed*(1+tt.over) {
			t.Errorf("%g m: %g cm4, printed %g", tt.side, cm4, tt.printed)
		}
		if math.Abs(modulus-inertia/(tt.side/2)) > 1e-12 {
			t.Errorf("%g m: modulus %g m3", tt.side, modulus)
		}
	}
}

// An angle against its area cut into thin slices.
func TestAngleBySlices(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, h := rapid.Float64Range(0.02, 0.08).Draw(t, "level"), rapid.Float64Range(0.02, 0.08).Draw(t, "upright")
		wall := rapid.Float64Range(0.002, 0.01).Draw(t, "wall")
		width := func(y float64) float64 {
			if y < wall {
				return b
			}
			return wall
		}
		const slices = 40000
		area, moment, second := 0.0, 0.0, 0.0
		for i := range slices {
			y := (float64(i) + 0.5) / slices * h
			d := width(y) * h / slices
			area += d
			moment += d * y
			second += d * y * y
		}
		middle := moment / area
		want := second - area*middle*middle
		inertia, modulus := bending(&catalog.Section{Shape: catalog.Angle, WidthM: b, HeightM: h, WallM: wall})
		if math.Abs(inertia-want) > 1e-3*want || math.Abs(modulus-want/math.Max(middle, h-middle)) > 2e-3*modulus {
			t.Fatalf("%g m4 and %g m3, by slices %g and %g", inertia, modulus, want, want/math.Max(middle, h-middle))
		}
	})
	if inertia, modulus := bending(&catalog.Section{Shape: catalog.Ply, WidthM: 1, WallM: 0.02}); inertia != 0 || modulus != 0 {
		t.Error("ply is no rail")
	}
}

// What a conductor is cut to.
func TestCut(t *testing.T) {
	for _, tt := range []struct{ slack, step, length, want float64 }{
		{0, 0, 1.2, 1.2}, {0.1, 0, 1, 1.1}, {0, 0.5, 1.2, 1.5}, {0.1, 0.1, 1, 1.1}, {0.05, 0.25, 1, 1.25}, {0, 0.3048, 3 * 0.3048, 3 * 0.3048},
	} {
		a := &auditor{s: &scenarios.Scenario{Cable: scenarios.CableWish{Slack: tt.slack, StepM: tt.step}}}
		if got := a.conductorM(tt.length); math.Abs(got-tt.want) > 1e-12 {
			t.Errorf("%g m with %g slack in steps of %g m are %g m, want %g", tt.length, tt.slack, tt.step, got, tt.want)
		}
	}
}
