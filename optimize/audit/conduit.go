package audit

import (
	"math"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// squareInchMM2 is a square inch in mm2, by definition of the inch.
const squareInchMM2 = 25.4 * 25.4

// thhnIn2 is the area of insulated conductors THHN and THWN-2, in square inches: NEC chapter 9 table 5. From
// memory; the worked fill of the Steel Tube Institute (3 x 12, 4 x 10, 8 x 8 AWG = 0.4171 in2) agrees.
var thhnIn2 = map[catalog.Size]float64{
	"14 AWG": 0.0097, "12 AWG": 0.0133, "10 AWG": 0.0211, "8 AWG": 0.0366, "6 AWG": 0.0507, "4 AWG": 0.0824,
	"3 AWG": 0.0973, "2 AWG": 0.1158, "1 AWG": 0.1562, "1/0 AWG": 0.1855, "2/0 AWG": 0.2223, "3/0 AWG": 0.2679,
	"4/0 AWG": 0.3237, "250 kcmil": 0.3970, "300 kcmil": 0.4608, "350 kcmil": 0.5242, "400 kcmil": 0.5863,
	"500 kcmil": 0.7073,
}

// filledMM2 returns the area that a conductor takes in a conduit; ok is false where it is not known.
func filledMM2(cable *catalog.Cable) (mm2 float64, ok bool) {
	if cable.OuterM > 0 {
		mm := cable.OuterM * 1000
		return math.Pi / 4 * mm * mm, true
	}
	in2, ok := thhnIn2[cable.Size]
	return in2 * squareInchMM2, ok
}

// fillShare returns the share of a conduit that so many conductors may fill: NEC chapter 9 table 1. Under iec always
// 40 %: common practice, no source.
func fillShare(rules scenarios.Rules, conductors int) float64 {
	switch {
	case rules == scenarios.IEC || conductors > 2:
		return 0.40
	case conductors == 2:
		return 0.31
	}
	return 0.53
}

// judgeConduit adds the checks of a path's conduit, or that it has none where none is asked for.
func (a *auditor) judgeConduit(r *ruling, t *task, run *plan.Run) {
	const source = "NEC chapter 9 tables 1, 4 and 5; under iec 40 %: " + practice
	pipe := a.stock.conduits[run.Conduit]
	right := run.Conduit == "" && t.conduit == "" || pipe != nil && t.conduit != "" && pipe.Type == t.conduit
	r.same("conduit present", answered(right), 1, "", fromScenario)
	if !right || pipe == nil {
		return
	}
	filled, conductors := 0.0, 0
	add := func(id string, n int) {
		cable := a.stock.cables[id]
		if cable == nil || n == 0 {
			return
		}
		mm2, ok := filledMM2(cable)
		if !ok {
			mm2 = math.Inf(1)
		}
		filled += float64(n) * mm2
		conductors += n
	}
	add(run.Cable, run.Sets*run.Conductors)
	if run.Ground != "" {
		add(run.Ground, 1)
	}
	r.most("conduit fill", filled, fillShare(a.s.Rules, conductors)*pipe.InsideMM2, "mm2", source)
}
