package bench

import (
	"math"

	"cartwright/optimize/market"
	"cartwright/optimize/wiring"
)

// useRange is the least and the most of an article that some options use, those that use none not counted.
type useRange struct {
	article     int
	least, most float64
}

// rangesOf is the function rangesOf of a list that nobody changes.
func (l *Before) rangesOf(options []market.Option) []useRange {
	if len(options) == 0 {
		return nil
	}
	l.lock.Lock()
	defer l.lock.Unlock()
	if l.listed == nil {
		l.listed = map[*market.Option][]useRange{}
	}
	ranges, known := l.listed[&options[0]]
	if !known {
		ranges = rangesOf(options)
		l.listed[&options[0]] = ranges
	}
	return ranges
}

// rangesOf returns the ranges of all articles that some options use, in the order of first use.
func rangesOf(options []market.Option) []useRange {
	var ranges []useRange
	at := map[int]int{}
	for i := range options {
		for _, u := range options[i].Uses {
			k, known := at[u.Article]
			if !known {
				k = len(ranges)
				at[u.Article] = k
				ranges = append(ranges, useRange{u.Article, u.Quantity, u.Quantity})
			}
			r := &ranges[k]
			r.least, r.most = math.Min(r.least, u.Quantity), math.Max(r.most, u.Quantity)
		}
	}
	return ranges
}

// counts reports whether quantities count: without offers there are no quantity breaks.
func (b *Bench) counts() bool { return len(b.Catalog.Offers) > 0 }

// countUses gives the market, for each article but batteries, inverters and solar modules, the least that an option
// uses of it if it uses any, and the most that a plan can need: a quantity break beyond that is of no use.
func (b *Bench) countUses() {
	if !b.counts() {
		return
	}
	least, most := map[int]float64{}, map[int]float64{}
	var ofSupply map[int]float64
	note := func(ranges []useRange, count float64, sum map[int]float64) {
		for _, r := range ranges {
			if had, known := least[r.article]; !known || r.least < had {
				least[r.article] = r.least
			}
			sum[r.article] += count * r.most
		}
	}
	for i := range b.Fixed {
		note(b.before.rangesOf(b.Fixed[i].Options), float64(b.Fixed[i].Count), most)
	}
	note(b.before.rangesOf(b.Busbars), 1, most)
	note(b.before.rangesOf(b.Casters), 1, most)
	beside := map[int]float64{} // the most that any supply needs
	for i := range b.Supplies {
		v := &b.Supplies[i]
		ofSupply = map[int]float64{}
		note(b.before.rangesOf(v.Main), float64(v.Units), ofSupply)
		note(b.before.rangesOf(v.Feeder), float64(v.Units), ofSupply)
		note(b.before.rangesOf(v.Solar), float64(v.inputs()), ofSupply)
		note(b.before.rangesOf(v.Fuses), float64(v.stringFuses()), ofSupply)
		for article, n := range ofSupply {
			beside[article] = math.Max(beside[article], n)
		}
	}
	for article, n := range beside {
		most[article] += n
	}
	for article, n := range b.stringUses(note) {
		most[article] += n
	}
	for article, n := range most {
		a := &b.Market.Articles[article]
		a.Least, a.Most = least[article], n
	}
}

// stringUses returns the most that the strings of a core can use of each article.
func (b *Bench) stringUses(note func([]useRange, float64, map[int]float64)) map[int]float64 {
	strings, all := 0, map[int]float64{}
	for g := range b.Groups {
		strings = max(strings, b.mostStrings(g))
	}
	for i := range b.Stacks {
		d, listed := wiring.StringDuty(b.Scenario, b.Stacks[i].Battery, b.LeastBusA(), 1)
		if !listed {
			continue
		}
		one := map[int]float64{}
		note(b.before.used(wiredRun{d, b.Tips.HeavyBoard}), mostDevices*float64(strings), one)
		for article, n := range one {
			all[article] = math.Max(all[article], n)
		}
	}
	return all
}

// mostDevices is how many devices a string has at most, one at each end. The ranges are those with one device, so all
// quantities are doubled, which is enough.
const mostDevices = 2

// mostStrings returns an upper bound on how many strings of a group's members the shelves hold.
func (b *Bench) mostStrings(group int) int {
	modules, most := 0, 0
	for shelf := range b.Scenario.Cart.Shelves {
		caps := 0
		for _, at := range b.Groups[group] {
			caps = max(caps, b.Stacks[at].Caps[shelf])
		}
		modules += caps
	}
	for _, at := range b.Groups[group] {
		most += b.Stacks[at].Most
	}
	return min(modules, most)
}
