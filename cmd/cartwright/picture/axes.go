package picture

import (
	"math"

	"cartwright/cmd/cartwright/picture/scene"
	"cartwright/cmd/cartwright/picture/told"
)

// axes is the frame of a chart: where its numbers stand.
type axes struct {
	s                      *scene.Scene
	box                    scene.Box
	minX, maxX, minY, maxY float64
}

// x and y return where a number is drawn.
func (a *axes) x(v float64) float64 {
	return a.box.X + (v-a.minX)/(a.maxX-a.minX)*a.box.W
}

func (a *axes) y(v float64) float64 {
	return a.box.Bottom() - (v-a.minY)/(a.maxY-a.minY)*a.box.H
}

func (a *axes) at(x, y float64) scene.Point { return scene.Point{X: a.x(x), Y: a.y(y)} }

// tick is a number at an axis.
type tick struct {
	value float64
	label string
}

// ticks returns round numbers between two: multiples of 1, 2 or 5 times a power of ten, some six of them.
func ticks(low, high float64) []tick {
	const about = 6
	size := math.Pow(10, math.Floor(math.Log10((high-low)/about)))
	step := 10 * size
	for _, times := range []float64{1, 2, 5} {
		if (high-low)/(times*size) <= about+1 {
			step = times * size
			break
		}
	}
	decimals := int(math.Max(0, -math.Floor(math.Log10(step)+1e-9)))
	var list []tick
	for n := math.Ceil(low/step - 1e-9); n*step <= high+1e-9*step; n++ {
		list = append(list, tick{n * step, told.Fixed(n*step, decimals)})
	}
	return list
}

// hours returns the ticks of a clock.
func hours(from, to float64) []tick {
	step := 3.0
	for (to-from)/step > 10 {
		step *= 2
	}
	var list []tick
	for h := math.Ceil(from/step) * step; h <= to; h += step {
		list = append(list, tick{h, clock(h)})
	}
	return list
}

// clock words an hour as a time of day.
func clock(h float64) string {
	minutes := int(math.Round(math.Mod(h, 24) * 60))
	return twoDigits(minutes/60%24) + ":" + twoDigits(minutes%60)
}

func twoDigits(n int) string {
	return string([]byte{'0' + byte(n/10), '0' + byte(n%10)})
}

// rule draws the frame with ticks at the left and below, and what they count.
func (a *axes) rule(xs, ys []tick, xName, yName string) {
	grid := scene.Pen{Ink: scene.Grid, Width: 1}
	ascent, _ := scene.Rise(smallSize)
	for _, t := range ys {
		y := a.y(t.value)
		a.s.Add(scene.Line(scene.Point{X: a.box.X, Y: y}, scene.Point{X: a.box.Right(), Y: y}, grid))
		a.s.Write(scene.Text{At: scene.Point{X: a.box.X - 6, Y: y + ascent/2 - 1}, Words: t.label, Size: smallSize, Align: scene.End})
	}
	for _, t := range xs {
		x := a.x(t.value)
		a.s.Add(scene.Line(scene.Point{X: x, Y: a.box.Y}, scene.Point{X: x, Y: a.box.Bottom()}, grid))
		text := scene.Text{At: scene.Point{X: x, Y: a.box.Bottom() + ascent + 5}, Words: t.label, Size: smallSize, Align: scene.Middle}
		if a.s.Free(text.Box().Grow(2)) {
			a.s.Write(text)
		}
	}
	a.s.Add(scene.Path{Points: []scene.Point{{X: a.box.X, Y: a.box.Y}, {X: a.box.X, Y: a.box.Bottom()}, {X: a.box.Right(), Y: a.box.Bottom()}}, Pen: thin()})
	if yName != "" {
		a.s.Write(scene.Text{At: scene.Point{X: a.box.X, Y: a.box.Y - 8}, Words: yName, Size: smallSize, Bold: true})
	}
	if xName != "" {
		a.s.Write(scene.Text{At: scene.Point{X: a.box.Right(), Y: a.box.Bottom() + 2*ascent + 12}, Words: xName, Size: smallSize, Bold: true, Align: scene.End})
	}
}

// near writes lines of words near a point, where nothing is written yet, joined to it by a line where they are some way
// off; where there is no room they are left out.
func (a *axes) near(p scene.Point, lines []string) {
	ascent, descent := scene.Rise(smallSize)
	further := scene.Leading(smallSize) * float64(len(lines)-1) // from the first line to the last
	for n := range 10 {
		for _, way := range []struct{ x, y float64 }{{1, -1}, {-1, -1}, {1, 1}, {-1, 1}, {0, -1.6}, {0, 1.6}} {
			d := 7 + 9*float64(n)
			first := scene.Text{At: scene.Point{X: p.X + way.x*d, Y: p.Y + way.y*d*0.8}, Size: smallSize, Align: scene.Middle}
			switch {
			case way.x > 0:
				first.Align = scene.Start
			case way.x < 0:
				first.Align = scene.End
			}
			joined := first.At.Y // the line that is next to the point
			if way.y > 0 {
				first.At.Y += ascent
				joined = first.At.Y
			} else {
				first.At.Y -= further
			}
			texts := make([]scene.Text, len(lines))
			free := true
			for i, words := range lines {
				texts[i] = first
				texts[i].Words, texts[i].At.Y = words, first.At.Y+scene.Leading(smallSize)*float64(i)
				box := texts[i].Box()
				free = free && a.box.Holds(box) && a.s.Free(box.Grow(1)) && !a.crossed(box)
			}
			end := joined - ascent/2 + descent/2
			switch {
			case way.x == 0 && way.y < 0:
				end = joined + descent + 1
			case way.x == 0:
				end = joined - ascent - 1
			}
			leader := scene.Line(p, scene.Point{X: first.At.X, Y: end}, faint())
			if !free || n > 0 && a.written(leader) {
				continue
			}
			if n > 0 {
				a.s.Add(leader)
			}
			for _, t := range texts {
				a.s.Write(t)
			}
			return
		}
	}
}

// written reports whether a line passes through words.
func (a *axes) written(line scene.Path) bool {
	for _, t := range a.s.Texts {
		if line.Passes(t.Box()) {
			return true
		}
	}
	return false
}

// crossed reports whether a dot or a line of the chart itself, or one that joins a name to its dot, passes through a
// box.
func (a *axes) crossed(b scene.Box) bool {
	for _, m := range a.s.Paths {
		switch m := m.(type) {
		case scene.Disc:
			if (scene.Box{X: m.At.X - m.R, Y: m.At.Y - m.R, W: 2 * m.R, H: 2 * m.R}).Overlaps(b) {
				return true
			}
		case scene.Path:
			if (m.Pen.Ink == chartInk || m.Pen == faint()) && m.Passes(b) {
				return true
			}
		}
	}
	return false
}

// chartInk is the ink of what a chart shows; its frame has others.
const chartInk = scene.Blue
