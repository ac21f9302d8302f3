package year

// tie is the relative difference up to which two energies count as the same: sums over a year are rounded.
const tie = 1e-9

// LeastStorage returns the least capacity in Wh with which at most mostShortWh are short in a year, and whether
// there is one. Net is as for Short.
//
// It starts with no store and steps to where the tangent to the shortage meets mostShortWh. The shortage is convex, so
// no step goes too far; it is piecewise linear with finitely many kinks, so finitely many steps suffice.
//
// Source: Newton's method. With nothing to be short and no losses the answer is that of the sequent peak, Thomas
// and Burden (1963); Loucks and van Beek, Water Resource Systems Planning and Management, ch. 11.
func LeastStorage(net []float64, chargeW, roundTrip, mostShortWh float64) (capacityWh float64, ok bool) {
	asked := 0.0
	for _, n := range net {
		if n < 0 {
			asked -= n
		}
	}
	for {
		s := Short(net, Store{CapacityWh: capacityWh, ChargeW: chargeW, RoundTrip: roundTrip})
		over := s.Wh - mostShortWh
		switch {
		case over <= tie*asked:
			return capacityWh, true
		case s.PerWh == 0:
			return capacityWh, false // no store however large would do
		}
		capacityWh += over / s.PerWh
	}
}
