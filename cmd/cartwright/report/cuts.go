package report

import (
	"fmt"
	"strings"

	"cartwright/catalog"
	"cartwright/cmd/cartwright/picture/harness"
	"cartwright/cmd/cartwright/picture/told"
	"cartwright/scenarios"
)

// cutList is what to cut from one kind of cable.
type cutList struct {
	Cable, Size string
	Pieces      []cutPiece
	Length      string // of all together
	Ends        int
}

// cutPiece is a number of equal pieces.
type cutPiece struct {
	Count       int
	Length, For string
}

// cuts lists what to cut, cable by cable.
func (r *Report) cuts(cables []harness.Cable, u told.Units) []cutList {
	var list []cutList
	sum := 0.0
	for _, c := range harness.Cuts(cables) {
		if len(list) == 0 || list[len(list)-1].Cable != c.Of {
			list, sum = append(list, cutList{Cable: c.Of, Size: r.size(c.Of)}), 0
		}
		last := &list[len(list)-1]
		last.Pieces = append(last.Pieces, cutPiece{Count: c.Count, Length: u.Cut(c.LengthM), For: strings.Join(c.For, ", ")})
		sum += c.LengthM * float64(c.Count)
		last.Length, last.Ends = u.Cut(sum), last.Ends+2*c.Count
	}
	return list
}

// conduitPieces are equal pieces of conduit, with a fitting at each end.
type conduitPieces struct {
	Count                int
	Conduit, Length, For string
}

// conduits words what to cut of conduit.
func conduits(cables []harness.Cable, u told.Units) []conduitPieces {
	var list []conduitPieces
	for _, c := range harness.Conduits(cables) {
		list = append(list, conduitPieces{c.Count, c.Of, u.Cut(c.LengthM), strings.Join(c.For, ", ")})
	}
	return list
}

// route is where one cable goes.
type route struct{ Tag, From, To, Device string }

// routes lists the cables with what they join and what protects them.
func routes(cables []harness.Cable) []route {
	var list []route
	for _, c := range cables {
		x := route{Tag: c.Tag, From: c.From, To: c.To}
		switch r := c.Run; {
		case r.Device != "":
			x.Device = told.Amps(r.DeviceA) + ", " + r.Device
			if r.Devices == 2 {
				x.Device += ", one at each end"
			}
		case r.OwnDevice:
			x.Device = told.Amps(r.DeviceA) + ", the battery's own"
		case r.DeviceA > 0:
			x.Device = told.Amps(r.DeviceA) + ", the inverter's own"
		}
		list = append(list, x)
	}
	return list
}

// size words a cable's size and what it is made of.
func (r *Report) size(id string) string {
	for i := range r.Catalog.Cables {
		if c := &r.Catalog.Cables[i]; c.ID == id {
			words := fmt.Sprintf("%s %s, %s °C", size(c), c.Material, told.Number(c.InsulationC, 0))
			if c.GroundOnly {
				words += ", green: ground only"
			}
			return words
		}
	}
	return ""
}

func size(c *catalog.Cable) string { return strings.Replace(string(c.Size), "mm2", "mm²", 1) }

// colours says in which colours conductors are, by the rules of the scenario. From memory: NEC 200.6 and 250.119,
// IEC 60445; what is marked so is common practice.
func (r *Report) colours() string {
	if r.Scenario.Rules == scenarios.IEC {
		return "Colours: L brown, N blue, PE green and yellow, + red, - white (IEC 60445)."
	}
	return "Colours: N white or grey (NEC 200.6), G green or bare (NEC 250.119); L or L1 black, L2 red, + red and - black (common practice)."
}

// label is stuck on one end of a conductor.
type label struct{ Tag, Wire, Route, What string }

// labels returns two labels for each piece, one for each end.
func (r *Report) labels(cables []harness.Cable, u told.Units) []label {
	var list []label
	for _, c := range cables {
		for _, p := range c.Pieces {
			what := u.Cut(p.LengthM)
			for i := range r.Catalog.Cables {
				if x := &r.Catalog.Cables[i]; x.ID == p.Cable {
					what = size(x) + ", " + what
				}
			}
			if c.Run.DeviceA > 0 {
				what += ", " + told.Amps(c.Run.DeviceA)
			}
			one := label{Tag: c.Tag, Wire: p.Name, Route: c.From + " → " + c.To, What: what}
			list = append(list, one, one)
		}
	}
	return list
}

// framePiece is a piece of the frame.
type framePiece struct {
	Count                int
	Section, Length, Sum string
}

// frame lists the pieces of the frame, where the scenario states them.
func (r *Report) frame(u told.Units) []framePiece {
	var list []framePiece
	for _, p := range r.Scenario.Cart.Pieces {
		list = append(list, framePiece{Count: p.Count, Section: p.Section, Length: u.Length(p.LengthM), Sum: u.Length(p.LengthM * float64(p.Count))})
	}
	return list
}
