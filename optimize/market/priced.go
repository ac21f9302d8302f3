package market

import (
	"math"
	"sync"
)

// pricedLists remembers lists of options at a market's prices: cores that are solved there share them.
type pricedLists struct {
	lock  sync.Mutex // cores are solved side by side
	known map[listKey][]Option
}

// listKey is a list that nobody changes.
type listKey struct {
	first *Option
	count int
	heavy bool
}

// Priced returns the options that can be had at the market's prices and that no other dominates there. The list given
// must never change.
func (m *Market) Priced(options []Option, heavy bool) []Option {
	if len(options) == 0 {
		return nil
	}
	key := listKey{&options[0], len(options), heavy}
	m.priced.lock.Lock()
	defer m.priced.lock.Unlock()
	list, known := m.priced.known[key]
	if !known {
		list = m.Prune(m.seeded(options, heavy), heavy)
		m.priced.known[key] = list
	}
	return list
}

// seeded returns the options that can be had, at the market's prices, without those that the cheapest or the lightest of
// them dominates: of thousands that leaves few to compare.
func (m *Market) seeded(options []Option, heavy bool) []Option {
	cheapest, lightest := -1, -1
	floors := make([]float64, len(options))
	for i := range options {
		o := options[i]
		if !m.CanHave(&o) {
			floors[i] = math.Inf(1)
			continue
		}
		m.Price(&o)
		floors[i] = o.Floor
		if cheapest < 0 || o.Floor < floors[cheapest] {
			cheapest = i
		}
		if lightest < 0 || o.Kg < options[lightest].Kg || o.Kg == options[lightest].Kg && o.Floor < floors[lightest] {
			lightest = i
		}
	}
	if cheapest < 0 {
		return nil
	}
	seeds := [2]Option{options[cheapest], options[lightest]}
	m.Price(&seeds[0])
	m.Price(&seeds[1])
	var list []Option
	for i := range options {
		if math.IsInf(floors[i], 1) {
			continue
		}
		o := options[i]
		m.Price(&o)
		if i != cheapest && m.dominates(&seeds[0], &o, heavy, nothing) || i != lightest && i != cheapest && m.dominates(&seeds[1], &o, heavy, nothing) {
			continue
		}
		list = append(list, o)
	}
	return list
}
