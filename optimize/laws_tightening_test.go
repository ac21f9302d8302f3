package optimize_test

import (
	"context"
	"math"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/optimize/search"
	"cartwright/scenarios"
)

// inside is how far inside the best plan's own figure a limit is drawn.
const inside = 0.999

// stricter are ways to draw a limit so that a plan just misses it; each reports false where it has no hold.
var stricter = []struct {
	name string
	do   func(s *scenarios.Scenario, p *plan.Plan) bool
}{
	{"mass", func(s *scenarios.Scenario, p *plan.Plan) bool { s.Limits.MassKg = p.MassKg * inside; return true }},
	{"budget", func(s *scenarios.Scenario, p *plan.Plan) bool {
		s.Limits.Budget, s.Sold = catalog.Cents(p.Cost-1), 0
		return p.Cost > 0
	}},
	{"tilt", func(s *scenarios.Scenario, p *plan.Plan) bool {
		s.Limits.TiltDeg = p.Balance.TiltDeg / inside
		return s.Limits.TiltDeg < 45 // what a scenario may ask for
	}},
	{"push", func(s *scenarios.Scenario, p *plan.Plan) bool { s.Limits.PushN = pushN(s, p) * inside; return true }},
	{"slope", func(s *scenarios.Scenario, p *plan.Plan) bool {
		s.Limits.PushN = pushN(s, p) / inside
		s.Limits.Slope += 0.01
		return true
	}},
	{"rolling", func(s *scenarios.Scenario, p *plan.Plan) bool {
		s.Limits.PushN = pushN(s, p) / inside
		s.Cart.Rolling += 0.01
		return true
	}},
	{"grip", func(s *scenarios.Scenario, p *plan.Plan) bool {
		for _, l := range p.Limits {
			if l.Name == plan.LimitHold {
				s.Cart.Grip *= l.Limit / l.Value * inside
				return true
			}
		}
		return false
	}},
	{"caster factor", func(s *scenarios.Scenario, p *plan.Plan) bool {
		s.CasterFactor *= p.Casters.RatingEachKg / p.Casters.LoadEachKg / inside
		return true
	}},
	{"autonomy", func(s *scenarios.Scenario, p *plan.Plan) bool { s.AutonomyH = p.AutonomyH / inside; return true }},
	{"reserve", func(s *scenarios.Scenario, p *plan.Plan) bool {
		before := s.Limits.Reserve
		s.Limits.Reserve = 1 - (1-before)*s.AutonomyH/p.AutonomyH/2 // half of what is asked for at the most
		return true
	}},
	{"recharge within", func(s *scenarios.Scenario, p *plan.Plan) bool {
		room := math.Inf(1)
		for _, l := range p.Limits {
			if l.Name == plan.LimitCharger || l.Name == plan.LimitCharge {
				room = min(room, l.Value/l.Limit)
			}
		}
		if s.Recharge != nil {
			s.Recharge.WithinH *= inside / room
		}
		return s.Recharge != nil
	}},
	{"shelf mass", func(s *scenarios.Scenario, p *plan.Plan) bool {
		for i := range s.Cart.Shelves {
			for _, sh := range p.Shelves {
				if sh.Shelf == s.Cart.Shelves[i].Name && sh.MassKg > 0 {
					s.Cart.Shelves[i].MaxMassKg = sh.MassKg * inside
				}
			}
		}
		return true
	}},
	{"ac fault", func(s *scenarios.Scenario, p *plan.Plan) bool {
		weakest := math.Inf(1)
		for _, r := range p.Runs {
			if (r.Run == "feeder" || r.Run == "branch") && r.Device != "" {
				weakest = min(weakest, r.InterruptingA)
			}
		}
		s.ACFaultA = weakest / inside
		return !math.IsInf(weakest, 1)
	}},
	{"drop of runs", func(s *scenarios.Scenario, p *plan.Plan) bool {
		for _, r := range p.Runs {
			if run := s.Run(scenarios.RunKind(r.Run)); run != nil {
				run.Drop = r.DropPct / 100 * inside
				return true
			}
		}
		return false
	}},
	{"drop of circuits", func(s *scenarios.Scenario, p *plan.Plan) bool {
		for _, r := range p.Runs {
			for i := range s.Circuits {
				if r.Run == "branch" && r.Name == s.Circuits[i].Name {
					s.Circuits[i].Drop = r.DropPct / 100 * inside
					return true
				}
			}
		}
		return false
	}},
}

// pushN is the force to keep a plan's cart rolling, N: rolling resistance and the slope.
func pushN(s *scenarios.Scenario, p *plan.Plan) float64 {
	const g = 9.80665 // m/s2, 3rd CGPM 1901
	return (s.Cart.Rolling + s.Limits.Slope) * p.MassKg * g
}

// A limit drawn just inside the best plan shuts that plan out: what is best then, if anything, costs no
// less. This is the law of loosening from the other side, where each limit is sure to bind.
func TestLawTightening(t *testing.T) {
	const least = 5
	seeds, err := possible()
	if err != nil {
		t.Fatal(err)
	}
	for k, l := range stricter {
		tried, dearer, none := 0, 0, 0
		for i := 0; i < len(seeds) && (tried < least || dearer+none == 0); i++ {
			seed := seeds[(i+k*least)%len(seeds)]
			was := rank(t, lawProblem(seed), question.Options{Plans: 1}).Plans[0]
			p := lawProblem(seed)
			if !l.do(p.Scenario, &was) {
				continue
			}
			tried++
			found, err := search.Feasible(context.Background(), p)
			if err != nil {
				t.Fatal(err)
			}
			if found == nil {
				none++
				continue
			}
			is := rank(t, p, question.Options{Plans: 1}).Plans[0]
			switch missing := float64(is.Cost - was.Cost); {
			case missing < -roundingCents(&is)-roundingCents(&was):
				t.Errorf("%s: %s tightened: the best plan costs %s, before %s", p.Scenario.Name, l.name, is.Cost, was.Cost)
			case missing > roundingCents(&is)+roundingCents(&was):
				dearer++
			}
		}
		t.Logf("%s: tried %d, dearer %d, none %d", l.name, tried, dearer, none)
		if tried < least || dearer+none == 0 {
			t.Errorf("%s is tightened in %d problems, which changes %d", l.name, tried, dearer+none)
		}
	}
}
