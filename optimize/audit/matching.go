package audit

import (
	"cmp"
	"slices"
)

// mostMatchings bounds how many partial assignments of owned parts to cable paths are looked into. A cart
// has some ten kinds of path and a drawer of cables; that is settled in thousands. Past the bound the best
// assignment found stands and the report says so.
const mostMatchings = 1 << 19

// matching is a search for the assignment of owned parts to cable paths by which most paths pass.
// Exact: depth first over the paths, kinds of path in order; a branch is left where even passing all
// paths still to come would not be more than the best found.
type matching struct {
	tasks []task
	ways  [][]wired // of each task, those that pass
	left  *tally
	nodes int
	bound int // of nodes

	chosen [][]*wired // of each task, so far
	passed int
	best   [][]*wired
	most   int
}

// matchRuns finds the best assignment of what an installer has left.
func matchRuns(in *installer, a *auditor, tasks []task) *matching {
	m := &matching{tasks: tasks, left: &tally{}, bound: in.mostMatchings, most: -1}
	m.left.move(1, in.left)
	for i := range tasks {
		var pass []wired
		for _, w := range in.waysToWire(a, &tasks[i], in.left, false) {
			if len(w.failed) == 0 {
				pass = append(pass, w)
			}
		}
		m.ways = append(m.ways, thrifty(pass))
		m.chosen, m.best = append(m.chosen, nil), append(m.best, nil)
	}
	m.descend(0, 0, 0)
	return m
}

// proved reports whether the search was not cut short.
func (m *matching) proved() bool { return m.nodes < m.bound }

// thrifty returns the ways to wire that no other beats by taking no more of anything, those first that
// take the least metal: the first best assignment found then wastes no thick cable on a thin one's task.
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

// descend looks at path number path of task number at. Of a task's equal paths each takes a way no
// earlier than the one before, as their order makes no difference.
func (m *matching) descend(at, path, firstWay int) {
	if m.nodes >= m.bound || m.passed+m.hope(at, path) <= m.most {
		return
	}
	m.nodes++
	if at == len(m.tasks) {
		m.most = m.passed
		m.best = make([][]*wired, len(m.chosen))
		for i, c := range m.chosen {
			m.best[i] = append([]*wired(nil), c...)
		}
		return
	}
	if path == int(m.tasks[at].count) {
		m.descend(at+1, 0, 0)
		return
	}
	for k := firstWay; k < len(m.ways[at]); k++ {
		w := &m.ways[at][k]
		if !w.takes.within(m.left) {
			continue
		}
		m.left.move(-1, &w.takes)
		m.chosen[at] = append(m.chosen[at], w)
		m.passed++
		m.descend(at, path+1, k)
		m.passed--
		m.chosen[at] = m.chosen[at][:len(m.chosen[at])-1]
		m.left.move(1, &w.takes)
	}
	m.descend(at+1, 0, 0) // this path and its equals after it stay without
}

// hope returns how many paths could still pass: all of them for which some way to wire is left.
func (m *matching) hope(at, path int) int {
	sum := 0
	for i := at; i < len(m.tasks); i++ {
		count := int(m.tasks[i].count)
		if i == at {
			count -= path
		}
		for k := range m.ways[i] {
			if m.ways[i][k].takes.within(m.left) {
				sum += count
				break
			}
		}
	}
	return sum
}
