package plan

import "math"

// The names of a plan's limits, as they stand in Plan.Limits and are checked by the audit. Beside each:
// what the value is, what the limit is, the unit, and which way it must go. A limit the scenario leaves
// open (no push force, no budget, a shelf with no maximum mass) is not listed.
const (
	LimitAutonomy      = "autonomy"            // hours the plan runs >= hours asked for, h
	LimitPower         = "power"               // continuous watts of all units >= peak of the loads, W
	LimitLeg           = "leg power"           // watts of a leg of all units >= the larger leg's peak, W; 120/240 only
	LimitSurge         = "surge"               // surge watts of all units >= peak and the largest start, W
	LimitBusCurrent    = "bus current"         // what the strings can share out >= what the bus draws, A
	LimitCharger       = "recharge, charger"   // amperes of all chargers >= what putting the energy back takes, A
	LimitCharge        = "recharge, batteries" // amperes the strings take together >= what putting it back takes, A
	LimitMass          = "mass"                // everything on the cart <= most, kg
	LimitBudget        = "budget"              // cost <= budget and money in hand, in the currency
	LimitTiltSideways  = "tilt, sideways"      // tips at >= must stand, deg
	LimitTiltLength    = "tilt, lengthways"    // tips at >= must stand, deg
	LimitPush          = "push"                // force to keep rolling <= most, N
	LimitCaster        = "caster load"         // load of a wheel with the caster factor <= its rating, kg
	LimitBusbarCurrent = "bus bar current"     // current of the bars with the margin <= their rating, A
	LimitBusbarStuds   = "bus bar studs"       // connections on a bar <= its studs, each
	LimitSpaces        = "load-centre spaces"  // poles of the branch breakers <= spaces, each; where stated
	LimitShelfRoom     = "shelf room: "        // and the name of each shelf; part of the floor taken <= 1, no unit
	LimitShelfMass     = "shelf mass: "        // and the name of each shelf; modules' mass <= most, kg
)

// BindingShare is the part of a limit below which what is left of it counts as nothing: a limit binds
// where slack <= BindingShare * limit. One in a hundred is about as well as the ratings, masses and loads
// behind the figures are known; common practice, no source.
const BindingShare = 0.01

// Binds reports whether a limit with so much left of it binds.
func Binds(slack, limit float64) bool { return slack <= BindingShare*math.Abs(limit) }
