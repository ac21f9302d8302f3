package picture

import (
	"bytes"
	"image/png"
	"reflect"
	"strings"
	"testing"
)

// steps is a hand-made staircase of four plans; its figures are chosen to be told apart, not computed.
func steps(falls, along bool) *Tradeoff {
	t := &Tradeoff{Title: "Barn lights: cost of autonomy", XName: "h", YName: "cost, USD", Falls: falls, CostAlong: along}
	for i, at := range []float64{4.25, 8.5, 30.125, 31} {
		if falls {
			at = 250 - at
		}
		t.Points = append(t.Points, Point{At: at, Cost: 1000 + 123.45*float64(i*i), Name: "plan", Knee: i == 2})
	}
	return t
}

// Each plan serves from the corner of the step before it to its own: the line goes level there and up or
// down at the corners.
func TestStairs(t *testing.T) {
	for _, c := range []struct {
		name string
		of   *Tradeoff
		want [][2]float64
	}{
		{"autonomy", steps(false, false), [][2]float64{{0, 1000}, {4.25, 1000}, {4.25, 1123.45}, {8.5, 1123.45}, {8.5, 1493.8}, {30.125, 1493.8}, {30.125, 2111.05}, {31, 2111.05}}},
		{"mass", steps(true, false), [][2]float64{{245.75, 1000}, {245.75, 1123.45}, {241.5, 1123.45}, {241.5, 1493.8}, {219.875, 1493.8}, {219.875, 2111.05}, {219, 2111.05}}},
		{"budget", steps(false, true), [][2]float64{{1000, 4.25}, {1123.45, 4.25}, {1123.45, 8.5}, {1493.8, 8.5}, {1493.8, 30.125}, {2111.05, 30.125}, {2111.05, 31}}},
	} {
		if got := c.of.stairs(); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s: the line goes %v, want %v", c.name, got, c.want)
		}
	}
}

func TestATradeoffIsDrawn(t *testing.T) {
	for _, of := range []*Tradeoff{steps(false, false), steps(true, false), steps(false, true)} {
		for n := 1; n <= len(of.Points); n++ {
			few := *of
			few.Points = of.Points[:n]
			s := few.Scene()
			legible(t, of.Title, s)
			text := string(s.SVG())
			if strings.Contains(text, "NaN") || strings.Contains(text, "Inf") {
				t.Errorf("%d steps: the SVG has figures that are none", n)
			}
			if (n >= 3) != strings.Contains(text, ">knee: plan<") {
				t.Errorf("%d steps: the knee is marked, or not", n)
			}
		}
		drawn, err := of.Scene().PNG(2.5)
		if err != nil {
			t.Fatal(err)
		}
		if image, err := png.Decode(bytes.NewReader(drawn)); err != nil || image.Bounds().Dx() != 1800 {
			t.Errorf("%v, %v; want 1800 dots across", image.Bounds(), err)
		}
	}
}

func TestTicksAreRound(t *testing.T) {
	for _, c := range []struct {
		low, high float64
		want      []string
	}{
		{0, 24, []string{"0", "5", "10", "15", "20"}},
		{1900, 12400, []string{"2000", "4000", "6000", "8000", "10000", "12000"}},
		{0, 0.35, []string{"0.00", "0.05", "0.10", "0.15", "0.20", "0.25", "0.30", "0.35"}},
		{-3, 3, []string{"-3", "-2", "-1", "0", "1", "2", "3"}},
	} {
		var got []string
		for _, t := range ticks(c.low, c.high) {
			got = append(got, t.label)
		}
		if !reflect.DeepEqual(got, c.want) {
			t.Errorf("from %v to %v: %q, want %q", c.low, c.high, got, c.want)
		}
	}
}
