package bound

import (
	"fmt"
	"sort"

	"cartwright/catalog"
	"cartwright/optimize/bench"
)

// beaten says of each stack whether it is certain to be in none of the best plans, of which plans are asked for: other
// batteries differ from it only in name and price, and enough of them come before it. Each of those in its place makes
// another core that comes before, unless that core already has all the strings of it that its maker allows. So there
// have to be plans of them, and one more for each kind for which that may be so.
func (o *Bounds) beaten(plans int) []bool {
	gone := make([]bool, len(o.Bench.Stacks))
	for _, same := range o.alike(plans) {
		need := plans + o.crowded(same[0])
		price := func(at int) float64 { return o.Bench.Market.Articles[o.Bench.Stacks[at].Article].Cents }
		sort.SliceStable(same, func(a, b int) bool { return price(same[a]) < price(same[b]) })
		cheaper, first := 0, 0 // how many are cheaper whatever the rounding of bills; the first of this price
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

// alike lists the sets of stacks whose batteries differ only in name and price, where there may be more than plans of
// them. Batteries that are owned, offered or to be kept are never alike.
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

// crowded returns how many alike batteries a core may have that cannot take over the strings of another because their
// maker allows no more: none where the maker allows as many as the cart carries.
func (o *Bounds) crowded(at int) int {
	k := &o.Bench.Stacks[at]
	carried := 0
	for _, modules := range k.Caps {
		carried += modules
	}
	carried /= k.Series
	if k.Kg > 0 {
		carried = int(min(float64(carried), o.most/k.Kg))
	}
	if carried <= k.Most {
		return 0
	}
	return carried - 1
}

// groupsLeft returns the groups with a member that is not gone.
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
