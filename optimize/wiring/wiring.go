// Package wiring knows which cable and which fuse or breaker may serve which cable path of a cart, under
// two rule sets: nec (NFPA 70, edition 2020/2023 where table numbers differ) and iec (IEC 60364-5-52,
// 60364-4-43 and 60364-5-54).
//
// A Duty says what one path must do, an Option is one way to build it, Rules.Check judges an option for a duty with
// every figure and its source, and Options lists all that serve. The tables and single formulas live in
// the rooms nec, iec, conductor and raceway; what is here puts them together.
//
// Assumed: conductors in raceway, cable or bundle (nec), clipped direct for direct-current paths and in conduit
// for feeders, branches and inlets (iec); all design current is continuous; one grounding conductor per run.
//
// Left out: free-air ampacity (NEC table 310.17), listed 100 % rated assemblies, tap rules,
// short-circuit withstand of the cable itself (IEC 60364-4-43 clause 434) and reactance.
// A figure from here is a check, not a permission: local code and a licensed electrician decide.
package wiring

import "cartwright/scenarios"

// Duty is what one cable path must do.
type Duty struct {
	Kind scenarios.RunKind
	Name string // the circuit of a branch, else ""
	AC   bool   // alternating current: the device's ac ratings count

	DesignA  float64 // amperes carried continuously
	DropA    float64 // amperes the voltage drop is computed for
	NominalV float64 // volts the drop is a share of: bus nominal, 120, 230 or 240, or a string of modules at full power
	DeviceV  float64 // least voltage rating of the device: bus high, the ac volts, or the modules' in the cold
	Poles    int     // least poles of the device

	Conductors int  // of one set, without the ground
	Ground     bool // a grounding conductor goes along
	Array      bool // from solar modules: the ground does not grow with conductors enlarged for drop (NEC 690.45)
	TwoWay     bool // current runs both ways: no polarised breaker
	Fine       bool // only cable of fine strand

	LengthM   float64 // one way
	BoughtM   float64 // of each conductor, with slack and in whole steps
	Links     int     // between the modules of a string, one conductor each
	LinkM     float64 // length of a link
	LinkBuyM  float64 // length bought for a link
	AmbientC  float64
	Bundled   int     // current-carrying conductors in the bundle
	TerminalC float64 // rating of the terminals; 0: not stated, so the rule set decides
	Drop      float64 // largest voltage drop, 0..1 of NominalV

	OwnBreakerA float64 // > 0: no device is bought; the inverter's own breaker of this rating takes its place
	DeviceA     float64 // the stated device rating of a circuit or inlet; else 0
	MostDeviceA float64 // the largest device the maker of battery or module allows; 0: any
	// Devices is how many devices protect one path: 2 where its cable is fed from both ends.
	Devices int
	// BuiltInA is the rating of a device at the battery's own terminal that may serve like a breaker, and BuiltInBreaksA
	// the fault current it breaks; 0: there is none.
	BuiltInA, BuiltInBreaksA float64

	Conduit string // the type asked for; "": none
}

// LineM returns the metres of line conductor to buy for the path built with so many parallel sets, links included.
func (d Duty) LineM(sets int) float64 {
	return float64(sets) * (float64(d.Conductors)*d.BoughtM + float64(d.Links)*d.LinkBuyM)
}

// LineEnds returns how many crimped ends the line conductors and links have: two each.
func (d Duty) LineEnds(sets int) int { return endsEach * (d.Conductors + d.Links) * sets }

// WayM returns the metres of conductor the current runs through, there and back, links included.
func (d Duty) WayM() float64 { return 2*d.LengthM + float64(d.Links)*d.LinkM }

// GroundM returns the metres of grounding conductor to buy: one conductor, however many sets.
func (d Duty) GroundM() float64 {
	if !d.Ground {
		return 0
	}
	return d.BoughtM
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
