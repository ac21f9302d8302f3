package symbol

import (
	"strings"
	"testing"

	"cartwright/cmd/cartwright/picture/scene"
)

func TestEverySymbolSaysItsSourceAndKeepsItsRoom(t *testing.T) {
	for _, standard := range []Standard{IEC, IEEE} {
		for _, g := range All(standard) {
			s := &scene.Scene{W: 100, H: 100}
			g.Put(s, scene.Point{X: 50, Y: 50})
			if e := s.Extent(); !(scene.Box{X: 20, Y: 20, W: 60, H: 60}).Holds(e) || e.W == 0 {
				t.Errorf("%s, %s: it takes %+v", standard, g.Name, e)
			}
			if g.Name == "" || !strings.ContainsAny(g.Source, "0123456789") {
				t.Errorf("%s: %q has the source %q", standard, g.Name, g.Source)
			}
		}
	}
}

// What the two standards draw differently must not be drawn alike.
func TestTheStandardsDiffer(t *testing.T) {
	for _, of := range []func(Standard) Symbol{Fuse, Breaker, Disconnect, Shunt, Outlet, Inlet, Module, Ground} {
		iec, ieee := of(IEC), of(IEEE)
		a, b := &scene.Scene{W: 100, H: 100}, &scene.Scene{W: 100, H: 100}
		iec.Put(a, scene.Point{X: 50, Y: 50})
		ieee.Put(b, scene.Point{X: 50, Y: 50})
		if string(a.SVG()) == string(b.SVG()) {
			t.Errorf("%s and %s look alike", iec.Source, ieee.Source)
		}
	}
}
