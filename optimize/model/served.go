package model

import (
	"cmp"
	"math"
	"slices"

	"cartwright/optimize/bench"
	"cartwright/optimize/milp"
)

// serve requires that sun and store serve their share of the year, hour by hour: what is charged, stored, given and
// short. A single core is simulated before it is solved; only a program of many cores has these rows. Consecutive dark
// hours are one stretch, since the store only gives in them.
//
//	charged - given - short <= sun - asked,   stored - stored before <= round_trip charged - given
//	charged <= charging limit,   stored <= usable energy,   sum short <= (1 - served) sum asked
//
// A store that gives at once and charges what it can leaves the least short, so these rows can be met if and only if the
// simulation serves the share.
func (p *program) serve() {
	b := p.Bench
	served := b.Scenario.Limits.Served
	if !p.Space.hourly || served <= 0 || b.Scenario.Sun == nil || b.Partial || len(p.supply) == 0 {
		return
	}
	const kilo = 1000
	for _, i := range p.Space.supplies {
		b.Hours(i)
	}
	hours := stretches(b, p.Space.supplies)
	suns, asked := p.yearsOf(func(v *bench.Supply) any { return &v.Sun.SunWh[0] }, "array"), p.yearsOf(func(v *bench.Supply) any { return v.Sun.BusWh }, "loads")
	most := 0.0 // kWh that any array gives in an hour
	for _, x := range suns {
		for _, wh := range x.of.Sun.SunWh {
			most = math.Max(most, wh/kilo)
		}
	}
	limit := p.Model.Continuous("charging limit", 0, most)
	for i := range p.Space.strings {
		own := p.stack(i)
		e := milp.Expr{}
		e.AddExpr(b.Scenario.Bus.NominalV/kilo, p.shared(i, own.ChargeA))
		e.Add(-1, limit)
		e.Add(-most, p.present[i])
		p.Model.Row("charging limit by "+own.Battery.ID, e, milp.AtLeast, -most)
	}
	usable := p.Model.Continuous("usable energy", 0, math.Inf(1))
	e := p.byString(func(k *bench.Stack) float64 { return -k.UsableWh / kilo })
	e.Add(1, usable)
	p.Model.Row("usable energy", e, milp.Equal, 0)
	trips, lossy := p.roundTrips()
	var store []milp.Var
	for t := range hours {
		store = append(store, p.Model.Continuous("stored "+number(t), 0, math.Inf(1)))
	}
	var short milp.Expr
	for t, h := range hours {
		if p.ended() {
			return
		}
		at := number(t)
		given, missing := p.Model.Continuous("given "+at, 0, math.Inf(1)), p.Model.Continuous("short "+at, 0, math.Inf(1))
		short.Add(1, missing)
		net := milp.Sum(milp.T(-1, given), milp.T(-1, missing))
		flow := milp.Sum(milp.T(1, store[t]), milp.T(-1, store[(t+len(hours)-1)%len(hours)]), milp.T(1, given))
		for _, x := range asked {
			net.Add(h.asked(x.of)/kilo, x.chosen)
		}
		if h.lit {
			charged := p.Model.Continuous("charged "+at, 0, most)
			net.Add(1, charged)
			for _, x := range suns {
				net.Add(-x.of.Sun.SunWh[h.from]/kilo, x.chosen)
			}
			p.Model.Row("charged at most "+at, milp.Sum(milp.T(1, charged), milp.T(-1, limit)), milp.AtMost, 0)
			for i, trip := range trips {
				row := milp.Expr{}
				row.AddExpr(1, flow)
				row.Add(-trip, charged)
				if lossy[i] == nil {
					p.Model.Row("stored by charging "+at+" "+number(i), row, milp.AtMost, 0)
					continue
				}
				row.Add((trips[0]-trip)*most, *lossy[i])
				p.Model.Row("stored by charging "+at+" "+number(i), row, milp.AtMost, (trips[0]-trip)*most)
			}
		} else {
			p.Model.Row("stored in the dark "+at, flow, milp.AtMost, 0)
		}
		p.Model.Row("energy "+at, net, milp.AtMost, 0)
		p.Model.Row("store "+at, milp.Sum(milp.T(1, store[t]), milp.T(-1, usable)), milp.AtMost, 0)
	}
	short.AddExpr(-(1 - served), p.bySupply(func(v *bench.Supply) float64 { return v.Sun.AskedWh() / kilo }))
	p.Model.Row("served", short, milp.AtMost, 0)
}

// stretch is a lit hour, or consecutive dark hours.
type stretch struct {
	from, to int
	lit      bool
}

// asked returns what a supply asks of the bus in a stretch, in Wh.
func (s stretch) asked(v *bench.Supply) float64 {
	sum := 0.0
	for h := s.from; h < s.to; h++ {
		sum += v.Sun.BusWh[h%24]
	}
	return sum
}

// stretches cuts the record into lit hours and dark stretches.
func stretches(b *bench.Bench, supplies []int) []stretch {
	lit := make([]bool, len(b.Supplies[supplies[0]].Sun.SunWh))
	for _, i := range supplies {
		for h, wh := range b.Supplies[i].Sun.SunWh {
			lit[h] = lit[h] || wh > 0
		}
	}
	var list []stretch
	for h := range lit {
		if n := len(list); !lit[h] && n > 0 && !list[n-1].lit {
			list[n-1].to++
			continue
		}
		list = append(list, stretch{h, h + 1, lit[h]})
	}
	return list
}

// yearAlike is a set of supplies whose year has something in common.
type yearAlike struct {
	of     *bench.Supply // any of them
	chosen milp.Var      // 1 if the supply is one of them
}

// yearsOf groups the supplies by a figure of their year.
func (p *program) yearsOf(figure func(v *bench.Supply) any, name string) []yearAlike {
	var list []yearAlike
	var chosen []milp.Expr
	known := map[any]int{}
	for i, at := range p.Space.supplies {
		v := &p.Bench.Supplies[at]
		key := figure(v)
		k, seen := known[key]
		if !seen {
			k = len(list)
			known[key] = k
			list, chosen = append(list, yearAlike{of: v}), append(chosen, milp.Expr{})
		}
		chosen[k].Add(1, p.supply[i])
	}
	for k := range list {
		list[k].chosen = p.Model.Continuous(name+" "+number(k), 0, 1)
		chosen[k].Add(-1, list[k].chosen)
		p.Model.Row("one of "+name+" "+number(k), chosen[k], milp.Equal, 0)
	}
	return list
}

// roundTrips returns the different round trips of the strings, the best first, and for each but that one a variable that
// is 1 if a string with it is present.
func (p *program) roundTrips() (trips []float64, present []*milp.Var) {
	of := map[float64][]int{}
	for i := range p.Space.strings {
		trip := p.stack(i).Battery.RoundTrip
		if of[trip] == nil {
			trips = append(trips, trip)
		}
		of[trip] = append(of[trip], i)
	}
	slices.SortFunc(trips, func(a, b float64) int { return cmp.Compare(b, a) })
	for k, trip := range trips {
		if k == 0 {
			present = append(present, nil)
			continue
		}
		z := p.Model.Continuous("round trip "+number(k), 0, 1)
		for _, i := range of[trip] {
			p.Model.Row("round trip of "+p.stack(i).Battery.ID, milp.Sum(milp.T(1, z), milp.T(-1, p.present[i])), milp.AtLeast, 0)
		}
		present = append(present, &z)
	}
	return trips, present
}
