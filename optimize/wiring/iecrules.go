package wiring

import (
	"cartwright/catalog"
	"cartwright/optimize/wiring/iec"
	"cartwright/scenarios"
)

// iecRules is IEC 60364.
type iecRules struct{}

var iecStandard = standardOf(scenarios.IEC)

// iecClauses are the sources of the shared checks. All but 433.1 are from memory.
var iecClauses = clauses{
	present:      "IEC 60364-4-43 clause 431, 60364-5-52",
	green:        "IEC 60445: green-and-yellow for protective conductors only",
	rating:       iec.OverloadSource.Source,
	voltage:      "IEC 60364-5-53 clause 530",
	poles:        "both hots of 240 V must open; common practice, no source",
	interrupting: "IEC 60364-4-43 clause 434.5.1",
	class:        "IEC 60269-1: a fuse of partial range protects against short circuits only",
	drop:         "IEC 60364-5-52 clause 525, IEC 60228:2004 table 3 at 70 C",
	ground:       iec.GroundSource.Source,
	bothEnds:     "IEC 60364-4-43 clause 433.2.2",
}

func (iecRules) clauses() *clauses { return &iecClauses }

// Check implements Rules.
func (r iecRules) Check(d Duty, o Option, faultA float64) Result { return check(r, &d, o, faultA) }

// requiredA is I_B itself: there is no counterpart of the NEC's 125 %.
func (iecRules) requiredA(d *Duty) float64 { return d.DesignA }

func (r iecRules) ratingChecks(checks []Check, d *Duty, p protector) []Check {
	source := iec.FuseRatingsSource.Source
	if p.breaker {
		source = iec.BreakerRatingsSource.Source
	}
	return limitCheck(append(checks,
		ratingCheck(r, d, p),
		standardCheck(iecStandard.of(p), p, source)), d, p)
}

// copper is the only material of the iec tables, as the catalogue spells it.
const copper = "copper"

// method returns the reference method of a path: direct-current paths are clipped direct, feeders, branches and inlets
// run in conduit.
func method(d *Duty) iec.Method {
	if d.AC {
		return iec.MethodB1
	}
	return iec.MethodC
}

func (iecRules) path(checks []Check, d *Duty, cable *catalog.Cable, sets int) ([]Check, path) {
	insulation, _ := iec.InsulationOf(cable.InsulationC) // where there is none, Ampacity lists nothing
	amps, listed := iec.Ampacity(cable.Size, insulation, method(d))
	if !listed || cable.Material != copper {
		return append(checks, least("cable listed", 0, 1, "", iec.AmpacitySource.Source)), path{}
	}
	ohm, _ := iec.ResistancePerM(cable.Size)                              // every size of B.52.2 and B.52.3 is in IEC 60228
	ambient, _ := iec.AmbientFactor(d.AmbientC, insulation)               // 0 where it is too hot
	grouping, _ := iec.GroupingFactor(max(iec.Circuits(d.Bundled), sets)) // 0 where the group is too large
	w := path{cable: cable, sets: sets, dropPct: dropPct(d, sets, ohm),
		insulationA: float64(sets) * amps * ambient * grouping}
	return append(checks,
		setsCheck(sets, iec.ParallelAllowed(cable.Size), iec.ParallelSource.Source),
		most("voltage drop", w.dropPct, 100*d.Drop, "%", iecClauses.drop)), w
}

// hotTerminalC is the least terminal temperature with which a conductor may run at 90 C; else it may at 70 C, like PVC.
const hotTerminalC = 90

func (iecRules) pairChecks(checks []Check, d *Duty, w *path, p protector) ([]Check, float64) {
	if p.terminalC < hotTerminalC {
		amps, _ := iec.Ampacity(w.cable.Size, iec.PVC, method(d))
		checks = append(checks, least("terminal ampacity", float64(w.sets)*amps, d.DesignA, "A", "IEC 60364-5-52:2009 table 52.1 and clause 523.1, from memory"))
	}
	checks = append(checks,
		least("corrected ampacity", w.insulationA, d.DesignA, "A", "IEC 60364-5-52:2009 tables B.52.2, B.52.3, B.52.14 and B.52.17"),
		most("cable protected", p.ratingA, w.insulationA, "A", iec.OverloadSource.Source))
	if !p.breaker { // a breaker's I_2 of 1.45 I_n follows from I_n <= I_z
		checks = append(checks, most("fuse overload", iec.FuseFactorOf(p.class, p.ratingA)*p.ratingA,
			iec.OverloadA(w.insulationA), "A", iec.OverloadSource.Source))
	}
	return checks, w.insulationA
}

// groundListed admits copper of a listed area.
func (iecRules) groundListed(ground *catalog.Cable) bool {
	_, listed := iec.ResistancePerM(ground.Size)
	return listed && ground.Material == copper
}

// groundMM2 goes by the line area of all sets together.
func (iecRules) groundMM2(_ *Duty, w *path, _ protector, material string) (mm2 float64, ok bool) {
	return iec.GroundAreaMM2(float64(w.sets) * w.cable.Size.AreaMM2()), material == copper
}
