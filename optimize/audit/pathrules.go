package audit

import (
	"slices"

	"cartwright/scenarios"
)

const ruleRunKinds = "runs"

// The checks of a cable path that do not depend on the rule set; their names follow the kind of path.
const (
	pathCount      = "count"
	pathLength     = "length"
	pathBought     = "length bought"
	pathConductors = "conductors"
	pathLinks      = "series links"
	pathAlike      = "wired alike"
	pathDevices    = "devices"
	pathOwnDevice  = "own device"
	pathOwnBreaker = "own breaker"
	pathNoGround   = "no ground"
	pathNoLine     = "no line"
	pathFigures    = "figures"
)

// The kinds of cable path, in the order they are listed.
var pathKinds = []scenarios.RunKind{
	scenarios.RunString, scenarios.RunMain, scenarios.RunFeeder, scenarios.RunBranch, scenarios.RunDC,
	scenarios.RunInlet, scenarios.RunSolar, scenarios.RunBond,
}

// Groups of kinds that a check is made for.
var (
	stringRuns = pathKinds[:1]
	reversible = pathKinds[:2] // current runs both ways
	lines      = pathKinds[:7] // all but the bond
	grounded   = []scenarios.RunKind{scenarios.RunFeeder, scenarios.RunBranch, scenarios.RunInlet, scenarios.RunSolar, scenarios.RunBond}
	groundless = []scenarios.RunKind{scenarios.RunString, scenarios.RunMain, scenarios.RunDC}
	byInverter = []scenarios.RunKind{scenarios.RunMain, scenarios.RunFeeder}
	bySun      = []scenarios.RunKind{scenarios.RunSolar}
	bonds      = pathKinds[7:]
)

// pathCheck is a check that is made for some kinds of cable path.
type pathCheck struct {
	Rule
	kinds []scenarios.RunKind
}

var pathChecks = []pathCheck{
	{Rule{pathCount, "", "each is wired once: each string, a main and a feeder for each inverter unit, each circuit, a solar run for each input", fromParts}, pathKinds},
	{Rule{pathLength, "m", "length as in the scenario", fromScenario}, pathKinds},
	{Rule{pathBought, "m", "of each conductor the length with slack is bought, in whole steps", fromScenario}, pathKinds},
	{Rule{pathConductors, "", "battery paths 2; 120 and 230 V 2; 120/240 V 3; 240 V without neutral 2; a bond only the ground", practice}, pathKinds},
	{Rule{pathLinks, "", "a link from each module of a string to the next, of the scenario's length", practice}, stringRuns},
	{Rule{pathAlike, "", "all strings of one battery are wired alike", "current division in parallel branches; " + practice}, stringRuns},
	{Rule{pathDevices, "", "one device; two where a string's cable is fed from both ends; none where the inverter's or the battery's own serves", "NEC 240.21, 240.21(B)(1); IEC 60364-4-43 clause 433.2"}, pathKinds},
	{Rule{pathOwnDevice, "", "a battery's own device serves only a string of one module, of a battery that states it", fromMaker}, stringRuns},
	{Rule{pathOwnBreaker, "", "no device is bought where the inverter's own breaker serves", fromScenario}, byInverter},
	{Rule{pathNoGround, "", "battery paths have no grounding conductor", practice}, groundless},
	{Rule{pathNoLine, "", "a bond has no line conductor and no device", practice}, bonds},
	{Rule{"cable present", "", "a cable, in at least one set", ""}, lines},
	{Rule{"cable strand", "", "fine strand where it is asked for", ""}, reversible},
	{Rule{"cable listed", "", "size, material and insulation are in the rule set's tables", ""}, lines},
	{Rule{"parallel sets", "", "parallel sets only of large conductors", ""}, lines},
	{Rule{"voltage drop", "%", "drop <= the run's; a string's links count", ""}, lines},
	{Rule{"device present", "", "a device, where none that is built in serves", ""}, lines},
	{Rule{"device rating", "A", "rating >= the current required; for a circuit or inlet, the stated rating", ""}, lines},
	{Rule{"standard rating", "A", "a standard rating of the rule set", ""}, lines},
	{Rule{"device limit", "A", "rating <= the battery's max_fuse_a", ""}, stringRuns},
	{Rule{"interrupting rating", "A", "interrupting rating >= fault current", ""}, lines},
	{Rule{"device voltage", "V", "the device stands bus high, the ac volts, or the modules' volts in the cold", ""}, lines},
	{Rule{"device poles", "", "both hots of 240 V open, and both poles of modules", ""}, lines},
	{Rule{"device class", "", "no fuse of partial range, a class that begins with a small a", ""}, lines},
	{Rule{"device polarised", "", "no polarised breaker where current runs both ways", ""}, reversible},
	{Rule{"device listed", "", "no device that is not listed (nec)", ""}, lines},
	{Rule{"terminal ampacity", "A", "ampacity at the terminals' temperature >= the current required", ""}, lines},
	{Rule{"corrected ampacity", "A", "ampacity corrected for ambient and bundle, sets counted, >= design current", ""}, lines},
	{Rule{"cable protected", "A", "device rating <= what the corrected ampacity allows", ""}, lines},
	{Rule{"small conductor", "A", "device rating <= that of a small conductor (nec)", ""}, lines},
	{Rule{"fuse overload", "A", "fusing current of a fuse <= 1.45 * corrected ampacity (iec)", ""}, lines},
	{Rule{"ground present", "", "a grounding conductor", ""}, grounded},
	{Rule{"ground listed", "", "the grounding conductor is in the rule set's tables", ""}, grounded},
	{Rule{"ground size", "mm2", "the grounding conductor is large enough for the device, and grows with enlarged conductors (nec), or for the line (iec)", ""}, grounded},
	{Rule{"string fuses", "", "a fuse for each string of modules where the others together can exceed its max_fuse_a", ""}, bySun},
	{Rule{"string fuse present", "", "a fuse where they are needed, else none", ""}, bySun},
	{Rule{"string fuse rating", "A", "rating >= 1.5625 * isc", ""}, bySun},
	{Rule{"string fuse standard", "A", "a standard rating of the rule set", ""}, bySun},
	{Rule{"string fuse limit", "A", "rating <= the module's max_fuse_a", ""}, bySun},
	{Rule{"string fuse voltage", "V", "the fuse stands the modules' volts in the cold", ""}, bySun},
	{Rule{"string fuse interrupting", "A", "interrupting rating >= the fault current of the modules", ""}, bySun},
	{Rule{"string fuse kind", "", "a fuse, not of partial range, and listed (nec)", ""}, bySun},
	{Rule{"conduit present", "", "a conduit of the type asked for, or none", ""}, pathKinds},
	{Rule{"conduit fill", "mm2", "all conductors, ground and sets included, fill no more than the share allowed", ""}, pathKinds},
	{Rule{pathFigures, "", "the stated currents, drop and ratings are true", fromParts}, pathKinds},
}

// runRules are the checks of the cable paths, by kind.
func runRules() []Rule {
	rules := []Rule{{ruleRunKinds, "", "every run is of a known kind and serves a battery, inverter, circuit or array of the plan", fromParts}}
	for _, kind := range pathKinds {
		for _, c := range pathChecks {
			if slices.Contains(c.kinds, kind) {
				c.Name = pathRule(kind, c.Name)
				rules = append(rules, c.Rule)
			}
		}
	}
	return rules
}

// pathRule names a check of a kind of path.
func pathRule(kind scenarios.RunKind, check string) string { return string(kind) + " " + check }
