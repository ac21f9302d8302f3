package model

import (
	"math"

	"cartwright/optimize/choice"
	"cartwright/optimize/market"
)

// mostUsed returns the most that can be needed of each special article that something in the space can use.
func (p *program) mostUsed() map[int]float64 {
	most := map[int]float64{}
	note := func(article int, quantity float64) {
		if p.market.Articles[article].Special() {
			most[article] += quantity
		}
	}
	m := p.market
	for i, r := range p.Space.strings {
		k := p.stack(i)
		note(m.Part(k.Battery.ID).Position, float64(r.hi*k.Series))
	}
	for _, at := range p.Space.supplies {
		v := &p.Bench.Supplies[at]
		note(m.Part(v.Inverter.ID).Position, float64(v.Units))
		if x := v.Array; x != nil {
			note(m.Part(x.Module.ID).Position, float64(x.Modules()))
		}
	}
	for i := range p.slots {
		v := &p.slots[i]
		largest := map[int]float64{} // one option fills a place, at worst the one that uses most
		for j := range v.slot.Options {
			for _, u := range v.slot.Options[j].Uses {
				largest[u.Article] = math.Max(largest[u.Article], u.Quantity)
			}
		}
		for article, quantity := range largest {
			note(article, float64(v.most)*quantity)
		}
	}
	return most
}

// trimRounds is how often options are trimmed: with fewer options less is needed, so more can be trimmed.
const trimRounds = 3

// trim leaves out of a single core, where the orders are decided, the quantity breaks that it cannot reach, articles
// that are not worth having even at their least price, and the options that are then dominated.
func (p *program) trim() {
	if !p.fixed() || !p.market.ShippingFixed {
		return
	}
	for range trimRounds {
		p.fit()
		most, before := p.mostUsed(), p.size()
		p.market = p.market.Needing(most)
		for i := range p.slots {
			v := &p.slots[i]
			for j := range v.slot.Options {
				p.market.Price(&v.slot.Options[j])
			}
			v.slot.Options = p.market.Prune(v.slot.Options, p.heavy(v))
		}
		for i := range p.market.Articles {
			if most[i] > 0 {
				p.spare(&p.market.Articles[i])
			}
		}
		if p.size() == before {
			return
		}
	}
}

// size returns how many options there are.
func (p *program) size() int {
	n := 0
	for i := range p.slots {
		n += len(p.slots[i].slot.Options)
	}
	return n
}

// spare leaves an article out where other options do as well in every slot that could use it.
func (p *program) spare(a *market.Article) {
	if len(a.Offers) == 0 || a.Have > 0 || a.Keep > 0 || p.market.Must == a.Position || isCore(a.Kind) {
		return
	}
	without := make([][]market.Option, len(p.slots))
	for i := range p.slots {
		var ok bool
		if without[i], ok = p.market.Spare(p.slots[i].slot.Options, a.Position, p.heavy(&p.slots[i])); !ok {
			return
		}
	}
	for i := range p.slots {
		p.slots[i].slot.Options = without[i]
	}
}

// heavy reports whether more mass in a slot may help against tipping.
func (p *program) heavy(v *slotVars) bool {
	if p.Space.CannotTip {
		return false
	}
	if v.kind == choice.SlotCasters {
		return p.Bench.Tips.HeavyCasters
	}
	return p.Bench.Tips.HeavyBoard
}
