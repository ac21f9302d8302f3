package audit

import (
	"fmt"
	"math"

	"cartwright/optimize/chassis"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

const ruleSetDown = "where modules stand"

// setDownRule is about the places that chassis gives the modules, which drawings show.
var setDownRule = Rule{ruleSetDown, "", "every module has a place: upright, within the shelf, a gap apart, on the shelf or on one of its kind; their weight is in the middle of depth and length, as far as there is room", "plane geometry; the balance assumes it"}

// setDown checks whether the modules of a shelf can stand where chassis puts them. It uses nothing of how chassis finds
// the places, only what a person sees who looks at the shelf.
func (a *auditor) setDown(sh *scenarios.Shelf) (faults []string) {
	var sets []chassis.Set
	modules, wanted := 0, map[string]int{}
	for _, stated := range a.p.Shelves {
		for _, m := range stated.Batteries {
			if b := a.stock.batteries[m.Part]; b != nil && m.Modules > 0 && stated.Shelf == sh.Name {
				if modules += m.Modules; m.Modules > mostSetDown || modules > mostSetDown {
					return []string{fmt.Sprintf("%s: more than %d modules", sh.Name, mostSetDown)}
				}
				sets = append(sets, chassis.Set{Battery: b, Modules: m.Modules})
				wanted[b.ID] += m.Modules
			}
		}
	}
	all := a.stand(sh, sets)
	for _, set := range sets {
		n := 0
		for i := range all {
			if all[i].Battery == set.Battery {
				n++
			}
		}
		if n != wanted[set.Battery.ID] {
			faults = append(faults, fmt.Sprintf("%s: %d of %d %s have a place", sh.Name, n, wanted[set.Battery.ID], set.Battery.ID))
		}
	}
	for i := range all {
		if words := misplaced(sh, all, i); words != "" {
			faults = append(faults, sh.Name+": "+all[i].Battery.ID+" "+words)
		}
	}
	if !amidst(sh, all) {
		faults = append(faults, sh.Name+": the weight could be nearer to the middle")
	}
	return faults
}

// mostSetDown is more modules than any shelf holds: a plan may claim any number.
const mostSetDown = 1000

// misplaced says what is wrong with the place of one module, "" for nothing.
func misplaced(sh *scenarios.Shelf, all []chassis.Standing, i int) string {
	m := &all[i]
	b := m.Battery
	switch {
	case m.HighM != b.HeightM, math.Min(m.LengthM, m.DepthM) != math.Min(b.LengthM, b.WidthM), math.Max(m.LengthM, m.DepthM) != math.Max(b.LengthM, b.WidthM):
		return "is drawn in another size"
	case !within(m.AlongM, m.LengthM, sh.LengthM) || !within(m.AcrossM, m.DepthM, sh.DepthM) || !within(m.UpM, m.HighM, sh.ClearHeightM):
		return "reaches beyond the shelf"
	}
	held := m.UpM == 0
	for k := range all[:i] {
		o := &all[k]
		// How far two are apart along, across and upwards; below 0 where they are side by side or above each other.
		along := math.Max(o.AlongM-(m.AlongM+m.LengthM), m.AlongM-(o.AlongM+o.LengthM))
		across := math.Max(o.AcrossM-(m.AcrossM+m.DepthM), m.AcrossM-(o.AcrossM+o.DepthM))
		up := math.Max(o.UpM-(m.UpM+m.HighM), m.UpM-(o.UpM+o.HighM))
		if math.Max(along, across) >= sh.GapM-hairM {
			continue
		}
		if up < -hairM {
			return "stands in, or too near, another module"
		}
		// One above another: it stands on it, and does not reach over its edge.
		if o.Battery != b || math.Abs(o.AlongM-m.AlongM) > hairM || math.Abs(o.AcrossM-m.AcrossM) > hairM {
			return "stands across another module"
		}
		held = held || math.Abs(m.UpM-(o.UpM+o.HighM)) <= hairM
	}
	if !held {
		return "hangs in the air"
	}
	return ""
}

// hairM is how far sums of lengths may be off by rounding: a nanometre.
const hairM = 1e-9

// within reports whether something that begins at a place and is so long is within a room.
func within(at, long, room float64) bool { return at >= -hairM && plan.AtMost(at+long, room) }

// amidst reports whether the weight is in the middle of the length, or as near to it as the shelf's end lets it be, and
// what stands on the shelf itself in the middle of the depth.
func amidst(sh *scenarios.Shelf, all []chassis.Standing) bool {
	if len(all) == 0 {
		return true
	}
	kg, alongKgM, acrossM, first, last := 0.0, 0.0, 0.0, math.Inf(1), math.Inf(-1)
	for i := range all {
		m := &all[i]
		kg += m.Battery.MassKg
		alongKgM += m.Battery.MassKg * (m.AlongM + m.LengthM/2 - sh.LengthM/2)
		first, last = math.Min(first, m.AlongM), math.Max(last, m.AlongM+m.LengthM)
		if m.UpM == 0 {
			acrossM += m.AcrossM + m.DepthM/2 - sh.DepthM/2
		}
	}
	off := 0.0 // modules may weigh nothing
	if kg > 0 {
		off = alongKgM / kg
	}
	atEnd := off > 0 && first <= hairM || off < 0 && last >= sh.LengthM-hairM
	return math.Abs(acrossM) <= hairM*float64(len(all)) && (math.Abs(off) <= hairM || atEnd)
}
