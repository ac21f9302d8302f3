package optimize

import (
	"math"
	"slices"

	"cartwright/catalog"
)

// Owned cable, devices and sundries cost nothing, but there are only so many. A bound that lets every slot
// use them for nothing is often far too low, one that pays for all and then takes off what the owned ones
// can save at the most is often exact. Both are bounds; the higher counts.

// ownedSupport is an owned article other than batteries and inverters.
type ownedSupport struct {
	article int
	have    float64
	saves   float64 // cents, of using one
	// The most that can be used of it: by what every plan has, and by each supply and each string.
	common   float64
	bySupply []float64
	byStack  []float64
}

// boundPaid prepares the second bound.
func (o *bounds) boundPaid() {
	for i := range o.market.articles {
		a := &o.market.articles[i]
		if a.have <= 0 || a.kind == string(catalog.KindBattery) || a.kind == string(catalog.KindInverter) {
			continue
		}
		x := ownedSupport{article: i, have: a.have}
		for _, s := range o.b.fixed {
			x.common += float64(s.count) * mostOf(s.options, i)
		}
		x.common += mostOf(o.b.busbars, i) + mostOf(o.b.casters, i)
		for j := range o.b.supplies {
			v := &o.b.supplies[j]
			x.bySupply = append(x.bySupply, float64(v.units)*mostOf(v.main, i)+mostOf(v.feeder, i))
		}
		for j := range o.b.stacks {
			x.byStack = append(x.byStack, mostOf(o.b.stacks[j].options, i))
		}
		if x.common > 0 || slices.Max(append(x.bySupply, 0)) > 0 || slices.Max(append(x.byStack, 0)) > 0 {
			o.owned = append(o.owned, x)
		}
	}
	if len(o.owned) == 0 {
		return
	}
	m := *o.market
	m.articles = slices.Clone(m.articles)
	for i := range o.owned {
		x := &o.owned[i]
		a := &m.articles[x.article]
		a.have, a.sellFor = 0, 0
		price := a.floorCents(m.tax)
		if math.IsInf(price, 1) {
			o.owned = nil // it cannot be bought: nothing bounds what owning it saves
			return
		}
		x.saves = math.Max(0, price-o.market.articles[x.article].sellFor)
	}
	paid := &bounds{b: o.b, market: &m, most: o.most}
	paid.boundSupplies()
	paid.boundStrings()
	o.paid = paid
}

// mostOf returns the most of an article that any of some options uses.
func mostOf(options []option, article int) float64 {
	most := 0.0
	for i := range options {
		most = math.Max(most, quantityOf(&options[i], article))
	}
	return most
}

// saved returns what the owned articles can save a core at the most, in cents.
func (o *bounds) saved(c *core) float64 {
	cents := 0.0
	for i := range o.owned {
		x := &o.owned[i]
		used := x.common + x.bySupply[c.supply]
		for _, h := range c.strings {
			used += float64(h.n) * x.byStack[o.b.groups[c.group][h.member]]
		}
		cents += x.saves * math.Min(x.have, used)
	}
	return cents
}
