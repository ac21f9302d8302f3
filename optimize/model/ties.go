package model

import (
	"math"
	"sort"

	"cartwright/optimize/market"
	"cartwright/optimize/question"
)

// tieNodes is how many partial supports canBeWithin looks at before it leaves the question to the solver.
const tieNodes = 50000

// pick is one place in a slot, with the least that this and the later picks cost in cents and weigh in kg.
type pick struct {
	options           []market.Option
	again             bool // another place of the same slot: only options from the one before on, as order does not matter
	restCents, restKg float64
}

// canBeWithin reports whether some support of a single core could cost at most so many cents, unrounded and
// all included, and weigh at most so much, both together with the core. It looks at sums only, so true may be
// wrong; false is certain. Without a solver it answers the question behind most ties: is there any other
// plan that costs no more and weighs less?
func (p *program) canBeWithin(cents, kg float64) bool {
	coreCents, coreKg := p.core()
	t := tieSearch{picks: p.picks()}
	return t.reach(0, 0, cents-coreCents, kg-coreKg)
}

// core returns the least cost in cents of a single core, paid shipping included, and its mass, both without its support.
func (p *program) core() (cents, kg float64) {
	m := p.market
	cents, kg = (1+m.Tax)*m.Shipping-m.Credit, p.Bench.FixedKg
	part := func(id string, n float64) { cents += m.Part(id).LeastCents(n, m.Tax) }
	for i, r := range p.Space.strings {
		k := p.stack(i)
		part(k.Battery.ID, float64(r.lo*k.Series))
		kg += float64(r.lo) * k.Kg
	}
	v := &p.Bench.Supplies[p.Space.supplies[0]]
	part(v.Inverter.ID, float64(v.Units))
	kg += float64(v.Units) * v.Inverter.MassKg
	if x := v.Array; x != nil {
		part(x.Module.ID, float64(x.Modules()))
		kg += v.ArrayKg
	}
	return cents, kg
}

// leastCents returns a lower bound in cents on any plan of a single core, worked out without the solver. It stops once
// the bound is above enough.
func (p *program) leastCents(enough float64) float64 {
	cents, _ := p.core()
	least := math.Inf(1)
	p.apart(func(slots []slotVars, mostKg float64) {
		least = math.Min(least, share(slots, p.market, mostKg).least(math.Min(enough-cents, least)))
	})
	return cents + least
}

// picks lists what is to be chosen, the slots with the most options first, so that a dead end shows early.
func (p *program) picks() []pick {
	slots := make([]market.Slot, 0, len(p.slots))
	for i := range p.slots {
		slots = append(slots, p.slots[i].slot)
	}
	sort.SliceStable(slots, func(i, j int) bool { return len(slots[i].Options) > len(slots[j].Options) })
	var picks []pick
	for _, s := range slots {
		for n := range s.Count {
			picks = append(picks, pick{options: s.Options, again: n > 0})
		}
	}
	restCents, restKg := 0.0, 0.0
	for i := len(picks) - 1; i >= 0; i-- {
		restCents += market.LeastOf(picks[i].options, nil, market.FloorOf)
		restKg += market.LeastOf(picks[i].options, nil, market.MassOf)
		picks[i].restCents, picks[i].restKg = restCents, restKg
	}
	return picks
}

// tieSearch is a depth-first search for a support within a cost and a mass.
type tieSearch struct {
	picks []pick
	nodes int
}

// reach reports whether the picks from at on fit into what is left of cost and mass. It says so too where too many
// nodes have been tried to know.
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
		if t.reach(at+1, i, cents-p.options[i].Floor, kg-p.options[i].Kg) {
			return true
		}
	}
	return false
}

// within returns the most cost in cents and mass in kg that a better plan than a tied one may have.
func (k *Ask) within(resolution float64) (cents, kg float64) {
	first, second := k.First+tieSlack, k.Below-resolution
	if k.By == question.ByMass {
		return 100 * second, first
	}
	return 100 * first, math.Max(0, second)
}
