package view

import (
	"bytes"
	"encoding/xml"
	"errors"
	"image/png"
	"io"
	"strings"
	"testing"

	"cartwright/optimize/frontier"
	"cartwright/optimize/plan"
)

// someStairs is a hand-made staircase of four steps; its figures are chosen to be told apart, not computed.
func someStairs(of frontier.Axis) Frontier {
	s := sample().Scenario
	s.Sold = 30000
	f := &frontier.Staircase{Axis: of, Unit: "h", Complete: true}
	if of == frontier.AxisMass {
		f.Unit = "kg"
	}
	for i, at := range []float64{4.25, 8.5, 30.125, 31} {
		p := second()
		if i == 3 {
			p = first()
		}
		p.Cost = 100000 + 12345*plan.Money(i*i)
		if of == frontier.AxisMass {
			at = 250 - at
		}
		f.Steps = append(f.Steps, frontier.Step{At: at, Cost: p.Cost.Units(), Plan: p, Knee: i == 2})
	}
	return Frontier{Scenario: s, Staircase: f, Cautions: []string{"Arcs can kill."}}
}

func TestFrontierInEveryFormat(t *testing.T) {
	stopped, none, early := someStairs(frontier.AxisAutonomy), someStairs(frontier.AxisMass), someStairs(frontier.AxisMass)
	stopped.Staircase.Complete = false
	none.Staircase.Steps = nil
	early.Staircase.Steps, early.Staircase.Complete = nil, false
	for _, c := range []struct {
		file   string
		answer Frontier
		format Format
	}{
		{"frontier.txt", someStairs(frontier.AxisAutonomy), Table},
		{"frontier.md", someStairs(frontier.AxisAutonomy), Markdown},
		{"frontier.csv", someStairs(frontier.AxisAutonomy), CSV},
		{"frontier.json", someStairs(frontier.AxisAutonomy), JSON},
		{"frontier-mass.txt", someStairs(frontier.AxisMass), Table},
		{"frontier-budget.txt", someStairs(frontier.AxisBudget), Table},
		{"frontier-stopped.txt", stopped, Table},
		{"frontier-none.txt", none, Table},
		{"frontier-none.json", none, JSON},
		{"frontier-early.txt", early, Table},
	} {
		t.Run(c.file, func(t *testing.T) { shownAs(t, c.file, c.answer, c.format) })
	}
}

// A picture can be read, is the same every time, and has the staircase's line and its knee.
func TestPictures(t *testing.T) {
	for _, of := range []frontier.Axis{frontier.AxisAutonomy, frontier.AxisMass, frontier.AxisBudget} {
		t.Run(string(of), func(t *testing.T) {
			svg, picture := drawnTwice(t, someStairs(of), SVG), drawnTwice(t, someStairs(of), PNG)
			for decoder := xml.NewDecoder(bytes.NewReader(svg)); ; {
				if _, err := decoder.Token(); errors.Is(err, io.EOF) {
					break
				} else if err != nil {
					t.Fatal(err)
				}
			}
			for _, want := range []string{"Barn lights: 4 steps", ">knee<", "font-family:Liberation Sans;", "USD"} {
				if !strings.Contains(string(svg), want) {
					t.Errorf("the SVG lacks %q", want)
				}
			}
			img, err := png.Decode(bytes.NewReader(picture))
			if err != nil {
				t.Fatal(err)
			}
			if size := img.Bounds().Size(); size.X < 1000 || size.X*2 < size.Y*3-10 || size.X*2 > size.Y*3+10 {
				t.Errorf("the PNG has %v dots; want three to two", size)
			}
		})
	}
	if _, err := someStairs(frontier.AxisMass).Draw("gif"); err == nil {
		t.Error("drew a picture of an unknown form")
	}
}

// drawnTwice draws a picture, and once more for comparison.
func drawnTwice(t *testing.T, f Frontier, form Picture) []byte {
	t.Helper()
	one, err := f.Draw(form)
	if err != nil {
		t.Fatal(err)
	}
	other, err := f.Draw(form)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(one, other) {
		t.Errorf("two pictures of the same steps as %s differ", form)
	}
	return one
}

// Each plan serves from the corner of the step before it to its own: the line goes level there and up or
// down at the corners.
func TestStairs(t *testing.T) {
	for _, c := range []struct {
		of   frontier.Axis
		want [][2]float64
	}{
		{frontier.AxisAutonomy, [][2]float64{{0, 1000}, {4.25, 1000}, {4.25, 1123.45}, {8.5, 1123.45}, {8.5, 1493.8}, {30.125, 1493.8}, {30.125, 2111.05}, {31, 2111.05}}},
		{frontier.AxisMass, [][2]float64{{245.75, 1000}, {245.75, 1123.45}, {241.5, 1123.45}, {241.5, 1493.8}, {219.875, 1493.8}, {219.875, 2111.05}, {219, 2111.05}}},
		{frontier.AxisBudget, [][2]float64{{1000, 4.25}, {1123.45, 4.25}, {1123.45, 8.5}, {1493.8, 8.5}, {1493.8, 30.125}, {2111.05, 30.125}, {2111.05, 31}}},
	} {
		got := someStairs(c.of).stairs()
		same := len(got) == len(c.want)
		for i := 0; same && i < len(got); i++ {
			same = got[i].X == c.want[i][0] && got[i].Y == c.want[i][1]
		}
		if !same {
			t.Errorf("%s: the line goes %v, want %v", c.of, got, c.want)
		}
	}
}

// A lone step, and two, have a picture too.
func TestPictureOfFewSteps(t *testing.T) {
	for n := 1; n <= 2; n++ {
		f := someStairs(frontier.AxisMass)
		f.Staircase.Steps = f.Staircase.Steps[:n]
		if got := drawnTwice(t, f, SVG); strings.Contains(string(got), "NaN") || strings.Contains(string(got), "Inf") {
			t.Errorf("%d steps: the SVG has figures that are none", n)
		}
	}
}
