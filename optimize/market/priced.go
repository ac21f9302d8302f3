package market

import "sync"

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
		list = make([]Option, 0, len(options))
		for i := range options {
			if o := options[i]; m.CanHave(&o) {
				m.Price(&o)
				list = append(list, o)
			}
		}
		list = m.Prune(list, heavy)
		m.priced.known[key] = list
	}
	return list
}
