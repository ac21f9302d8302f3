package audit

import (
	"fmt"
	"math"
	"sort"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// mostPlacings bounds how many partial placements of modules on shelves are tried. Past it the best placement found is
// used (the first one found fills the shelves from the floor up) and the report says so.
const mostPlacings = 1 << 18

// placing is a search for the placement of the modules on the shelves with which the most of them stand, and of those
// the lowest, which helps most against tipping. It is exact: depth first, kinds of module in order, each over the
// shelves from the lowest up.
type placing struct {
	shelves []*scenarios.Shelf // from the lowest up
	kinds   []pile
	nodes   int
	bound   int // of nodes

	bears    []float64 // kg, of each shelf
	room, kg []float64 // taken of each shelf so far: metres of length with gaps, mass
	stands   [][]int   // kind, shelf -> modules so far
	standing int
	moment   float64 // kg·m about the floor, so far

	best       [][]int
	most       int
	bestMoment float64
}

// pile is all the modules of one battery.
type pile struct {
	battery *catalog.Battery
	modules int
	height  []float64 // shelf -> height of a module's centre
}

// installModules puts the modules of the core on the shelves.
func (in *installer) installModules() {
	p := newPlacing(in)
	p.descend(0, 0)
	if p.nodes >= p.bound {
		in.notes = append(in.notes, "the search for the best places of the modules was cut short; more of them may fit, or lower")
	}
	for s, sh := range p.shelves {
		stated := plan.Shelf{Shelf: sh.Name}
		for k := range p.kinds {
			if n := p.best[k][s]; n > 0 {
				b := p.kinds[k].battery
				stated.Batteries = append(stated.Batteries, plan.ShelfModules{Part: b.ID, Modules: n})
				stated.MassKg += float64(n) * b.MassKg
				in.as[b.ID] = append(in.as[b.ID], fmt.Sprintf("%d on shelf %s", n, sh.Name))
			}
		}
		if len(stated.Batteries) > 0 {
			in.p.Shelves = append(in.p.Shelves, stated)
		}
	}
}

// newPlacing prepares the search for the modules of an installer's core.
func newPlacing(in *installer) *placing {
	p := &placing{bound: in.mostPlacings, most: -1}
	for i := range in.s.Cart.Shelves {
		p.shelves = append(p.shelves, &in.s.Cart.Shelves[i])
	}
	sort.SliceStable(p.shelves, func(i, j int) bool { return p.shelves[i].ElevationM < p.shelves[j].ElevationM })
	p.room, p.kg = make([]float64, len(p.shelves)), make([]float64, len(p.shelves))
	a := &auditor{s: in.s, stock: in.stock}
	for _, sh := range p.shelves {
		p.bears = append(p.bears, a.bearsKg(sh))
	}
	for _, b := range in.p.Core.Batteries {
		q := pile{battery: in.stock.batteries[b.Part], modules: b.Strings * b.Series}
		for _, sh := range p.shelves {
			q.height = append(q.height, sh.ElevationM+layersOf(sh, q.battery)*q.battery.HeightM/2)
		}
		p.kinds = append(p.kinds, q)
		p.stands = append(p.stands, make([]int, len(p.shelves)))
		p.best = append(p.best, make([]int, len(p.shelves)))
	}
	return p
}

// descend tries every number of modules of kind k on shelf s, from as many as there is room for down to none.
func (p *placing) descend(k, s int) {
	if p.nodes >= p.bound {
		return
	}
	p.nodes++
	if k == len(p.kinds) {
		p.keep()
		return
	}
	if s == len(p.shelves) {
		p.descend(k+1, 0)
		return
	}
	if p.hopeless(k, s) {
		return
	}
	for n := p.fits(k, s); n >= 0; n-- {
		p.stand(k, s, n)
		p.descend(k, s+1)
		p.stand(k, s, -n)
	}
}

// keep keeps the placement if it is the best so far.
func (p *placing) keep() {
	if p.standing < p.most || p.standing == p.most && p.moment >= p.bestMoment {
		return
	}
	p.most, p.bestMoment = p.standing, p.moment
	for k := range p.stands {
		copy(p.best[k], p.stands[k])
	}
}

// waiting returns how many modules of kind k are on no shelf yet.
func (p *placing) waiting(k int) int {
	n := p.kinds[k].modules
	for _, placed := range p.stands[k] {
		n -= placed
	}
	return n
}

// hopeless reports whether nothing better can come: even if all waiting modules fitted, those of kind k on shelf s and
// those of later kinds on the lowest shelf, there would be neither more of them nor lower ones.
func (p *placing) hopeless(k, s int) bool {
	standing, moment := p.standing, p.moment
	for i := k; i < len(p.kinds); i++ {
		lowest := 0
		if i == k {
			lowest = s
		}
		n := p.waiting(i)
		standing += n
		moment += float64(n) * p.kinds[i].battery.MassKg * p.kinds[i].height[lowest]
	}
	return standing < p.most || standing == p.most && moment >= p.bestMoment
}

// fits returns how many modules of kind k fit on shelf s beside those of other kinds.
func (p *placing) fits(k, s int) int {
	q, sh := &p.kinds[k], p.shelves[s]
	if !plan.AtMost(q.battery.HeightM, sh.ClearHeightM) {
		return 0
	}
	n := p.waiting(k)
	if q.battery.MassKg > 0 { // a catalogue may state none
		n = int(math.Min(float64(n), plan.Floor((p.bears[s]-p.kg[s])/q.battery.MassKg)))
	}
	for n > 0 && !plan.AtMost(p.room[s]+columnsM(sh, q.battery, float64(n)), sh.LengthM+sh.GapM) {
		n--
	}
	return max(0, n)
}

// stand puts n modules of kind k on shelf s; a negative n takes them off again.
func (p *placing) stand(k, s, n int) {
	if n == 0 {
		return
	}
	q := &p.kinds[k]
	p.stands[k][s] += n
	p.standing += n
	p.room[s] += math.Copysign(columnsM(p.shelves[s], q.battery, math.Abs(float64(n))), float64(n))
	p.kg[s] += float64(n) * q.battery.MassKg
	p.moment += float64(n) * q.battery.MassKg * q.height[s]
}
