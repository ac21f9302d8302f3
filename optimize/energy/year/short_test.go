package year_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"cartwright/optimize/energy/year"
)

// weather returns days of net watts: a sun of other strength every day, a load that is higher in the evening. In
// quarters of a watt, so that sums are exact and ties happen.
func weather(rng *rand.Rand, days int) []float64 {
	net := make([]float64, 0, 24*days)
	array, base := 200+600*rng.Float64(), 40+100*rng.Float64()
	clear := rng.Float64()
	for range days {
		clear = 0.6*clear + 0.4*rng.Float64()
		for h := range 24 {
			n := -base
			if h >= 18 && h < 22 {
				n -= 2 * base
			}
			if h > 6 && h < 18 {
				n += array * clear * math.Sin(math.Pi*float64(h-6)/12)
			}
			net = append(net, math.Round(n*4)/4)
		}
	}
	return net
}

func store(rng *rand.Rand) year.Store {
	s := year.Store{
		CapacityWh: math.Round(4 * 3000 * rng.Float64() * rng.Float64()), ChargeW: math.Round(4 * 400 * rng.Float64()),
		RoundTrip: []float64{1, 0.95, 0.9, 0.75}[rng.IntN(4)],
	}
	if rng.IntN(5) == 0 {
		s.ChargeW = math.Inf(1)
	}
	if rng.IntN(20) == 0 {
		s.CapacityWh = 0
	}
	return s
}

// asked returns what the loads take beyond the sun.
func asked(net []float64) float64 {
	sum := 0.0
	for _, n := range net {
		sum -= min(0, n)
	}
	return sum
}

// The plane that touches what is short at one store is nowhere above what is short, and that is convex and falls
// with the store, the charging limit and the round trip.
func TestShortageIsConvex(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 1))
	touched := 0
	for range 3000 {
		net := weather(rng, 20)
		a, b := store(rng), store(rng)
		b.RoundTrip = a.RoundTrip
		within := 1e-9 * asked(net) // sums of 480 hours
		short, there := year.Short(net, a), year.Short(net, b)
		if short.AtLeast(a.CapacityWh, a.ChargeW) != short.Wh {
			t.Fatalf("%+v: the plane is at %g, the shortage at %g", a, short.AtLeast(a.CapacityWh, a.ChargeW), short.Wh)
		}
		if least := short.AtLeast(b.CapacityWh, b.ChargeW); least > there.Wh+within {
			t.Fatalf("%+v to %+v: the plane is at %g, the shortage at %g", a, b, least, there.Wh)
		} else if least > there.Wh-within && least > 0 {
			touched++
		}
		if math.IsInf(a.ChargeW+b.ChargeW, 1) {
			continue
		}
		middle := year.Short(net, year.Store{
			CapacityWh: (a.CapacityWh + b.CapacityWh) / 2, ChargeW: (a.ChargeW + b.ChargeW) / 2, RoundTrip: a.RoundTrip,
		})
		if middle.Wh > (short.Wh+there.Wh)/2+within {
			t.Fatalf("between %+v and %+v: %g short, %g and %g at the ends", a, b, middle.Wh, short.Wh, there.Wh)
		}
	}
	if touched == 0 {
		t.Error("no plane touches the shortage at another store: the test says little")
	}
}

// Where what is short has a slope, the multipliers are that slope.
func TestShortageSlopes(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 1))
	steep := 0
	for range 2000 {
		net := weather(rng, 20)
		s := store(rng)
		if s.CapacityWh == 0 || math.IsInf(s.ChargeW, 1) {
			continue
		}
		slope := func(wh, w float64) (left, right float64) { // per unit, to both sides
			const d = 1e-4 // far below a quarter of a watt, far above rounding
			at := year.Short(net, s).Wh
			more, less := s, s
			more.CapacityWh, more.ChargeW = s.CapacityWh+d*wh, s.ChargeW+d*w
			less.CapacityWh, less.ChargeW = s.CapacityWh-d*wh, s.ChargeW-d*w
			return (year.Short(net, less).Wh - at) / d, (at - year.Short(net, more).Wh) / d
		}
		short := year.Short(net, s)
		for _, c := range []struct{ wh, w, slope float64 }{{1, 0, short.PerWh}, {0, 1, short.PerW}} {
			left, right := slope(c.wh, c.w)
			if c.slope > left+1e-4 || c.slope < right-1e-4 { // 1e-4: rounding of a difference of some 1e4 Wh over d
				t.Fatalf("%+v: slope %g outside of %g to %g", s, c.slope, right, left)
			}
			if c.slope > 0 && left-right < 1e-4 {
				steep++
			}
		}
	}
	if steep < 100 {
		t.Errorf("only %d slopes were other than 0 and the same on both sides", steep)
	}
}

// More storage, a higher charging limit, a better round trip or more sun never leave more short.
func TestShortageIsMonotone(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 1))
	for range 2000 {
		net := weather(rng, 20)
		s := store(rng)
		short := year.Short(net, s).Wh
		within := 1e-9 * asked(net)
		for name, better := range map[string]func(*year.Store){
			"storage":    func(s *year.Store) { s.CapacityWh += 500 * rng.Float64() },
			"charging":   func(s *year.Store) { s.ChargeW += 100 * rng.Float64() },
			"round trip": func(s *year.Store) { s.RoundTrip += (1 - s.RoundTrip) * rng.Float64() },
		} {
			more := s
			better(&more)
			if got := year.Short(net, more).Wh; got > short+within {
				t.Fatalf("more %s: %g short with %+v, %g with %+v", name, short, s, got, more)
			}
		}
		sunnier := make([]float64, len(net))
		for h, n := range net {
			sunnier[h] = n + max(0, 50*rng.Float64()-25)
		}
		if got := year.Short(sunnier, s).Wh; got > short+within {
			t.Fatalf("more sun: %g short, %g before", got, short)
		}
	}
}

// One more battery of a kind that charges slowly drags the whole bank's charging limit down: more storage, and more
// is short. No bank may be dropped because a smaller one failed.
func TestShortageIsNotMonotoneOverBanks(t *testing.T) {
	type battery struct{ usableWh, maxChargeA, conductance float64 }
	const busV = 48
	bank := func(batteries ...battery) year.Store {
		s := year.Store{ChargeW: math.Inf(1), RoundTrip: 0.95}
		all := 0.0
		for _, b := range batteries {
			all += b.conductance
			s.CapacityWh += b.usableWh
		}
		for _, b := range batteries { // the contract's rule: strings share the charging current by conductance
			s.ChargeW = min(s.ChargeW, b.maxChargeA*all/b.conductance*busV)
		}
		return s
	}
	quick, slow := battery{usableWh: 2300, maxChargeA: 50, conductance: 45}, battery{usableWh: 1150, maxChargeA: 2.5, conductance: 45}
	day := make([]float64, 0, 24)
	for h := range 24 {
		n := -100.0
		if h >= 9 && h < 15 {
			n = 450
		}
		day = append(day, n)
	}
	one, two := year.Short(day, bank(quick)), year.Short(day, bank(quick, slow))
	if !(bank(quick, slow).CapacityWh > bank(quick).CapacityWh && two.Wh > one.Wh) {
		t.Errorf("%g Wh short with %+v, %g with %+v", one.Wh, bank(quick), two.Wh, bank(quick, slow))
	}
	if one.Wh != 0 {
		t.Errorf("the quick one alone leaves %g Wh short", one.Wh)
	}
}

// LeastStorage is the least: with it no more is short than may be, with a little less more is.
func TestLeastStorage(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 1))
	found, none := 0, 0
	for range 1000 {
		net := weather(rng, 20)
		s := store(rng)
		may := asked(net) * []float64{0, 0.01, 0.05, 0.3}[rng.IntN(4)]
		c, ok := year.LeastStorage(net, s.ChargeW, s.RoundTrip, may)
		s.CapacityWh = c
		within := 1e-8 * asked(net)
		if !ok {
			s.CapacityWh = 1e9
			if got := year.Short(net, s).Wh; got <= may {
				t.Fatalf("%+v: no storage is said to do, %g short of %g with a huge one", s, got, may)
			}
			none++
			continue
		}
		if got := year.Short(net, s).Wh; got > may+within {
			t.Fatalf("%+v: %g short, %g may be", s, got, may)
		}
		if s.CapacityWh -= 0.01; s.CapacityWh > 0 {
			if got := year.Short(net, s).Wh; got <= may-within {
				t.Fatalf("%+v: %g short of %g already with less", s, got, may)
			}
			found++
		}
	}
	if found < 100 || none < 100 {
		t.Errorf("%d with a store, %d with none: the test says little", found, none)
	}
}
