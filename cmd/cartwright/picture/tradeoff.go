package picture

import (
	"math"

	"cartwright/cmd/cartwright/picture/scene"
)

// Scene returns the trade-off as a drawing of its own.
func (t *Tradeoff) Scene() *scene.Scene {
	s := &scene.Scene{W: pageWidth, Title: t.Title}
	s.H = t.draw(s, margin+10) + margin
	return s
}

// draw draws the staircase with a dot a plan and as many of their names as there is room for, and returns the
// Y below.
func (t *Tradeoff) draw(s *scene.Scene, y float64) float64 {
	for _, l := range scene.Wrap(t.Title, titleSize, true, s.W-2*margin, 2) {
		s.Write(scene.Text{At: scene.Point{X: margin, Y: y}, Words: l, Size: titleSize, Bold: true})
		y += scene.Leading(titleSize)
	}
	a := &axes{s: s, box: scene.Box{X: margin + 58, Y: y + 18, W: s.W - 2*margin - 70, H: 320}}
	a.minX, a.maxX, a.minY, a.maxY = t.bounds()
	a.rule(ticks(a.minX, a.maxX), ticks(a.minY, a.maxY), t.XName, t.YName)
	line := scene.Path{Pen: scene.Pen{Ink: chartInk, Width: 1.6}}
	for _, corner := range t.stairs() {
		line.Points = append(line.Points, a.at(math.Max(corner[0], a.minX), corner[1]))
	}
	s.Add(line)
	knee := -1
	for i, p := range t.Points {
		at := t.corner(a, p)
		s.Add(scene.Disc{At: at, R: 3, Fill: scene.Blue})
		if p.Knee {
			knee = i
			s.Add(scene.Disc{At: at, R: 7, Pen: scene.Pen{Ink: scene.Vermilion, Width: 2}})
		}
	}
	if knee >= 0 {
		a.near(t.corner(a, t.Points[knee]), nameLines("knee: "+t.Points[knee].Name))
	}
	for _, i := range t.named() {
		if i == knee {
			continue
		}
		a.near(t.corner(a, t.Points[i]), nameLines(t.Points[i].Name))
	}
	ascent, _ := scene.Rise(smallSize)
	return a.box.Bottom() + 2*ascent + 16
}

// nameLines breaks a plan's name into lines that leave room for the others'.
func nameLines(name string) []string { return scene.Wrap(name, smallSize, false, 200, 4) }

// named returns the dots whose names are written: the ends, and others evenly between them.
func (t *Tradeoff) named() []int {
	const most = 8
	n := len(t.Points)
	if n <= most {
		list := make([]int, n)
		for i := range list {
			list[i] = i
		}
		return list
	}
	var list []int
	for k := range most {
		list = append(list, k*(n-1)/(most-1))
	}
	return list
}

// xy returns a plan's place on the axes.
func (t *Tradeoff) xy(p Point) (x, y float64) {
	if t.CostAlong {
		return p.Cost, p.At
	}
	return p.At, p.Cost
}

func (t *Tradeoff) corner(a *axes, p Point) scene.Point { return a.at(t.xy(p)) }

// bounds returns what the axes have to hold, with a little room around.
func (t *Tradeoff) bounds() (minX, maxX, minY, maxY float64) {
	minX, minY, maxX, maxY = math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, p := range t.Points {
		x, y := t.xy(p)
		minX, maxX, minY, maxY = math.Min(minX, x), math.Max(maxX, x), math.Min(minY, y), math.Max(maxY, y)
	}
	room := func(low, high float64) (float64, float64) {
		by := 0.06 * (high - low)
		if by == 0 { // one plan alone
			by = math.Max(1, 0.05*math.Abs(high))
		}
		if low >= 0 {
			return math.Max(0, low-by), high + by
		}
		return low - by, high + by
	}
	minX, maxX = room(minX, maxX)
	minY, maxY = room(minY, maxY)
	return minX, maxX, minY, maxY
}

// stairs returns the corners of the staircase's line, in the figures of the axes. A plan serves from the corner
// of the step before it to its own: along the hours it costs the same from a little more than the last plan
// runs, along the masses from a little less than the last plan weighs, and a budget buys the same until it is
// enough for the next.
func (t *Tradeoff) stairs() [][2]float64 {
	var line [][2]float64
	for i, p := range t.Points {
		x, y := t.xy(p)
		if i == 0 && !t.CostAlong && !t.Falls {
			line = append(line, [2]float64{0, y}) // from no hours on
		}
		if i > 0 {
			before := line[len(line)-1]
			if t.CostAlong {
				line = append(line, [2]float64{x, before[1]})
			} else {
				line = append(line, [2]float64{before[0], y})
			}
		}
		line = append(line, [2]float64{x, y})
	}
	return line
}
