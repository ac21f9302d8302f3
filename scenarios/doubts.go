package scenarios

import "fmt"

// leastWheelbaseM is the shortest wheelbase that is taken without a warning. Common practice, no source.
const leastWheelbaseM = 0.2

// doubt warns of values that are possible, but not plausible.
func (s *Scenario) doubt(top section) {
	if top.r.problems.Len() > 0 {
		return
	}
	if b := s.Cart.WheelbaseM; b < leastWheelbaseM {
		top.r.warnings.Add(s.Pos("cart.wheelbase"), fmt.Sprintf("a wheelbase of %.4g mm is too short for a cart", b*1000), "check its unit")
	}
	for i := range s.Loads {
		s.doubtLoad(top.r, i)
	}
	for i, list := range s.OneAtATime {
		if at, sum := s.busiest(list); sum > 1+1e-9 {
			top.r.warnings.Add(s.Pos(fmt.Sprintf("one_at_a_time[%d]", i)),
				fmt.Sprintf("at %02d:%02d the duties of these loads add up to %.4g %%, and never two of them run at once", at/60, at%60, sum*100),
				"lower a duty, or take a load off the list")
		}
	}
}

// doubtLoad warns of a load that draws more than the circuit it names carries.
func (s *Scenario) doubtLoad(r *reader, i int) {
	l := s.Loads[i]
	pos := s.Pos(fmt.Sprintf("loads[%d].watts", i))
	if c := s.CircuitNamed(l.Circuit); c != nil && c.Volts > 0 && c.DC == l.DC {
		volts, power := c.Volts, l.Watts
		if c.DC {
			volts = s.Bus.LowV
		} else {
			power /= l.PowerFactor
		}
		if a := power * float64(l.Count) / volts; a > c.DeviceA {
			r.warnings.Add(pos, fmt.Sprintf("the load %q draws %.3g A, and its circuit %q has a device of %g A", l.Name, a, c.Name, c.DeviceA),
				"check the watts, or name a larger circuit")
		}
	}
}

// busiest returns the minute of the day at which loads run the largest share of the time together, and that share.
func (s *Scenario) busiest(list []int) (minute int, share float64) {
	for m := range dayMin {
		sum := 0.0
		for _, i := range list {
			if s.Loads[i].onAt(m) {
				sum += s.Loads[i].Duty
			}
		}
		if sum > share {
			minute, share = m, sum
		}
	}
	return minute, share
}

// onAt reports whether a load may be on at a minute of the day.
func (l *Load) onAt(minute int) bool {
	switch {
	case l.AllDay:
		return true
	case l.FromMin < l.ToMin:
		return minute >= l.FromMin && minute < l.ToMin
	}
	return minute >= l.FromMin || minute < l.ToMin
}
