package plan

import "math"

// The names of a plan's limits, as Plan.Limits has them and the audit checks them. Beside each: what the value is,
// which way it must go, what the limit is, and the unit. A limit the scenario leaves open (no push force, no
// budget, a shelf with no maximum mass) is not listed.
const (
	LimitAutonomy      = "autonomy"            // hours the plan runs >= hours asked for, h
	LimitPower         = "power"               // continuous watts of all units >= peak of the loads, W
	LimitLeg           = "leg power"           // watts of a leg of all units >= the larger leg's peak, W; 120/240 only
	LimitSurge         = "surge"               // surge watts of all units >= peak and the largest start, W
	LimitLegSurge      = "leg surge"           // surge watts of a leg of all units >= the same of a leg, W; 120/240 only
	LimitBusCurrent    = "bus current"         // what the strings can share out >= what the bus draws, A
	LimitPeakCurrent   = "bus current, peak"   // what they can share out for a moment >= what the surge draws, A
	LimitCharger       = "recharge, charger"   // amperes of all chargers >= what putting the energy back takes, A
	LimitCharge        = "recharge, batteries" // amperes the strings take together >= what putting it back takes, A
	LimitMass          = "mass"                // everything on the cart <= most, kg
	LimitBudget        = "budget"              // cost <= budget and money in hand, in the currency
	LimitTiltSideways  = "tilt, sideways"      // tips at >= must stand, deg
	LimitTiltLength    = "tilt, lengthways"    // tips at >= must stand, deg
	LimitPush          = "push"                // force to keep rolling <= most, N
	LimitHold          = "hold"                // slope the braked wheels hold >= the slope, %; on a slope only
	LimitCaster        = "caster load"         // load of a wheel with the caster factor <= its rating, kg
	LimitBusbarCurrent = "bus bar current"     // current of the bars with the margin <= their rating, A
	LimitBusbarStuds   = "bus bar studs"       // connections on a bar <= its studs, each
	LimitSpaces        = "load-centre spaces"  // poles of branch and feeder breakers <= spaces, each; where stated
	LimitServed        = "served"              // share of the year from sun and store >= the share asked for, no unit
	LimitShelfRoom     = "shelf room: "        // then the shelf's name; share of its length that columns take <= 1, no unit
	LimitShelfMass     = "shelf mass: "        // then the shelf's name; modules' mass <= most, kg
)

// BindingShare is the part of a limit below which what is left of it counts as nothing: a limit binds
// where slack <= BindingShare * limit. The ratings, masses and loads behind the figures are not known better than
// to about one in a hundred; common practice, no source.
const BindingShare = 0.01

// Binds reports whether a limit with that much slack binds.
func Binds(slack, limit float64) bool { return slack <= BindingShare*math.Abs(limit) }
