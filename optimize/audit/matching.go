package audit

import (
	"cmp"
	"slices"
)

// mostMatchings bounds how many partial assignments of owned parts to cable paths are tried. A cart has some ten kinds
// of path and a drawer of cables; that takes thousands. Past the bound, which takes a few seconds, the best assignment
// found is used and the report says so.
const mostMatchings = 1 << 17

// matching is a search for the assignment of owned parts to cable paths with which the most paths pass.
// It is exact: depth first over the paths, kinds of path in order; a branch is left where even if all
// paths still to come passed there would not be more than in the best found.
type matching struct {
	counts []int      // by task: its paths
	alike  []bool     // by task: all its paths must be wired the same way
	ways   [][]choice // by task: the ways to wire that pass
	left   []float64  // by owned article
	nodes  int
	bound  int // of nodes

	chosen [][]*wired // of each task, so far
	passed int
	best   [][]*wired
	most   int // paths that pass in best; -1: none found yet
}

// choice is a way to wire a path, with what it takes by the articles' numbers in a matching.
type choice struct {
	way   *wired
	takes []take
}

type take struct {
	article  int
	quantity float64
}

// newMatching prepares a search: ways are, by task, those that pass and that what is owned allows.
func newMatching(owned *tally, counts []int, alike []bool, ways [][]wired, bound int) *matching {
	m := &matching{counts: counts, alike: alike, bound: bound, most: -1, chosen: make([][]*wired, len(counts)), best: make([][]*wired, len(counts))}
	number := map[article]int{}
	for i, x := range owned.order {
		number[x] = i
		m.left = append(m.left, owned.quantity[x])
	}
	for i := range counts {
		kept := thrifty(ways[i])
		choices := make([]choice, len(kept))
		for k := range kept {
			choices[k].way = &kept[k]
			for _, x := range kept[k].takes.order {
				choices[k].takes = append(choices[k].takes, take{number[x], kept[k].takes.quantity[x]})
			}
		}
		m.ways = append(m.ways, choices)
	}
	return m
}

// proved reports whether the search was not cut short.
func (m *matching) proved() bool { return m.nodes < m.bound }

// thrifty returns the ways to wire that take less of something than each other way, those that take the least metal
// first: the first best assignment found then wastes no thick cable where a thin one will do.
func thrifty(ways []wired) []wired {
	var kept []wired
	slices.SortStableFunc(ways, func(x, y wired) int { return cmp.Compare(x.metal, y.metal) })
	for i := range ways {
		beaten := false
		for j := range ways {
			// Of two that take the same the first stays.
			less := ways[j].takes.within(&ways[i].takes)
			more := ways[i].takes.within(&ways[j].takes)
			beaten = beaten || less && (!more || j < i)
		}
		if !beaten {
			kept = append(kept, ways[i])
		}
	}
	return kept
}

// descend tries the ways to wire path number path of task number at. A task's paths are equal, so their order makes no
// difference, and each takes a way no earlier in the list than the path before it.
func (m *matching) descend(at, path, firstWay int) {
	if m.nodes >= m.bound || m.passed+m.hope(at, path) <= m.most {
		return
	}
	m.nodes++
	if at == len(m.counts) {
		m.most = m.passed
		for i, c := range m.chosen {
			m.best[i] = slices.Clone(c)
		}
		return
	}
	if path == m.counts[at] {
		m.descend(at+1, 0, 0)
		return
	}
	paths := 1 // wired at a time
	if m.alike[at] {
		paths = m.counts[at]
	}
	for k := firstWay; k < len(m.ways[at]); k++ {
		c := &m.ways[at][k]
		if !m.affords(c, float64(paths)) {
			continue
		}
		m.move(-float64(paths), c)
		m.chosen[at] = append(m.chosen[at], slices.Repeat([]*wired{c.way}, paths)...)
		m.passed += paths
		m.descend(at, path+paths, k)
		m.passed -= paths
		m.chosen[at] = m.chosen[at][:len(m.chosen[at])-paths]
		m.move(float64(paths), c)
	}
	m.descend(at+1, 0, 0) // this path and the rest of the task stay without
}

// affords reports whether what is left is enough for a choice so many times. Up to sixDigits less is enough: no tape
// measure shows that.
func (m *matching) affords(c *choice, times float64) bool {
	for _, t := range c.takes {
		if times*t.quantity > m.left[t.article]*(1+sixDigits) {
			return false
		}
	}
	return true
}

// move gives back what a choice takes, so many times; a negative number takes it.
func (m *matching) move(times float64, c *choice) {
	for _, t := range c.takes {
		m.left[t.article] += times * t.quantity
	}
}

// hope returns how many paths could still pass: all of them for which some way to wire is left.
func (m *matching) hope(at, path int) int {
	sum := 0
	for i := at; i < len(m.counts); i++ {
		if slices.ContainsFunc(m.ways[i], func(c choice) bool { return m.affords(&c, 1) }) {
			sum += m.counts[i]
			if i == at {
				sum -= path
			}
		}
	}
	return sum
}
