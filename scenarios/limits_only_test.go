package scenarios

import "testing"

// A limit that moves leaves a scenario the same otherwise; whatever else changes does not.
func TestSameButLimits(t *testing.T) {
	of := func(change func(*Scenario)) *Scenario {
		s, err := Demo("goat-dairy")
		if err != nil {
			t.Fatal(err)
		}
		change(s)
		return s
	}
	was := of(func(*Scenario) {})
	for what, change := range map[string]func(*Scenario){
		"autonomy": func(s *Scenario) { s.AutonomyH++ },
		"recharge": func(s *Scenario) {
			if s.Recharge != nil {
				s.Recharge.WithinH++
			}
		},
		"mass":   func(s *Scenario) { s.Limits.MassKg = 123 },
		"budget": func(s *Scenario) { s.Limits.Budget = 1 },
		"served": func(s *Scenario) { s.Limits.Served = 0.5 },
		"places": func(s *Scenario) { s.places = nil },
	} {
		if !was.SameButLimits(of(change)) {
			t.Errorf("%s: a limit counts", what)
		}
	}
	for what, change := range map[string]func(*Scenario){
		"protocols": func(s *Scenario) { s.Limits.SharedProtocols = !s.Limits.SharedProtocols },
		"load":      func(s *Scenario) { s.Loads[0].Watts++ },
		"owned":     func(s *Scenario) { s.Have[0].Count++ },
		"tax":       func(s *Scenario) { s.Tax += 0.01 },
		"run":       func(s *Scenario) { s.Runs[0].LengthM++ },
		"sun":       func(s *Scenario) { s.Sun.TiltDeg++ },
		"fault":     func(s *Scenario) { s.ACFaultA++ },
	} {
		if was.SameButLimits(of(change)) {
			t.Errorf("%s: it does not count", what)
		}
	}
}
