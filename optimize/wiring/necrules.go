package wiring

import (
	"math"

	"cartwright/catalog"
	"cartwright/optimize/wiring/nec"
	"cartwright/scenarios"
)

// necRules is NFPA 70.
type necRules struct{}

var necStandard = standardOf(scenarios.NEC)

// necClauses are the sources of the shared checks. All but 110.9, 706.31(C) and 250.122 are from memory.
var necClauses = clauses{
	present:      "NEC 240.4, 310.1",
	green:        "NEC 250.119: green for grounding only",
	rating:       "NEC 210.20(A), 215.3",
	voltage:      "NEC 240.60(A), 240.85, 706.31(C)",
	poles:        "NEC 210.4(B), 240.15(B)",
	interrupting: "NEC 110.9, 706.31(C)",
	class:        "NEC 240.4: a fuse for short circuits only is not overcurrent protection; IEC 60269-1",
	listed:       "NEC 110.2, 110.3(C)",
	drop:         "NEC 210.19(A) informational note, chapter 9 table 8",
	ground:       nec.GroundSource.Source + ", 250.122(B)",
	bothEnds:     "NEC 240.21(B)(1)",
}

func (necRules) clauses() *clauses { return &necClauses }

// Check implements Rules.
func (r necRules) Check(d Duty, o Option, faultA float64) Result { return check(r, &d, o, faultA) }

// requiredA is 125 % of the design current; a circuit or an inlet carries its device's rating, which already
// includes the 125 % for its loads.
func (necRules) requiredA(d *Duty) float64 {
	if d.DeviceA > 0 {
		return d.DesignA
	}
	return nec.ContinuousA(d.DesignA)
}

func (r necRules) ratingChecks(checks []Check, d *Duty, p protector) []Check {
	checks = append(checks,
		ratingCheck(r, d, p),
		standardCheck(necStandard.of(p), p, nec.StandardSource.Source))
	return limitCheck(checks, d, p)
}

// limitCheck adds the check that the device is not above the largest that the maker of the battery or module allows.
func limitCheck(checks []Check, d *Duty, p protector) []Check {
	if d.MostDeviceA > 0 {
		checks = append(checks, most("device limit", p.ratingA, d.MostDeviceA, "A", "the maker's limit"))
	}
	return checks
}

// ratingCheck returns the check that the rating is enough for the design current, or is the one stated.
func ratingCheck(r Rules, d *Duty, p protector) Check {
	if d.DeviceA > 0 {
		return same("device rating", p.ratingA, d.DeviceA, "A", "the circuit's stated device")
	}
	return least("device rating", p.ratingA, r.requiredA(d), "A", r.clauses().rating)
}

func (necRules) path(checks []Check, d *Duty, cable *catalog.Cable, sets int) ([]Check, path) {
	column, _ := nec.InsulationColumn(cable.InsulationC) // where there is none, Ampacity lists nothing
	amps, listed := nec.Ampacity(cable.Material, cable.Size, column)
	if !listed {
		return append(checks, least("cable listed", 0, 1, "", nec.AmpacitySource.Source)), path{}
	}
	ohm, _ := nec.ResistancePerM(cable.Material, cable.Size) // every size of table 310.16 is in table 8
	ambient, _ := nec.AmbientFactor(d.AmbientC, column)      // 0 where it is too hot: no ampacity is left
	w := path{cable: cable, sets: sets, dropPct: dropPct(d, sets, ohm),
		insulationA: float64(sets) * amps * ambient * nec.BundlingFactor(max(d.Bundled, sets*d.Conductors))}
	return append(checks,
		setsCheck(sets, nec.ParallelAllowed(cable.Size), nec.ParallelSource.Source),
		most("voltage drop", w.dropPct, 100*d.Drop, "%", necClauses.drop)), w
}

func (r necRules) pairChecks(checks []Check, d *Duty, w *path, p protector) ([]Check, float64) {
	terminalA := 0.0
	if column, ok := nec.TerminalColumn(d.TerminalC, p.ratingA, p.terminalC, w.cable.InsulationC); ok {
		amps, _ := nec.Ampacity(w.cable.Material, w.cable.Size, column) // listed: path looked it up
		terminalA = float64(w.sets) * amps
	}
	allowedA := min(terminalA, w.insulationA)
	largestA := allowedA
	if d.DeviceA == 0 {
		largestA = nec.LargestDeviceA(necStandard.fuse, allowedA) // includes every rating of breakers
	}
	checks = append(checks,
		least("terminal ampacity", terminalA, r.requiredA(d), "A", nec.TerminalSource.Source),
		least("corrected ampacity", allowedA, d.DesignA, "A", "NEC 310.15, tables 310.16, 310.15(B)(1) and 310.15(C)(1)"),
		most("cable protected", p.ratingA, largestA, "A", nec.NextSizeSource.Source))
	if smallA, ok := nec.SmallConductorA(w.cable.Material, w.cable.Size); ok {
		checks = append(checks, most("small conductor", p.ratingA, smallA, "A", nec.SmallSource.Source))
	}
	return checks, allowedA
}

// groundListed admits any conductor of the ampacity table.
func (necRules) groundListed(ground *catalog.Cable) bool {
	_, listed := nec.Ampacity(ground.Material, ground.Size, nec.Col60)
	return listed
}

// groundMM2 goes by table 250.122, and grows with line conductors that are larger than needed, except of an array. It
// is at most the area of the line conductor of one set where both are of the same material.
func (r necRules) groundMM2(d *Duty, w *path, p protector, material string) (mm2 float64, ok bool) {
	size, ok := nec.GroundSize(p.ratingA, material)
	if !ok {
		return 0, false
	}
	mm2 = size.AreaMM2()
	if !d.Array {
		mm2 = nec.EnlargedGroundMM2(mm2, w.cable.Size.AreaMM2(), r.neededSize(d, w, p).AreaMM2())
	}
	if material == w.cable.Material {
		mm2 = min(mm2, w.cable.Size.AreaMM2())
	}
	return mm2, true
}

// neededSize returns the smallest size of table 310.16 that meets every rule except that of the drop, with the same
// material, insulation and number of sets; the path's own size where no smaller one does.
func (r necRules) neededSize(d *Duty, w *path, p protector) catalog.Size {
	dropless := *d
	dropless.Drop = math.Inf(1)
	for _, size := range nec.Sizes() {
		if size == w.cable.Size {
			break
		}
		cable := *w.cable
		cable.Size = size
		var room [mostChecks]Check
		checks, smaller := r.path(room[:0], &dropless, &cable, w.sets)
		if !allPassed(checks) {
			continue
		}
		if checks, _ = r.pairChecks(checks, &dropless, &smaller, p); allPassed(checks) {
			return size
		}
	}
	return w.cable.Size
}

// mostSets is the most parallel sets a path is built with.
const mostSets = 2

// setsCheck returns the check of the number of parallel sets.
func setsCheck(sets int, parallel bool, source string) Check {
	limit := 1.0
	if parallel {
		limit = mostSets
	}
	return most("parallel sets", float64(sets), limit, "", source)
}

// bondNECMM2 goes by table 250.122 and the rating of the device that protects the main.
func bondNECMM2(main Duty, o Option, material string) (mm2 float64, ok bool) {
	rating := main.OwnBreakerA
	if o.Device != nil {
		rating = max(rating, o.Device.RatingA)
	}
	size, ok := nec.GroundSize(rating, material)
	return size.AreaMM2(), ok
}
