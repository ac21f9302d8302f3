package picture

import (
	"fmt"
	"math"

	"cartwright/cmd/cartwright/picture/scene"
)

// keys are the letters that stand on things in a drawing, and the list that says what they mean.
type keys struct {
	q       *Subject
	batches []string // battery parts, in the order of the core: A, B, ...
	entries []entry
}

type entry struct{ key, words string }

func newKeys(q *Subject) *keys {
	k := &keys{q: q}
	for _, b := range q.Plan.Core.Batteries {
		k.batches = append(k.batches, b.Part)
	}
	for i, id := range k.batches {
		words := id
		if b := q.battery(id); b != nil {
			words = fmt.Sprintf("%d x %s, %s; %s long, %s wide, %s high, %s each", q.modules(id), id, q.name(id),
				q.Units.Length(b.LengthM), q.Units.Length(b.WidthM), q.Units.Length(b.HeightM), q.Units.Mass(b.MassKg))
		}
		k.entries = append(k.entries, entry{letter(i), words})
	}
	return k
}

// modules returns how many modules of a battery stand on all shelves.
func (q *Subject) modules(part string) int {
	n := 0
	for _, s := range q.Plan.Shelves {
		for _, m := range s.Batteries {
			if m.Part == part {
				n += m.Modules
			}
		}
	}
	return n
}

func letter(i int) string {
	if i < 26 {
		return string(rune('A' + i))
	}
	return letter(i/26-1) + letter(i%26)
}

// battery returns the place of a battery among the kinds on the cart.
func (k *keys) battery(part string) int {
	for i, id := range k.batches {
		if id == part {
			return i
		}
	}
	return 0
}

// add returns the number of a thing, the same for the same words.
func (k *keys) add(words string) string {
	n := 1
	for _, e := range k.entries {
		if e.words == words {
			return e.key
		}
		if e.key[0] >= '0' && e.key[0] <= '9' {
			n++
		}
	}
	key := fmt.Sprint(n)
	k.entries = append(k.entries, entry{key, words})
	return key
}

// list writes what the keys mean in two columns, and returns the Y below it.
func (k *keys) list(s *scene.Scene, y float64) float64 {
	const gap, indent = 24.0, 26.0
	width := (s.W - 2*margin - gap) / 2
	type block struct {
		key   string
		lines []string
	}
	var blocks []block
	total := 0
	for _, e := range k.entries {
		b := block{e.key, scene.Wrap(e.words, smallSize, false, width-indent, 4)}
		blocks = append(blocks, b)
		total += len(b.lines)
	}
	ascent, _ := scene.Rise(smallSize)
	leading, x, at, lowest, used := scene.Leading(smallSize), margin, y+ascent, y, 0
	for i, b := range blocks {
		if x == margin && used*2 >= total && i > 0 {
			x, at = margin+width+gap, y+ascent
		}
		s.Write(scene.Text{At: scene.Point{X: x, Y: at}, Words: b.key, Size: smallSize, Bold: true})
		for _, line := range b.lines {
			s.Write(scene.Text{At: scene.Point{X: x + indent, Y: at}, Words: line, Size: smallSize})
			at += leading
		}
		used += len(b.lines)
		at += 3
		lowest = math.Max(lowest, at-ascent)
	}
	return lowest
}

// mark writes a key beside a thing, as near to it as nothing is written yet.
func mark(s *scene.Scene, near scene.Point, key string) {
	text := scene.Text{At: near, Words: key, Size: smallSize, Bold: true, Align: scene.Middle, Framed: true}
	ascent, descent := scene.Rise(smallSize)
	const step, rings, ways = 9.0, 40, 8
	for n := range rings * ways {
		ring, way := n/ways, n%ways
		sin, cos := math.Sincos(float64(way) * 2 * math.Pi / ways)
		at := scene.Point{X: near.X + step*float64(ring)*cos, Y: near.Y + step*float64(ring)*sin}
		text.At = scene.Point{X: at.X, Y: at.Y + (ascent-descent)/2}
		if box := text.Box(); !s.Free(box) || box.X < 0 || box.Right() > s.W {
			continue
		}
		if ring > 1 {
			s.Add(scene.Line(near, at, faint()), scene.Disc{At: near, R: 1.6, Fill: scene.Black})
		}
		break
	}
	s.Write(text)
}
