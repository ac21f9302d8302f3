package compare

import (
	"context"
	"sort"

	"cartwright/catalog"
	"cartwright/optimize/bench"
	"cartwright/optimize/energy"
	"cartwright/optimize/question"
)

// fitting knows which of the owned and the named batteries may be on the cart together.
type fitting struct {
	b     *bench.Bench
	p     question.Problem
	buy   []Line
	kinds []kind // owned or named, in catalogue order
}

// kind is a kind of battery that is owned or named.
type kind struct {
	battery      *catalog.Battery
	owned, named int
	kept         int    // how many of the owned have to stay
	why          string // why it cannot be used at all; "" where it can
	series       int
}

// bank is the batteries of a choice: those named, and how many owned modules of each kind stay.
type bank struct {
	stay     []int // by kind
	modules  map[string]int
	series   map[string]int
	idle     map[string]float64 // owned modules of these kinds that do not stay
	stayedWh float64
}

func newFitting(b *bench.Bench, p question.Problem, buy []Line) *fitting {
	f := &fitting{b: b, p: p, buy: buy}
	owned, named, kept := map[string]int{}, map[string]int{}, map[string]int{}
	for _, h := range p.Scenario.Have {
		owned[h.PartID] += int(h.Count)
		if h.Keep {
			kept[h.PartID] += int(h.Count)
		}
	}
	for _, l := range buy {
		named[l.Part] += l.Count
	}
	for i := range p.Catalog.Batteries {
		bat := &p.Catalog.Batteries[i]
		k := kind{battery: bat, owned: owned[bat.ID], named: named[bat.ID], kept: kept[bat.ID]}
		if k.owned+k.named == 0 {
			continue
		}
		k.series, _ = energy.Fits(p.Scenario.Bus, bat)
		if why := b.WhyNot(bat.ID); len(why) > 0 {
			k.why = why[0]
		}
		f.kinds = append(f.kinds, k)
	}
	return f
}

// banks lists every possible bank, those that keep the most usable energy of what is owned first; of equals, those that
// keep more of the earlier kinds. With many kinds owned there are very many banks; the error is question.ErrUnknown where
// the context ends before all are listed.
func (f *fitting) banks(ctx context.Context) ([]bank, error) {
	var list []bank
	stay := make([]int, len(f.kinds))
	var choose func(i int, some *catalog.Battery)
	choose = func(i int, some *catalog.Battery) {
		if i == len(f.kinds) {
			if some != nil {
				list = append(list, f.bankOf(stay))
			}
			return
		}
		k := &f.kinds[i]
		for n := k.owned; n >= k.kept && ctx.Err() == nil; n-- {
			stay[i] = n
			switch {
			case n+k.named == 0:
				choose(i+1, some)
			case k.stands(n+k.named) && (some == nil || energy.ShareBus(some, k.battery)):
				choose(i+1, k.battery)
			}
		}
	}
	choose(0, nil)
	if ctx.Err() != nil {
		return nil, question.ErrUnknown
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].stayedWh > list[j].stayedWh })
	return list, nil
}

// stands reports whether so many modules of a kind make whole strings, at most as many as its maker allows in parallel.
func (k *kind) stands(modules int) bool {
	return k.why == "" && modules%k.series == 0 && (k.battery.MaxParallel == 0 || modules/k.series <= k.battery.MaxParallel)
}

// bankOf returns the bank in which stay owned modules of each kind stay.
func (f *fitting) bankOf(stay []int) bank {
	b := bank{stay: append([]int(nil), stay...), modules: map[string]int{}, series: map[string]int{}, idle: map[string]float64{}}
	for i := range f.kinds {
		k := &f.kinds[i]
		if n := stay[i] + k.named; n > 0 {
			b.modules[k.battery.ID], b.series[k.battery.ID] = n, k.series
			b.idle[k.battery.ID] = float64(k.owned - stay[i])
			b.stayedWh += float64(stay[i]) * energy.UsableWh(k.battery, f.p.Scenario.Limits.Reserve)
		}
	}
	return b
}

// kept lists the owned batteries that stay.
func (b *bank) kept(f *fitting) []Line {
	var list []Line
	for i := range f.kinds {
		if b.stay[i] > 0 {
			list = append(list, Line{f.kinds[i].battery.ID, b.stay[i]})
		}
	}
	return list
}

// usableWh returns the usable energy of a bank.
func (b *bank) usableWh(p question.Problem) float64 {
	wh := 0.0
	for i := range p.Catalog.Batteries {
		bat := &p.Catalog.Batteries[i]
		wh += float64(b.modules[bat.ID]) * energy.UsableWh(bat, p.Scenario.Limits.Reserve)
	}
	return wh
}
