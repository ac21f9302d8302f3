package market

import (
	"math"
	"sync"
)

// pricedLists remembers lists of options at a market's prices, for all the cores that are solved at them.
type pricedLists struct {
	lock  sync.Mutex // cores are solved in parallel
	known map[listKey][]Option
}

// listKey identifies a list that nobody changes.
type listKey struct {
	first *Option
	count int
	heavy bool
}

// Priced returns the options that can be had at the market's prices and that no other dominates there, in a market where
// orders are decided (see At). The list given must never be changed: it is the key under which the result is remembered.
func (m *Market) Priced(options []Option, heavy bool) []Option {
	if len(options) == 0 {
		return nil
	}
	key := listKey{&options[0], len(options), heavy}
	m.priced.lock.Lock()
	defer m.priced.lock.Unlock()
	list, known := m.priced.known[key]
	if !known {
		admitted := admittedKey{key, m.codesOf(options).admitted(m.levels)}
		if list, known = m.codes.pricedAt(admitted); !known {
			list = m.Prune(m.sieve(options, heavy), heavy)
			m.codes.keep(admitted, list)
		}
		m.priced.known[key] = list
	}
	return list
}

// codes has, for lists of options, each different use once, and for each option the indices of its uses: there are
// thousands of options and few different uses, so costs are worked out once for each.
type codes struct {
	lock   sync.Mutex
	known  map[*Option]coded
	places [][]place // by article: where it is offered
	// priced has lists at the prices of some market, for all markets that admit the same offers of what is in them: most
	// close offers of other articles only.
	priced map[admittedKey][]Option
}

type coded struct {
	uses   []Use
	of     [][]uint16
	places []place // where what is used is offered, each once
}

// admittedKey is a list, and which of its places are open.
type admittedKey struct {
	list     listKey
	admitted string
}

// admitted says of each place whether it is open.
func (c coded) admitted(open Open) string {
	key := make([]byte, len(c.places))
	for i, p := range c.places {
		if open.at(p) {
			key[i] = 1
		}
	}
	return string(key)
}

func (c *codes) pricedAt(key admittedKey) (list []Option, known bool) {
	c.lock.Lock()
	defer c.lock.Unlock()
	list, known = c.priced[key]
	return list, known
}

func (c *codes) keep(key admittedKey, list []Option) {
	c.lock.Lock()
	defer c.lock.Unlock()
	c.priced[key] = list
}

// codesOf returns the codes of a list that nobody changes. They are made once, for all prices.
func (m *Market) codesOf(options []Option) coded {
	m.codes.lock.Lock()
	defer m.codes.lock.Unlock()
	c, known := m.codes.known[&options[0]]
	if known && len(c.of) == len(options) {
		return c
	}
	at, placed := map[Use]uint16{}, map[place]bool{}
	c = coded{of: make([][]uint16, len(options))}
	for i := range options {
		for _, u := range options[i].Uses {
			code, seen := at[u]
			if !seen {
				code = uint16(len(c.uses))
				at[u] = code
				c.uses = append(c.uses, u)
				for _, p := range m.codes.places[u.Article] {
					if !placed[p] {
						placed[p] = true
						c.places = append(c.places, p)
					}
				}
			}
			c.of[i] = append(c.of[i], code)
		}
	}
	m.codes.known[&options[0]] = c
	return c
}

// sieve returns the options that can be had, at the market's prices, without those that the cheapest or the lightest
// dominates: that leaves few of thousands to compare.
func (m *Market) sieve(options []Option, heavy bool) []Option {
	c := m.codesOf(options)
	floors, adds, saves := make([]float64, len(c.uses)), make([]float64, len(c.uses)), make([]float64, len(c.uses))
	for k, u := range c.uses {
		a := &m.Articles[u.Article]
		if !a.Available(u.Quantity) {
			floors[k] = math.Inf(1)
			continue
		}
		floors[k] = u.Quantity * a.FloorCents(m.Tax)
		adds[k], saves[k] = a.adds(u.Quantity, m), a.saves(u.Quantity, m)
	}
	sums := make([]float64, len(options))
	cheapest, lightest := 0, 0
	for i := range options {
		for _, k := range c.of[i] {
			sums[i] += floors[k]
		}
		if sums[i] < sums[cheapest] {
			cheapest = i
		}
		if math.IsInf(sums[lightest], 1) || !math.IsInf(sums[i], 1) &&
			(options[i].Kg < options[lightest].Kg || options[i].Kg == options[lightest].Kg && sums[i] < sums[lightest]) {
			lightest = i
		}
	}
	seeds := []*seed{m.seedOf(options, cheapest, c, adds), m.seedOf(options, lightest, c, adds)}
	var kept []int
	for i := range options {
		if math.IsInf(sums[i], 1) || i != cheapest && (seeds[0].beats(&options[i], c.of[i], saves, heavy, m) ||
			i != lightest && seeds[1].beats(&options[i], c.of[i], saves, heavy, m)) {
			continue
		}
		kept = append(kept, i)
	}
	list := make([]Option, len(kept))
	for k, i := range kept {
		list[k] = options[i]
		m.Price(&list[k])
	}
	return list
}

// seed is an option that others are compared with.
type seed struct {
	option *Option
	adds   []float64 // by code, of those it has
	all    float64
}

func (m *Market) seedOf(options []Option, at int, c coded, adds []float64) *seed {
	s := &seed{option: &options[at], adds: make([]float64, len(c.uses))}
	for k := range s.adds {
		s.adds[k] = math.NaN()
	}
	for _, k := range c.of[at] {
		s.adds[k] = adds[k]
		s.all += adds[k]
	}
	return s
}

// beats reports whether the seed dominates an option.
func (s *seed) beats(o *Option, of []uint16, saves []float64, heavy bool, m *Market) bool {
	left := hair - s.all
	for _, k := range of {
		if common := s.adds[k]; common == common { // not NaN: the seed uses the same
			left += common
		} else {
			left += saves[k]
		}
	}
	return left >= 0 && m.serves(s.option, o, heavy)
}
