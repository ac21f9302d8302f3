package optimize_test

import (
	"math"
	"slices"

	"cartwright/scenarios"
)

// A loosening makes one limit of a scenario easier to keep, where the scenario has it.
type loosening struct {
	name string
	do   func(d dice, s *scenarios.Scenario)
}

// less draws a part of a number, more a number above it.
func (d dice) less(x *float64) { *x *= d.Float64() }
func (d dice) more(x *float64) { *x *= 1 + d.Float64() }

// each does something with every element of a list.
func each[T any](list []T, do func(*T)) {
	for i := range list {
		do(&list[i])
	}
}

// looser are ways to loosen each limit of a scenario.
var looser = slices.Concat(looserLoads, looserLimits, looserCart, looserWiring, looserTrade)

var looserLoads = []loosening{
	{"watts", func(d dice, s *scenarios.Scenario) { each(s.Loads, func(l *scenarios.Load) { d.less(&l.Watts) }) }},
	{"count", func(_ dice, s *scenarios.Scenario) { each(s.Loads, func(l *scenarios.Load) { l.Count = 1 }) }},
	{"duty", func(d dice, s *scenarios.Scenario) { each(s.Loads, func(l *scenarios.Load) { d.less(&l.Duty) }) }},
	{"start", func(_ dice, s *scenarios.Scenario) { each(s.Loads, func(l *scenarios.Load) { l.Start = 1 }) }},
	{"leg", func(_ dice, s *scenarios.Scenario) {
		each(s.Loads, func(l *scenarios.Load) {
			if l.Leg != scenarios.LegBoth && !l.DC {
				l.Leg = scenarios.LegAuto
			}
		})
	}},
	{"one load less", func(_ dice, s *scenarios.Scenario) { s.Loads = s.Loads[:max(1, len(s.Loads)-1)] }},
	{"autonomy", func(d dice, s *scenarios.Scenario) { d.less(&s.AutonomyH) }},
	{"recharge within", func(d dice, s *scenarios.Scenario) {
		if s.Recharge != nil {
			s.Recharge.WithinH *= 2 + d.Float64()
		}
	}},
	{"no recharge", func(_ dice, s *scenarios.Scenario) { s.Recharge = nil }},
}

var looserLimits = []loosening{
	{"mass", func(d dice, s *scenarios.Scenario) { d.more(&s.Limits.MassKg) }},
	{"no mass", func(_ dice, s *scenarios.Scenario) { s.Limits.MassKg = math.Inf(1) }},
	{"budget", func(d dice, s *scenarios.Scenario) {
		if s.Limits.Budget != math.MaxInt64 {
			s.Limits.Budget += d.cents(1, 500)
		}
	}},
	{"no budget", func(_ dice, s *scenarios.Scenario) { s.Limits.Budget = math.MaxInt64 }},
	{"sold", func(d dice, s *scenarios.Scenario) { s.Sold += d.cents(1, 500) }},
	{"tilt", func(d dice, s *scenarios.Scenario) { d.less(&s.Limits.TiltDeg) }},
	{"reserve", func(d dice, s *scenarios.Scenario) { d.less(&s.Limits.Reserve) }},
	{"push", func(d dice, s *scenarios.Scenario) { d.more(&s.Limits.PushN) }},
	{"no push", func(_ dice, s *scenarios.Scenario) { s.Limits.PushN = 0 }},
	{"slope", func(d dice, s *scenarios.Scenario) { d.less(&s.Limits.Slope) }},
	{"caster factor", func(d dice, s *scenarios.Scenario) { s.CasterFactor *= 0.5 + d.Float64()/2 }},
	{"tax", func(d dice, s *scenarios.Scenario) { d.less(&s.Tax) }},
}

var looserCart = []loosening{
	{"track", func(d dice, s *scenarios.Scenario) { d.more(&s.Cart.TrackM) }},
	{"wheelbase", func(d dice, s *scenarios.Scenario) { d.more(&s.Cart.WheelbaseM) }},
	{"caster height", func(d dice, s *scenarios.Scenario) { d.less(&s.Cart.CasterMassHeightM) }},
	{"frame height", func(d dice, s *scenarios.Scenario) { d.less(&s.Cart.Frame.HeightM) }},
	{"deck item height", func(d dice, s *scenarios.Scenario) {
		each(s.Cart.DeckItems, func(m *scenarios.Mass) { d.less(&m.HeightM) })
	}},
	{"deck item offset", func(d dice, s *scenarios.Scenario) {
		each(s.Cart.DeckItems, func(m *scenarios.Mass) { d.less(&m.OffsetM) })
	}},
	{"backboard elevation", func(d dice, s *scenarios.Scenario) { d.less(&s.Cart.Backboard.ElevationM) }},
	{"backboard offset", func(d dice, s *scenarios.Scenario) { d.less(&s.Cart.Backboard.OffsetM) }},
	{"shelf elevation", ofShelves(func(d dice, sh *scenarios.Shelf) { d.less(&sh.ElevationM) })},
	{"shelf length", ofShelves(func(d dice, sh *scenarios.Shelf) { d.more(&sh.LengthM) })},
	{"shelf depth", ofShelves(func(d dice, sh *scenarios.Shelf) { d.more(&sh.DepthM) })},
	{"shelf height", ofShelves(func(d dice, sh *scenarios.Shelf) { d.more(&sh.ClearHeightM) })},
	{"shelf mass", ofShelves(func(d dice, sh *scenarios.Shelf) { d.more(&sh.MaxMassKg) })},
	{"shelf gap", ofShelves(func(_ dice, sh *scenarios.Shelf) { sh.GapM = 0 })},
}

func ofShelves(do func(dice, *scenarios.Shelf)) func(dice, *scenarios.Scenario) {
	return func(d dice, s *scenarios.Scenario) {
		each(s.Cart.Shelves, func(sh *scenarios.Shelf) { do(d, sh) })
	}
}

var looserWiring = []loosening{
	{"ac fault", func(d dice, s *scenarios.Scenario) { d.less(&s.ACFaultA) }},
	{"drop of runs", ofRuns(func(d dice, r *scenarios.Run) { r.Drop *= 2 + 2*d.Float64() })},
	{"length of runs", ofRuns(func(d dice, r *scenarios.Run) { d.less(&r.LengthM) })},
	{"ambient of runs", ofRuns(func(d dice, r *scenarios.Run) { r.AmbientC = 10 + d.Float64()*min(10, r.AmbientC-10) })},
	{"bundle of runs", ofRuns(func(_ dice, r *scenarios.Run) { r.Bundled = 2 })},
	{"terminals of runs", ofRuns(func(_ dice, r *scenarios.Run) { r.TerminalC = 75 })},
	{"drop of circuits", ofCircuits(func(d dice, c *scenarios.Circuit) { d.more(&c.Drop) })},
	{"length of circuits", ofCircuits(func(d dice, c *scenarios.Circuit) { d.less(&c.LengthM) })},
	{"ambient of circuits", ofCircuits(func(d dice, c *scenarios.Circuit) { c.AmbientC -= 20 * d.Float64() })},
	{"bundle of circuits", ofCircuits(func(_ dice, c *scenarios.Circuit) { c.Bundled = 1 })},
	{"terminals of circuits", ofCircuits(func(_ dice, c *scenarios.Circuit) { c.TerminalC = 75 })},
	{"no neutral at 240 V", ofCircuits(func(_ dice, c *scenarios.Circuit) { c.Neutral = c.Neutral && c.Volts != 240 })},
	{"one receptacle", ofCircuits(func(_ dice, c *scenarios.Circuit) {
		if c.Receptacle != nil {
			c.Receptacle.Count = 1
		}
	})},
	{"receptacle of any rating", ofCircuits(func(_ dice, c *scenarios.Circuit) {
		if c.Receptacle != nil {
			c.Receptacle.RatingA = 0
		}
	})},
	{"no receptacle", ofCircuits(func(_ dice, c *scenarios.Circuit) { c.Receptacle = nil })},
	{"no circuit", func(_ dice, s *scenarios.Scenario) { s.Circuits = nil }},
	{"count of needs", func(_ dice, s *scenarios.Scenario) { each(s.Needs, func(n *scenarios.Need) { n.Count = 1 }) }},
	{"rating of needs", func(_ dice, s *scenarios.Scenario) { each(s.Needs, func(n *scenarios.Need) { n.RatingA = 0 }) }},
	{"no need", func(_ dice, s *scenarios.Scenario) { s.Needs = nil }},
}

// looserTrade are ways to loosen what only some carts have.
var looserTrade = []loosening{
	{"any strand", func(_ dice, s *scenarios.Scenario) { s.Cable.Fine = false }},
	{"slack", func(d dice, s *scenarios.Scenario) { d.less(&s.Cable.Slack) }},
	{"no whole steps", func(_ dice, s *scenarios.Scenario) { s.Cable.StepM = 0 }},
	{"links of strings", ofRuns(func(d dice, r *scenarios.Run) { d.less(&r.LinkM) })},
	{"runs without conduit", ofRuns(func(_ dice, r *scenarios.Run) { r.Conduit = "" })},
	{"circuits without conduit", ofCircuits(func(_ dice, c *scenarios.Circuit) { c.Conduit = "" })},
	{"no bond", func(_ dice, s *scenarios.Scenario) {
		s.Runs = slices.DeleteFunc(s.Runs, func(r scenarios.Run) bool { return r.Kind == scenarios.RunBond })
	}},
	{"no supply", func(_ dice, s *scenarios.Scenario) {
		if s.Recharge != nil {
			s.Recharge.Supply = nil
		}
		s.Runs = slices.DeleteFunc(s.Runs, func(r scenarios.Run) bool { return r.Kind == scenarios.RunInlet })
	}},
	{"any protocols", func(_ dice, s *scenarios.Scenario) { s.Limits.SharedProtocols = false }},
	{"power factor", func(_ dice, s *scenarios.Scenario) { each(s.Loads, func(l *scenarios.Load) { l.PowerFactor = 1 }) }},
	{"one at a time", func(_ dice, s *scenarios.Scenario) {
		all := make([]int, len(s.Loads))
		for i := range all {
			all[i] = i
		}
		s.OneAtATime = [][]int{all}
	}},
	{"grip", func(d dice, s *scenarios.Scenario) { d.more(&s.Cart.Grip) }},
	{"rolling", func(d dice, s *scenarios.Scenario) { d.less(&s.Cart.Rolling) }},
	{"height of pieces", func(d dice, s *scenarios.Scenario) {
		each(s.Cart.Pieces, func(x *scenarios.Piece) { d.less(&x.HeightM) })
	}},
	{"span of rails", ofRails(func(d dice, r *scenarios.Rails) { r.SpanM *= 0.5 + d.Float64()/2 })},
	{"count of rails", ofRails(func(_ dice, r *scenarios.Rails) { r.Count *= 2 })},
	{"no rails", ofShelves(func(_ dice, sh *scenarios.Shelf) { sh.Rails = nil })},
}

func ofRails(do func(dice, *scenarios.Rails)) func(dice, *scenarios.Scenario) {
	return ofShelves(func(d dice, sh *scenarios.Shelf) {
		if sh.Rails != nil {
			do(d, sh.Rails)
		}
	})
}

func ofRuns(do func(dice, *scenarios.Run)) func(dice, *scenarios.Scenario) {
	return func(d dice, s *scenarios.Scenario) { each(s.Runs, func(r *scenarios.Run) { do(d, r) }) }
}

func ofCircuits(do func(dice, *scenarios.Circuit)) func(dice, *scenarios.Scenario) {
	return func(d dice, s *scenarios.Scenario) { each(s.Circuits, func(c *scenarios.Circuit) { do(d, c) }) }
}
