package bound

import (
	"fmt"
	"math"
	"sort"

	"cartwright/catalog"
	"cartwright/optimize/bench"
)

// beaten says of each stack whether it is in none of the best plans, as many as are asked for, for certain: its battery is
// the same as others but for what it is called and what it costs, and enough of those come before it. Each of them in
// its place makes another core that comes before, unless that core has as many strings of it as its maker allows: so
// there have to be as many as plans, and one more for each kind of which that may be so.
func (o *Bounds) beaten(plans int) []bool {
	gone := make([]bool, len(o.Bench.Stacks))
	for _, same := range o.alike(plans) {
		need := plans + o.crowded(same[0])
		price := func(at int) float64 { return o.Bench.Market.Articles[o.Bench.Stacks[at].Article].Cents }
		sort.SliceStable(same, func(a, b int) bool { return price(same[a]) < price(same[b]) })
		cheaper, first := 0, 0 // those that are cheaper whatever the rounding of bills; the first of this price
		for i, at := range same {
			if price(at) > price(same[first]) {
				first = i
			}
			for price(same[cheaper])+2*o.Bench.RoundingCents < price(at) {
				cheaper++
			}
			gone[at] = cheaper+i-first >= need
		}
	}
	return gone
}

// alike lists the stacks whose batteries are the same but for name and price, of which there are more than so many.
// What is owned, offered, or to be kept is the same as nothing else.
func (o *Bounds) alike(plans int) [][]int {
	type size struct{ wh, kg, ohm float64 } // most batteries differ in these already
	sizeOf := func(b *catalog.Battery) size { return size{b.CapacityWh, b.MassKg, b.ResistanceOhm} }
	many := map[size]int{}
	for i := range o.Bench.Stacks {
		many[sizeOf(o.Bench.Stacks[i].Battery)]++
	}
	at := map[string]int{}
	var lists [][]int
	for i := range o.Bench.Stacks {
		k := &o.Bench.Stacks[i]
		if many[sizeOf(k.Battery)] <= plans || o.Bench.Market.Articles[k.Article].Special() || k.Article == o.Bench.Market.Must {
			continue
		}
		nameless := *k.Battery
		nameless.Part = catalog.Part{MassKg: nameless.MassKg}
		key := fmt.Sprintf("%+v", nameless)
		list, known := at[key]
		if !known {
			list = len(lists)
			at[key] = list
			lists = append(lists, nil)
		}
		lists[list] = append(lists[list], i)
	}
	return lists
}

// crowded returns how many kinds of a battery may be in a core beside another one that have no room for its strings: none
// where the maker allows as many of a kind as the cart carries.
func (o *Bounds) crowded(at int) int {
	k := &o.Bench.Stacks[at]
	carried := 0
	for _, modules := range k.Caps {
		carried += modules
	}
	carried /= k.Series
	if k.Kg > 0 {
		carried = int(math.Min(float64(carried), o.most/k.Kg))
	}
	if carried <= k.Most {
		return 0
	}
	return carried - 1
}

// groupsLeft returns the groups that have a member left.
func groupsLeft(b *bench.Bench, gone []bool) []int {
	var left []int
	for g, members := range b.Groups {
		for _, at := range members {
			if !gone[at] {
				left = append(left, g)
				break
			}
		}
	}
	return left
}
