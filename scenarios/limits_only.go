package scenarios

import "reflect"

// SameButLimits reports whether two scenarios say the same but for the limits that a person moves: autonomy, hours of
// recharge and Limits, without SharedProtocols. Places of parts, runs and the like in the file have to be the same, too.
func (s *Scenario) SameButLimits(other *Scenario) bool {
	return reflect.DeepEqual(s.withoutLimits(), other.withoutLimits())
}

// withoutLimits returns a copy with nothing in its limits.
func (s *Scenario) withoutLimits() *Scenario {
	bare := *s
	bare.AutonomyH, bare.Limits, bare.Warnings, bare.places = 0, Limits{SharedProtocols: s.Limits.SharedProtocols}, nil, nil
	if s.Recharge != nil {
		recharge := *s.Recharge
		recharge.WithinH = 0
		bare.Recharge = &recharge
	}
	return &bare
}
