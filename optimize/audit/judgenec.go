package audit

import (
	"math"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/optimize/wiring/nec"
	"cartwright/scenarios"
	"cartwright/scenarios/ratings"
)

// necRules is NFPA 70.
type necRules struct{}

// necClauses are from memory, except 110.9, 240.6(A), 250.122, 310.16 and 706.31(C).
var necClauses = clauses{
	present:      "NEC 240.4, 310.1",
	green:        "NEC 250.119: green for grounding only",
	rating:       "NEC 210.20(A), 215.3, 690.8(B)",
	standard:     nec.StandardSource.Source,
	voltage:      "NEC 240.60(A), 240.85, 706.31(C)",
	poles:        "NEC 210.4(B), 240.15(B), 690.13",
	interrupting: "NEC 110.9, 706.31(C)",
	class:        "NEC 240.4: a fuse for short circuits only is not overcurrent protection; IEC 60269-1",
	listed:       "NEC 110.2, 110.3(C)",
	cable:        nec.AmpacitySource.Source,
	sets:         nec.ParallelSource.Source,
	drop:         "NEC 210.19(A) informational note, chapter 9 table 8",
	ground:       "NEC table 250.122, 250.122(A), 250.122(B)",
}

func (necRules) clauses() *clauses { return &necClauses }

// requiredA is 125 % of the design current; a path whose device is stated carries that rating, which already includes
// the 125 % for its loads.
func (necRules) requiredA(t *task) float64 {
	if t.exactA > 0 {
		return t.designA
	}
	return continuous * t.designA
}

func (necRules) listed(w *lay) (ohmPerM float64, ok bool) {
	column, _ := nec.InsulationColumn(w.cable.InsulationC)
	if _, ok = nec.Ampacity(w.cable.Material, w.cable.Size, column); !ok {
		return 0, false
	}
	return nec.ResistancePerM(w.cable.Material, w.cable.Size)
}

func (necRules) parallel(w *lay) bool { return nec.ParallelAllowed(w.cable.Size) }

// insulationA returns the ampacity of all sets by the insulation, for the ambient and the bundle. Each
// conductor of a parallel set counts in the bundle: NEC 310.15(C)(1).
func (necRules) insulationA(w *lay) float64 {
	column, _ := nec.InsulationColumn(w.cable.InsulationC)
	amps, _ := nec.Ampacity(w.cable.Material, w.cable.Size, column)
	ambient, _ := nec.AmbientFactor(w.ambientC, column) // 0 where it is too hot
	return float64(w.sets) * amps * ambient * nec.BundlingFactor(max(w.bundled, w.sets*w.conductors))
}

// terminalA returns the ampacity of all sets at the temperature that the terminals allow.
func (necRules) terminalA(w *lay, g *guard) float64 {
	column, ok := nec.TerminalColumn(w.terminalC, g.ratingA, g.terminalC, w.cable.InsulationC)
	if !ok {
		return 0
	}
	amps, _ := nec.Ampacity(w.cable.Material, w.cable.Size, column)
	return float64(w.sets) * amps
}

// nextSizeMostA is the largest device rating that NEC 240.4(B) allows above the ampacity.
const nextSizeMostA = 800

// largestA returns the rating of the largest device for an ampacity: the ampacity itself, or, if that is not a rating of
// 240.6(A), the next one above, up to 800 A, for fuses and breakers alike. A path whose device is stated takes none
// above its ampacity.
func (necRules) largestA(w *lay, ampacityA float64) float64 {
	if w.exactA > 0 {
		return ampacityA
	}
	list := ratings.Standard(string(scenarios.NEC), fuseType) // includes every rating of breakers
	below, above := ratings.Around(list, ampacityA)
	for _, near := range []float64{below, above} {
		if plan.AtLeast(near, ampacityA) && plan.AtMost(near, ampacityA) {
			return ampacityA
		}
	}
	if above > ampacityA && above <= nextSizeMostA {
		return above
	}
	return ampacityA
}

func (n necRules) protects(r *ruling, w *lay, g *guard) float64 {
	terminal := n.terminalA(w, g)
	allowed := math.Min(terminal, n.insulationA(w))
	r.least("terminal ampacity", terminal, n.requiredA(w.task), "A", nec.TerminalSource.Source)
	r.least("corrected ampacity", allowed, w.designA, "A", "NEC 310.15, tables 310.16, 310.15(B)(1) and 310.15(C)(1)")
	r.most("cable protected", g.ratingA, n.largestA(w, allowed), "A", "NEC 240.4(B) and (C), 240.6(A)")
	if small, ok := nec.SmallConductorA(w.cable.Material, w.cable.Size); ok {
		r.most("small conductor", g.ratingA, small, "A", nec.SmallSource.Source)
	}
	return allowed
}

// necSizes are the sizes of table 310.16, rising.
var necSizes = []catalog.Size{"14 AWG", "12 AWG", "10 AWG", "8 AWG", "6 AWG", "4 AWG", "3 AWG", "2 AWG", "1 AWG",
	"1/0 AWG", "2/0 AWG", "3/0 AWG", "4/0 AWG", "250 kcmil", "300 kcmil", "350 kcmil", "400 kcmil", "500 kcmil"}

// enlarged returns how many times larger the line conductors are than the smallest of their material, insulation and
// number of sets that meets every rule except that of the drop.
func (n necRules) enlarged(w *lay, g *guard) float64 {
	for _, size := range necSizes {
		cable := *w.cable
		cable.Size = size
		smaller := lay{w.task, &cable, w.sets}
		if _, ok := n.listed(&smaller); !ok || w.sets > 1 && !n.parallel(&smaller) {
			continue
		}
		var r ruling
		n.protects(&r, &smaller, g)
		if r.allPassed() {
			return math.Max(1, w.cable.Size.AreaMM2()/size.AreaMM2())
		}
	}
	return 1
}

func (r *ruling) allPassed() bool {
	for _, c := range r.checks {
		if !c.passed {
			return false
		}
	}
	return true
}

func (necRules) groundListed(ground *catalog.Cable) bool {
	_, listed := nec.Ampacity(ground.Material, ground.Size, nec.Col60)
	return listed
}

// groundMM2 goes by table 250.122. It grows with line conductors that are larger than needed (250.122(B)), except on a
// solar run (690.45), and need never be larger than line conductors of its own material (250.122(A)).
func (n necRules) groundMM2(w *lay, g *guard, ground *catalog.Cable) (mm2 float64, ok bool) {
	if w.kind == scenarios.RunBond {
		size, ok := nec.GroundSize(w.groundDevice, ground.Material)
		return size.AreaMM2(), ok
	}
	size, ok := nec.GroundSize(g.ratingA, ground.Material)
	if !ok {
		return 0, false
	}
	mm2 = size.AreaMM2()
	if w.array == nil {
		mm2 *= n.enlarged(w, g)
	}
	if ground.Material == w.cable.Material {
		mm2 = math.Min(mm2, w.cable.Size.AreaMM2())
	}
	return mm2, true
}
