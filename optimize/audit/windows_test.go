package audit

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func drawCurve(t *rapid.T) *supplied {
	n := rapid.IntRange(1, 8).Draw(t, "steps")
	c := &supplied{stepH: rapid.SampledFrom([]float64{1, 0.25, 0.5}).Draw(t, "hours"), stepWh: make([]float64, n), sumWh: make([]float64, 2*n+1)}
	for i := range n {
		c.stepWh[i] = float64(rapid.IntRange(0, 5).Draw(t, "Wh"))
	}
	for k := range 2 * n {
		c.sumWh[k+1] = c.sumWh[k] + c.stepWh[k%n]
	}
	return c
}

// until returns the energy from the record's beginning to some hours, going round.
func (c *supplied) until(hours float64) float64 {
	wh := 0.0
	for k := 0; hours > 1e-12; k++ {
		part := math.Min(1, hours/c.stepH)
		wh += part * c.stepWh[k%len(c.stepWh)]
		hours -= c.stepH
	}
	return wh
}

// No stretch, wherever it begins, takes more than the most, and one that begins or ends at an edge takes it.
func TestMostOfAnyStretch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCurve(t)
		hours := rapid.Float64Range(0, 20).Draw(t, "stretch")
		record := float64(len(c.stepWh)) * c.stepH
		most := 0.0
		for s := 0.0; s < record; s += c.stepH / 40 {
			most = math.Max(most, c.until(s+hours)-c.until(s))
		}
		for k := range c.stepWh {
			edge := float64(k)*c.stepH + 30*record // far enough to look back
			most = math.Max(most, c.until(edge)-c.until(edge-hours))
		}
		if got := c.mostWh(hours); math.Abs(got-most) > 1e-9*(1+most) {
			t.Fatalf("%g h take at most %g Wh, by trial %g", hours, got, most)
		}
	})
}

// What lasts some hours is what the worst of them takes.
func TestLastsAsLongAsItTakes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCurve(t)
		usable := rapid.Float64Range(0, 60).Draw(t, "usable")
		hours := c.lasts(usable)
		if c.roundWh() == 0 {
			if hours != mostHours {
				t.Fatalf("nothing lasts %g h", hours)
			}
			return
		}
		if need := c.mostWh(hours); need > usable*(1+1e-8)+1e-9 {
			t.Fatalf("%g Wh are said to last %g h, which take %g", usable, hours, need)
		}
		if need := c.mostWh(hours + 1e-6); need <= usable*(1-1e-8)-1e-5 {
			t.Fatalf("%g Wh last longer than %g h", usable, hours)
		}
	})
}

// The stretch that takes most may begin at no edge, and end at one.
func TestStretchThatEndsAtAnEdge(t *testing.T) {
	c := &supplied{stepH: 1, stepWh: []float64{0, 0, 3, 0, 0, 0, 0, 5, 0, 0, 0, 0, 0, 0, 0, 0}, sumWh: make([]float64, 33)}
	for k := range 32 {
		c.sumWh[k+1] = c.sumWh[k] + c.stepWh[k%16]
	}
	// 5.5 h: from 2.5 to 8 is 1.5 + 5 Wh; it begins at no edge.
	if got := c.mostWh(5.5); got != 6.5 {
		t.Errorf("most of 5.5 h is %g Wh, want 6.5", got)
	}
	if got := c.lasts(6.5); math.Abs(got-5.5) > 1e-9 {
		t.Errorf("6.5 Wh last %g h, want 5.5", got)
	}
}
