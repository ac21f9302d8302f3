// Package wiring knows which cable and which fuse or breaker may serve which cable path of a cart, under
// two rule sets: nec (NFPA 70, edition 2020/2023 where table numbers differ) and iec (IEC 60364-5-52,
// 60364-4-43 and 60364-5-54).
//
// A Duty says what one path must do, an Option is one way to build it, Rules.Check judges the two with
// every figure and its source, and Options lists all that serve. The tables and single formulas live in
// the rooms nec, iec and conductor; what is here puts them together.
//
// Assumed: conductors in raceway, cable or bundle (nec), clipped direct for battery paths and in conduit
// for feeder and branches (iec); all design current is continuous; one grounding conductor a run.
//
// Left out: free-air ampacity (NEC table 310.17), the proportional increase of a grounding conductor
// beside conductors enlarged for voltage drop (NEC 250.122(B)), listed 100 % rated assemblies, tap rules,
// short-circuit withstand of the cable itself (IEC 60364-4-43 clause 434), reactance, and solar paths.
// A figure from here is a check, not a permission: local code and a licensed electrician decide.
package wiring

import "cartwright/scenarios"

// Duty is what one cable path must do.
type Duty struct {
	Kind scenarios.RunKind
	Name string // the circuit of a branch, else ""
	AC   bool   // alternating current: the device's ac ratings count

	DesignA  float64 // amperes carried without end
	NominalV float64 // volts the drop is a share of: bus nominal, or 120, 230 or 240
	DeviceV  float64 // volts the device must stand: bus high, or the ac volts
	Poles    int     // least poles of the device

	Conductors int  // of one set, beside the ground
	Ground     bool // a grounding conductor goes along

	LengthM   float64 // one way
	AmbientC  float64
	Bundled   int     // current-carrying conductors in the bundle
	TerminalC float64 // rating of the terminals; 0: not stated, by rule
	Drop      float64 // largest voltage drop, 0..1 of NominalV

	OwnBreakerA float64 // > 0: no device is bought, this rating takes its place
	DeviceA     float64 // branch: the device rating asked for; else 0
}

// LineM returns the metres of line conductor to buy for the path, built with so many parallel sets.
func (d Duty) LineM(sets int) float64 { return float64(d.Conductors*sets) * d.LengthM }

// LineEnds returns how many crimped ends the line conductors have: two each.
func (d Duty) LineEnds(sets int) int { return endsEach * d.Conductors * sets }

// GroundM returns the metres of grounding conductor to buy: one conductor however many sets.
func (d Duty) GroundM() float64 {
	if !d.Ground {
		return 0
	}
	return d.LengthM
}

// GroundEnds returns how many crimped ends the grounding conductor has.
func (d Duty) GroundEnds() int {
	if !d.Ground {
		return 0
	}
	return endsEach
}

// endsEach is how many ends a conductor has.
const endsEach = 2
