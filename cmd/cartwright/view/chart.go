package view

import (
	"bytes"
	"fmt"
	"image/color"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgimg"
	"gonum.org/v1/plot/vg/vgsvg"

	"cartwright/optimize/frontier"
)

// Picture is a form of picture; it is also how such files end.
type Picture string

// The forms of pictures.
const (
	SVG Picture = "svg"
	PNG Picture = "png"
)

// A chart's size and fineness: three to two, wide enough for a page's column, sharp in print.
const (
	chartWidth  = 18 * vg.Centimeter
	chartHeight = 12 * vg.Centimeter
	chartDPI    = 200
	chartMargin = 4 * vg.Millimeter // around it all, so that labels at the ends of the axes are whole
)

// chartFont is part of the drawing library, so that a chart looks the same on every machine. SVG names it
// and falls back on what the reader's machine has.
var chartFont = font.Font{Typeface: "Liberation", Variant: "Sans"}

var (
	stairColour = color.RGBA{R: 0x1f, G: 0x4e, B: 0x79, A: 0xff}
	kneeColour  = color.RGBA{R: 0xc0, G: 0x50, B: 0x1f, A: 0xff}
)

// Draw returns the staircase as a picture. The same steps give the same bytes.
func (f Frontier) Draw(form Picture) ([]byte, error) {
	p, err := f.chart()
	if err != nil {
		return nil, err
	}
	var canvas vg.CanvasWriterTo
	switch form {
	case SVG:
		canvas = vgsvg.New(chartWidth, chartHeight)
	case PNG:
		canvas = vgimg.PngCanvas{Canvas: vgimg.NewWith(vgimg.UseWH(chartWidth, chartHeight), vgimg.UseDPI(chartDPI))}
	default:
		return nil, fmt.Errorf("no picture of form %q", form)
	}
	whole := draw.New(canvas)
	whole.SetColor(color.White)
	whole.Fill(whole.Rectangle.Path())
	p.Draw(draw.Crop(whole, chartMargin, -chartMargin, chartMargin, -chartMargin))
	var b bytes.Buffer
	if _, err := canvas.WriteTo(&b); err != nil {
		return nil, fmt.Errorf("cannot draw the staircase: %w", err)
	}
	return b.Bytes(), nil
}

// chart lays the staircase out: a line of level stretches and risers, a dot at each step's own corner, the
// knee marked.
func (f Frontier) chart() (*plot.Plot, error) {
	p := plot.New()
	p.Title.Text = clean(f.steps().title)
	p.Title.TextStyle.Font = font.From(chartFont, 13)
	p.Title.Padding = vg.Points(6)
	cost := "cost, " + f.Scenario.Currency
	switch f.Staircase.Axis {
	case frontier.AxisMass:
		p.X.Label.Text, p.Y.Label.Text = "mass at most, kg", cost
	case frontier.AxisBudget:
		p.X.Label.Text, p.Y.Label.Text = "budget, "+f.Scenario.Currency, "autonomy, h"
	default:
		p.X.Label.Text, p.Y.Label.Text = "autonomy at least, h", cost
	}
	for _, axis := range []*plot.Axis{&p.X, &p.Y} {
		axis.Label.Text = clean(axis.Label.Text)
		axis.Label.TextStyle.Font = font.From(chartFont, 11)
		axis.Tick.Label.Font = font.From(chartFont, 10)
	}
	grid := plotter.NewGrid()
	for _, style := range []*draw.LineStyle{&grid.Vertical, &grid.Horizontal} {
		style.Color = color.Gray{Y: 0xdd}
	}
	line, err := plotter.NewLine(f.stairs())
	if err != nil {
		return nil, err
	}
	line.Color, line.Width = stairColour, vg.Points(1.5)
	dots, err := plotter.NewScatter(f.corners(false))
	if err != nil {
		return nil, err
	}
	dots.GlyphStyle = draw.GlyphStyle{Color: stairColour, Radius: vg.Points(2), Shape: draw.CircleGlyph{}}
	p.Add(grid, line, dots)
	if knee := f.corners(true); len(knee) > 0 {
		mark, err := plotter.NewScatter(knee)
		if err != nil {
			return nil, err
		}
		mark.GlyphStyle = draw.GlyphStyle{Color: kneeColour, Radius: vg.Points(5), Shape: draw.RingGlyph{}}
		p.Add(mark)
		p.Legend.TextStyle.Font = font.From(chartFont, 10)
		p.Legend.Add("knee", mark)
		p.Legend.Top = true
		// Cost rises with autonomy and falls with mass: the corner above the cheap end is free.
		p.Legend.Left = f.Staircase.Axis != frontier.AxisMass
	}
	return p, nil
}

// corner returns the point of the chart where a step's figure and its cost meet.
func (f Frontier) corner(s *frontier.Step) plotter.XY {
	if f.Staircase.Axis == frontier.AxisBudget {
		return plotter.XY{X: s.Cost, Y: s.At}
	}
	return plotter.XY{X: s.At, Y: s.Cost}
}

// corners returns the corners of all steps, or of the knee alone.
func (f Frontier) corners(knee bool) plotter.XYs {
	var list plotter.XYs
	for i := range f.Staircase.Steps {
		if s := &f.Staircase.Steps[i]; s.Knee || !knee {
			list = append(list, f.corner(s))
		}
	}
	return list
}

// stairs returns the staircase's line. A plan serves from the corner of the step before it to its own:
// along the hours it costs the same from a little more than the last plan runs, along the masses from a
// little less than the last plan weighs, and a budget buys the same until it is enough for the next.
func (f Frontier) stairs() plotter.XYs {
	var line plotter.XYs
	for i, to := range f.corners(false) {
		if i == 0 && f.Staircase.Axis == frontier.AxisAutonomy {
			line = append(line, plotter.XY{Y: to.Y}) // from no hours on
		}
		if i > 0 {
			from := line[len(line)-1]
			if f.Staircase.Axis == frontier.AxisBudget {
				line = append(line, plotter.XY{X: to.X, Y: from.Y})
			} else {
				line = append(line, plotter.XY{X: from.X, Y: to.Y})
			}
		}
		line = append(line, to)
	}
	return line
}
