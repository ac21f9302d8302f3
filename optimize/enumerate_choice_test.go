package optimize_test

import (
	"cmp"
	"math"
	"slices"
)

// mostBent is the most parts of a small problem's wiring whose pieces do not all cost the same.
const mostBent = 14

// eighths are in one: paths of random problems are whole eighths of a metre long.
const eighths = 8

// wired is what some ways to wire all paths have in common: how much they take of each bent part, and what
// they ask of bond and load centre.
type wired struct {
	bent [mostBent]int32 // eighths of a piece or metre
	asks asks
}

// worth is a cost in cents and a mass in kg.
type worth struct{ cost, massKg float64 }

// wirings are ways to wire some paths: what they cost and weigh, by what they have in common.
type wirings map[wired][]worth

// pricing says how wirings are priced and when one may be left out.
type pricing struct {
	level   int  // of shipping
	lighter bool // is never worse
}

// wirings returns every way to wire the branches and some other paths, as the cost and mass of all that is
// bought for it. Of two that take the same of every bent part, only what they cost and weigh tells them
// apart. Where lighter is never worse, one that costs and weighs no less than another of its like is left
// out.
func (e *enumeration) wirings(paths [][]option, p pricing) wirings {
	all, known := e.branchWirings[p]
	if !known {
		all = wirings{{}: {{}}}
		for _, path := range e.fixed() {
			all = e.longer(all, path, p)
		}
		e.branchWirings[p] = all
	}
	for _, path := range paths {
		all = e.longer(all, path, p)
	}
	complete := wirings{}
	for k, list := range all {
		cost := 0.0
		for i, g := range e.bent {
			cost += e.market.cost(g, float64(k.bent[i])/eighths, p.level) - e.market.cost(g, 0, p.level)
		}
		for _, w := range list {
			complete[k] = append(complete[k], worth{w.cost + cost, w.massKg})
		}
	}
	return complete
}

// longer returns wirings with one more path.
func (e *enumeration) longer(all wirings, path []option, p pricing) wirings {
	if p.lighter {
		path = thrifty(path)
	}
	longer := wirings{}
	for _, o := range path {
		key, value := e.step(o, p.level)
		for k, list := range all {
			for i, q := range key.bent {
				k.bent[i] += q
			}
			k.asks = k.asks.with(key.asks)
			for _, w := range list {
				longer[k] = append(longer[k], worth{w.cost + value.cost, w.massKg + value.massKg})
			}
		}
	}
	for k, list := range longer {
		longer[k] = different(list, p.lighter)
	}
	return longer
}

// thrifty returns the options of which no other takes less of one thing and no more of any: two sets where
// one will do, for example. More of a part never costs less, as one may buy it and leave it.
func thrifty(path []option) []option {
	var kept []option
	for i := range path {
		if !slices.ContainsFunc(path, func(o option) bool { return o.within(&path[i]) && !path[i].within(&o) }) {
			kept = append(kept, path[i])
		}
	}
	return kept
}

// within reports whether an option takes no more of anything than another, and no less of what is to be kept.
func (o *option) within(other *option) bool {
	for _, t := range o.takes {
		if o.quantity(t.good) > other.quantity(t.good) {
			return false
		}
	}
	for _, t := range other.takes {
		if t.good.kept > 0 && o.quantity(t.good) < other.quantity(t.good) {
			return false
		}
	}
	return o.asks.within(&other.asks)
}

// quantity returns how much an option takes of a part.
func (o *option) quantity(g *good) float64 {
	total := 0.0
	for _, t := range o.takes {
		if t.good == g {
			total += t.quantity
		}
	}
	return total
}

// step returns what an option adds.
func (e *enumeration) step(o option, level int) (key wired, value worth) {
	key.asks = o.asks
	for _, t := range o.takes {
		value.massKg += t.quantity * t.good.kgEach
		if t.good.straight() {
			value.cost += e.market.cost(t.good, t.quantity, level)
			continue
		}
		i := slices.Index(e.bent, t.good)
		if i < 0 {
			i = len(e.bent)
			e.bent = append(e.bent, t.good)
		}
		key.bent[i] += int32(t.quantity * eighths)
	}
	return key, value
}

// keeps reports whether wirings have all devices that are to be kept.
func (e *enumeration) keeps(w *wired) bool {
	for i := range e.c.Devices {
		g := e.market.goods[e.c.Devices[i].ID]
		has := 0.0
		if at := slices.Index(e.bent, g); at >= 0 {
			has = float64(w.bent[at]) / eighths
		}
		if has < g.kept {
			return false
		}
	}
	return true
}

// different returns the values of a list that are not the same but for rounding; where lighter is never
// worse, only those of which no other costs and weighs no more.
func different(list []worth, lighter bool) []worth {
	slices.SortFunc(list, func(a, b worth) int {
		return cmp.Or(cmp.Compare(a.cost, b.cost), cmp.Compare(a.massKg, b.massKg))
	})
	kept := list[:0]
	for _, w := range list {
		if n := len(kept); n > 0 {
			last := kept[n-1]
			if lighter && last.massKg <= w.massKg ||
				w.cost-last.cost < near && math.Abs(w.massKg-last.massKg) < near {
				continue
			}
		}
		kept = append(kept, w)
	}
	return kept
}
