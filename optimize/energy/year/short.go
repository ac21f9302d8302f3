package year

// Shortage is what is short in a year with a store, and how fast it falls with a larger one.
type Shortage struct {
	Wh    float64
	PerWh float64 // Wh less for one more Wh of storage
	PerW  float64 // Wh less for one more W of charging limit
	store Store
}

// AtLeast returns a lower bound in Wh on what is short with a store of another capacity and charging limit and the same
// round trip: the tangent plane at the store that was simulated, or 0 where that is negative.
func (s Shortage) AtLeast(capacityWh, chargeW float64) float64 {
	least := s.Wh - s.PerWh*(capacityWh-s.store.CapacityWh)
	if s.PerW > 0 { // else the limit may be +Inf, and 0 * Inf is NaN
		least -= s.PerW * (chargeW - s.store.ChargeW)
	}
	return max(0, least)
}

// Short returns what is short in a year. Net is what the sun gives less what is asked of the bus, in Wh hour by hour;
// any number of hours will do.
//
//	net >= 0:  x = min(net, charge);  stored = min(C, stored + x round_trip)
//	net < 0:   give = min(-net, stored);  short = -net - give
//
// The slopes are the dual multipliers of the linear program whose optimum this is. A Wh that is short would have been
// there had the store been a Wh larger when it was last full, or had the charging limit been higher in the hours since
// then that had more to give.
func Short(net []float64, s Store) Shortage {
	at := begin(net, s)
	short := Shortage{store: s}
	stored, perWh, perW := at.stored, at.perWh, at.perW
	for _, n := range net {
		if n >= 0 {
			if n > s.ChargeW {
				n = s.ChargeW
				perW += s.RoundTrip
			}
			stored += n * s.RoundTrip
			if stored >= s.CapacityWh {
				stored, perWh, perW = s.CapacityWh, 1, 0
			}
			continue
		}
		stored += n
		if stored < 0 {
			short.Wh -= stored
			short.PerWh += perWh
			short.PerW += perW
			stored, perWh, perW = 0, 0, 0
		}
	}
	return short
}

// level is a store's content in Wh, and how it grows with capacity and charging limit.
type level struct{ stored, perWh, perW float64 }

// usually is a number of hours after which it usually no longer matters how full the store was before them.
const usually = 14 * 24

// begin returns the level that a year begins and ends with. It takes an empty and a full store through the last hours
// of the year, and through more and more of them until both end alike: then what was before does not matter.
func begin(net []float64, s Store) level {
	for last := usually; last < len(net); last *= 4 {
		if lo, hi, _ := ends(net[len(net)-last:], s); lo.stored == hi.stored {
			return hi
		}
	}
	lo, hi, shift := ends(net, s)
	if shift < 0 {
		return lo
	}
	return hi
}

// ends takes an empty and a full store through some hours: lo, hi, and as shift the sum that would go in and out of a
// store without limits. Together they say what the hours do to any store.
func ends(net []float64, s Store) (lo, hi level, shift float64) {
	hi = level{stored: s.CapacityWh, perWh: 1}
	for _, n := range net {
		if n >= 0 {
			perW := 0.0
			if n > s.ChargeW {
				n, perW = s.ChargeW, s.RoundTrip
			}
			n *= s.RoundTrip
			lo.shift(n, perW, s.CapacityWh)
			hi.shift(n, perW, s.CapacityWh)
		} else {
			lo.shift(n, 0, s.CapacityWh)
			hi.shift(n, 0, s.CapacityWh)
		}
		shift += n
	}
	return lo, hi, shift
}

// shift takes the level through an hour that stores wh, or draws it where wh is negative.
func (l *level) shift(wh, perW, capacityWh float64) {
	l.stored += wh
	l.perW += perW
	switch {
	case l.stored < 0:
		*l = level{}
	case wh >= 0 && l.stored >= capacityWh:
		*l = level{capacityWh, 1, 0}
	}
}
