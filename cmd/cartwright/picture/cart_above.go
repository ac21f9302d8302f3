package picture

import (
	"cartwright/cmd/cartwright/picture/scene"
)

// fromAbove draws each shelf from above with its modules, side by side as long as there is room, and returns
// the Y below them.
func (q *Subject) fromAbove(s *scene.Scene, k *keys, scale, y float64) float64 {
	x, low := margin, y
	for i := range q.Scenario.Cart.Shelves {
		sh := &q.Scenario.Cart.Shelves[i]
		w, d := sh.LengthM*scale, sh.DepthM*scale
		title := scene.Cut(sh.Name+" from above: "+q.Units.Length(sh.LengthM)+" x "+q.Units.Length(sh.DepthM), smallSize, true, s.W-2*margin)
		wide := max(w, scene.Width(title, smallSize, true))
		if x > margin && x+wide > s.W-margin {
			x, y = margin, low+22
		}
		s.Write(scene.Text{At: scene.Point{X: x, Y: y}, Words: title, Size: smallSize, Bold: true})
		shelf := scene.Box{X: x, Y: y + 7, W: w, H: d}
		s.Add(scene.Rect(shelf, thin(), scene.Shade))
		for _, m := range q.standing(sh) {
			if m.UpM > 0 {
				continue // it stands on one that is drawn
			}
			drawModule(s, k, m.Battery.ID, scene.Box{
				X: shelf.X + m.AlongM*scale, Y: shelf.Bottom() - (m.AcrossM+m.DepthM)*scale, W: m.LengthM * scale, H: m.DepthM * scale,
			})
		}
		low = max(low, shelf.Bottom())
		x += wide + 28
	}
	return low
}
