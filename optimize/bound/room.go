package bound

import (
	"math"

	"cartwright/optimize/question"
)

// Room is the mass that is left to a cell, and what a kg of it is worth: where little is left, what is cheap and heavy is
// no bargain.
//
// Strings that lack at least some Wh, and weigh at most Kg, cost at least
//
//	min over strings with that energy of (cents + w*kg)  -  w*Kg
//
// for any w of at least 0 cents per kg (Lagrange). The w taken is the one that is best for parts of strings.
type Room struct {
	Kg    float64
	price *weighed // nil: a kg is worth nothing
}

// adds returns the least cents that one string of so many cents and kg adds, and those from a position on that then add
// at least wh.
func (x *Room) adds(cents, kg float64, position int, wh float64) float64 {
	return cents + x.price.centsPerKg*(kg-x.Kg) + x.price.cover.least(position, wh)
}

// mostPrices is how many prices of a kg a group has tables for, about 4 MB each for a large one.
const mostPrices = 8

// weighed is a table of a group at one price of a kg.
type weighed struct {
	centsPerKg float64
	cover      cover // of cents + centsPerKg*kg
}

// RoomOf returns the room of kg for strings of a group that lack wh.
func (r *Rest) RoomOf(group int, wh, kg float64) Room {
	room, l := Room{Kg: kg}, r.lineup(group)
	if r.by != question.ByCost || len(l.members) < 2 || len(l.owned) > 0 || wh <= 0 {
		return room
	}
	price := l.worth(wh, kg)
	if price <= 0 {
		return room
	}
	nearest := -1
	for i := range l.weighed {
		if nearest < 0 || math.Abs(l.weighed[i].centsPerKg-price) < math.Abs(l.weighed[nearest].centsPerKg-price) {
			nearest = i
		}
	}
	if len(l.weighed) < mostPrices && (nearest < 0 || l.weighed[nearest].centsPerKg != price) {
		sums := make([]float64, len(l.members))
		for i := range sums {
			sums[i] = l.figure[i] + price*l.kgOf[i]
		}
		nearest = len(l.weighed)
		l.weighed = append(l.weighed, &weighed{price, coverOf(l.wh, sums, l.most, r.mostWh)})
	}
	room.price = l.weighed[nearest]
	return room
}

// worth returns what a kg is worth, in cents, where parts of strings with at least wh have to weigh at most kg: 0 where
// the cheapest do, or where even the lightest do not. It is the price at which a cheaper and a lighter string are as good.
func (l *lineup) worth(wh, kg float64) float64 {
	best := func(price float64) (at int, least float64) {
		least = math.Inf(1)
		for i, cents := range l.centsPerWh {
			if sum := cents + price*l.kgPerWh[i]; sum < least {
				at, least = i, sum
			}
		}
		return at, least
	}
	fits := func(i int) bool { return wh*l.kgPerWh[i] <= kg }
	cheap, _ := best(0)
	light := l.lightest
	if fits(cheap) || !fits(light) {
		return 0
	}
	for {
		price := (l.centsPerWh[light] - l.centsPerWh[cheap]) / (l.kgPerWh[cheap] - l.kgPerWh[light])
		at, least := best(price)
		const hair = 1e-12 // of the sum, against its rounding
		if least >= (l.centsPerWh[cheap]+price*l.kgPerWh[cheap])*(1-hair) {
			return price
		}
		if fits(at) {
			light = at
		} else {
			cheap = at
		}
	}
}
