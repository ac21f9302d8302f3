package optimize

import (
	"math"
	"sort"
)

// tieNodes is how many partial supports canBeWithin looks at before it leaves the question to the solver.
const tieNodes = 50000

// pick is one thing to choose an option for, with the least that this and the later picks cost and weigh.
type pick struct {
	options           []option
	again             bool // another of the same slot: options from the last one's on
	restCents, restKg float64
}

// canBeWithin reports whether some support of a single core costs at most so many cents, unrounded and
// all included, and weighs at most so much together with the core. It looks at sums only, so yes may be
// too hopeful; no is sure. It answers without a solver the question behind most ties: is there any other
// plan at all that costs no more and weighs less?
func (p *program) canBeWithin(cents, kg float64) bool {
	m := p.market
	cents += m.credit - (1+m.tax)*m.shipping
	kg -= p.b.fixedKg
	for i, r := range p.sp.strings {
		k := p.stack(i)
		cents -= m.part(k.bat.ID).leastCents(float64(r.lo*k.series), m.tax)
		kg -= float64(r.lo) * k.kg
	}
	v := &p.b.supplies[p.sp.supplies[0]]
	cents -= m.part(v.inv.ID).leastCents(float64(v.units), m.tax)
	kg -= float64(v.units) * v.inv.MassKg
	t := tieSearch{picks: p.picks()}
	return t.reach(0, 0, cents, kg)
}

// picks lists what is to be chosen, the slots with most options first: then a wrong turn shows early.
func (p *program) picks() []pick {
	slots := make([]slot, 0, len(p.slots))
	for i := range p.slots {
		slots = append(slots, p.slots[i].slot)
	}
	sort.SliceStable(slots, func(i, j int) bool { return len(slots[i].options) > len(slots[j].options) })
	var picks []pick
	for _, s := range slots {
		for n := range s.count {
			picks = append(picks, pick{options: s.options, again: n > 0})
		}
	}
	restCents, restKg := 0.0, 0.0
	for i := len(picks) - 1; i >= 0; i-- {
		restCents += leastOf(picks[i].options, nil, floorOf)
		restKg += leastOf(picks[i].options, nil, massOf)
		picks[i].restCents, picks[i].restKg = restCents, restKg
	}
	return picks
}

// tieSearch is a depth-first search for a support within a cost and a mass.
type tieSearch struct {
	picks []pick
	nodes int
}

// reach reports whether the picks from at on fit into what is left of cost and mass; also where too many
// nodes have been looked at to know.
func (t *tieSearch) reach(at, from int, cents, kg float64) bool {
	const hair = 1e-7 // cents and kg, against the rounding of sums
	if at == len(t.picks) {
		return cents >= -hair && kg >= -hair
	}
	p := &t.picks[at]
	if p.restCents > cents+hair || p.restKg > kg+hair {
		return false
	}
	if t.nodes++; t.nodes > tieNodes {
		return true
	}
	if !p.again {
		from = 0
	}
	for i := from; i < len(p.options); i++ {
		if t.reach(at+1, i, cents-p.options[i].floor, kg-p.options[i].kg) {
			return true
		}
	}
	return false
}

// within turns a tied ask into the cost in cents and the mass that a better plan may have at most.
func (k *ask) within(resolution float64) (cents, kg float64) {
	first, second := k.first+tieSlack, k.below-resolution
	if k.by == ByMass {
		return 100 * second, first
	}
	return 100 * first, math.Max(0, second)
}
