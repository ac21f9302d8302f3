package year

// Shortage is what is short in a year with a store, and how it falls around that store.
type Shortage struct {
	Wh    float64
	PerWh float64 // how much less with one more Wh of storage
	PerW  float64 // how much less with one more W of charging limit
	store Store
}

// AtLeast returns what at least is short with a store of another capacity and charging limit and the same round
// trip: the plane that touches the shortage at the store that was simulated, or 0 where that is below.
func (s Shortage) AtLeast(capacityWh, chargeW float64) float64 {
	least := s.Wh - s.PerWh*(capacityWh-s.store.CapacityWh)
	if s.PerW > 0 { // else it may be that nothing limited charging
		least -= s.PerW * (chargeW - s.store.ChargeW)
	}
	return max(0, least)
}

// Short returns what is short in a year. Net is what the sun gives less what the bus is asked for, hour by hour;
// any whole number of days will do.
//
//	net >= 0:  x = min(net, charge);  stored = min(C, stored + x round_trip)
//	net < 0:   give = min(-net, stored);  short = -net - give
//
// The two slopes are the multipliers of the linear program of which it is the optimum: a Wh that was short after
// the store was last full would have been there with a larger store, and with a higher limit in the hours in
// between that had more to give.
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

// level is a store's content, and how it grows with capacity and charging limit.
type level struct{ stored, perWh, perW float64 }

// usually is how many hours before the end of the year it usually no longer matters what the store held.
const usually = 14 * 24

// begin returns the level that a year begins and ends with. It takes an empty and a full store through the last
// hours of the year, and through more of them until both end alike: then what was before does not matter.
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

// ends takes an empty and a full store through hours. Together with the sum of what would go in and out of one
// without ends they say what the hours do to any store.
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

// shift takes the level through an hour that adds some energy, less than 0 where it is drawn.
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
