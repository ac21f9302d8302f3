package audit

import (
	"strings"

	"cartwright/catalog"
	"cartwright/optimize/wiring/iec"
	"cartwright/scenarios"
)

// iecRules is IEC 60364: copper and areas in mm2.
type iecRules struct{}

// iecClauses are from memory, except 60364-4-43 clause 433.1, 60364-5-52, 60364-5-54 and 60228.
var iecClauses = clauses{
	present:      "IEC 60364-4-43 clause 431, 60364-5-52",
	green:        "IEC 60445: green-and-yellow for protective conductors only",
	rating:       iec.OverloadSource.Source,
	standard:     "IEC 60898-1, 60269-1 and -2",
	voltage:      "IEC 60364-5-53 clause 530",
	poles:        "both hots of 240 V, and both poles of modules, must open; common practice, no source",
	interrupting: "IEC 60364-4-43 clause 434.5.1",
	class:        "IEC 60269-1: a fuse of partial range protects against short circuits only",
	cable:        iec.AmpacitySource.Source,
	sets:         iec.ParallelSource.Source,
	drop:         "IEC 60364-5-52 clause 525, IEC 60228:2004 table 3 at 70 C",
	ground:       iec.GroundSource.Source,
}

func (iecRules) clauses() *clauses { return &iecClauses }

// requiredA is I_B itself: there is no counterpart of the NEC's 125 %.
func (iecRules) requiredA(t *task) float64 { return t.designA }

const copper = "copper"

// methodOf returns the reference method: direct current clipped direct, alternating current in conduit.
func methodOf(t *task) iec.Method {
	if t.ac {
		return iec.MethodB1
	}
	return iec.MethodC
}

func (iecRules) listed(w *lay) (ohmPerM float64, ok bool) {
	insulation, _ := iec.InsulationOf(w.cable.InsulationC)
	if _, ok = iec.Ampacity(w.cable.Size, insulation, methodOf(w.task)); !ok || w.cable.Material != copper {
		return 0, false
	}
	return iec.ResistancePerM(w.cable.Size)
}

func (iecRules) parallel(w *lay) bool { return iec.ParallelAllowed(w.cable.Size) }

// capacityA returns I_z of all sets, for the ambient and the circuits bundled; each set is a circuit.
func (iecRules) capacityA(w *lay) float64 {
	insulation, _ := iec.InsulationOf(w.cable.InsulationC)
	amps, _ := iec.Ampacity(w.cable.Size, insulation, methodOf(w.task))
	ambient, _ := iec.AmbientFactor(w.ambientC, insulation)                 // 0 where it is too hot
	grouping, _ := iec.GroupingFactor(max(iec.Circuits(w.bundled), w.sets)) // 0 where the group is too large
	return float64(w.sets) * amps * ambient * grouping
}

// hotTerminalC is the least terminal temperature with which a conductor may run at 90 °C; else it may at 70 °C.
const hotTerminalC = 90

func (i iecRules) protects(r *ruling, w *lay, g *guard) float64 {
	capacity := i.capacityA(w)
	if g.terminalC < hotTerminalC {
		amps, _ := iec.Ampacity(w.cable.Size, iec.PVC, methodOf(w.task))
		r.least("terminal ampacity", float64(w.sets)*amps, w.designA, "A", "IEC 60364-5-52:2009 table 52.1 and clause 523.1, from memory; IEC 60947-1, from memory")
	}
	r.least("corrected ampacity", capacity, w.designA, "A", "IEC 60364-5-52:2009 tables B.52.2, B.52.3, B.52.14 and B.52.17")
	r.most("cable protected", g.ratingA, capacity, "A", iec.OverloadSource.Source)
	if !g.breaker {
		r.most("fuse overload", fusingFactor(g)*g.ratingA, overload*capacity, "A", iec.OverloadSource.Source)
	}
	return capacity
}

// overload is the multiple of a cable's capacity at which its device must operate at the latest: IEC 60364-4-43 clause
// 433.1, I_2 <= 1.45 I_z.
const overload = 1.45

// fusingFactor returns at how many times its rating a fuse is sure to operate: gPV at 1.45 (IEC 60269-6), any
// other by gG's (IEC 60269-1).
func fusingFactor(g *guard) float64 {
	if strings.EqualFold(g.class, "gPV") {
		return overload
	}
	return iec.FuseFactor(g.ratingA)
}

func (iecRules) groundListed(ground *catalog.Cable) bool {
	_, listed := iec.ResistancePerM(ground.Size)
	return listed && ground.Material == copper
}

// groundMM2 goes by the line area of all sets together; for the bond by that of the largest main.
func (iecRules) groundMM2(w *lay, _ *guard, ground *catalog.Cable) (mm2 float64, ok bool) {
	if w.kind == scenarios.RunBond {
		return iec.GroundAreaMM2(w.groundLine), ground.Material == copper
	}
	return iec.GroundAreaMM2(float64(w.sets) * w.cable.Size.AreaMM2()), ground.Material == copper
}
