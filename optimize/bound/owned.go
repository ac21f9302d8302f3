package bound

import (
	"math"
	"slices"

	"cartwright/catalog"
	"cartwright/optimize/bench"
	"cartwright/optimize/market"
)

// Owned cable, devices and sundries cost nothing, but there are only so many. A bound that lets every slot use them for
// nothing is often far too low; one that pays for everything and then subtracts the most that the owned ones can save is
// often exact. Both are lower bounds; the higher counts.

// ownedSupport is an owned article other than batteries, inverters and solar modules.
type ownedSupport struct {
	article int
	have    float64
	saves   float64 // cents saved by using one
	// The most of it that can be used: by what every plan has, by each supply and by each string.
	common   float64
	bySupply []float64
	byStack  []float64
}

// boundOwned prepares the second bound, and returns its market; nil where there is none.
func (o *Bounds) boundOwned() *market.Market {
	m := *o.Bench.Market
	for i := range m.Articles {
		a := &m.Articles[i]
		if a.Have <= 0 || a.Kind == string(catalog.KindBattery) || a.Kind == string(catalog.KindInverter) || a.Kind == string(catalog.KindSolar) {
			continue
		}
		x := ownedSupport{article: i, have: a.Have}
		for _, s := range o.Bench.Fixed {
			x.common += float64(s.Count) * mostOf(s.Options, i)
		}
		x.common += mostOf(o.Bench.Busbars, i) + mostOf(o.Bench.Casters, i)
		for j := range o.Bench.Supplies {
			v := &o.Bench.Supplies[j]
			x.bySupply = append(x.bySupply, usedBySupply(v, i))
		}
		for j := range o.Bench.Stacks {
			x.byStack = append(x.byStack, mostDevices*mostOf(o.Bench.Stacks[j].Options, i))
		}
		if x.common > 0 || slices.Max(append(x.bySupply, 0)) > 0 || slices.Max(append(x.byStack, 0)) > 0 {
			o.owned = append(o.owned, x)
		}
	}
	if len(o.owned) == 0 {
		return nil
	}
	m.Articles = slices.Clone(m.Articles)
	for i := range o.owned {
		x := &o.owned[i]
		a := &m.Articles[x.article]
		sells := a.SellFor
		a.Have, a.SellFor = 0, 0
		price, _, _ := a.FloorAt(m.Tax, nil)
		if math.IsInf(price, 1) {
			o.owned = nil // it cannot be bought: nothing bounds what owning it saves
			return nil
		}
		// At one price wherever it is bought, owning one saves no more than that price.
		a.Offers, a.Cents, a.Buyable = nil, price/(1+m.Tax), math.Inf(1)
		x.saves = max(0, price-sells)
	}
	return &m
}

// mostDevices is how many devices a string has at most, one at each end. The options are those with one device, so all
// quantities are doubled, which is enough.
const mostDevices = 2

// usedBySupply returns the most of an article that the runs and fuses of a supply use.
func usedBySupply(v *bench.Supply, article int) float64 {
	used := float64(v.Units) * (mostOf(v.Main, article) + mostOf(v.Feeder, article))
	if x := v.Array; x != nil {
		used += float64(x.Inputs) * (mostOf(v.Solar, article) + float64(x.Parallel)*mostOf(v.Fuses, article))
	}
	return used
}

// mostOf returns the most of an article that any of some options uses.
func mostOf(options []market.Option, article int) float64 {
	most := 0.0
	for i := range options {
		most = max(most, market.QuantityOf(&options[i], article))
	}
	return most
}

// saved returns the most that the owned articles can save a core, in cents.
func (o *Bounds) saved(c *bench.Core) float64 {
	cents := 0.0
	for i := range o.owned {
		x := &o.owned[i]
		used := x.common + x.bySupply[c.Supply]
		for _, h := range c.Strings {
			used += float64(h.N) * x.byStack[o.Bench.Groups[c.Group][h.Member]]
		}
		cents += x.saves * min(x.have, used)
	}
	return cents
}
