package milp

import (
	"fmt"
	"math"
)

// hunt looks for the best point of a program by many runs of the engine.
//
// A run has a share of work. One that does not finish hands over to the next setting, and when all have
// had their turn the shares grow: what takes one order of branching minutes takes another one
// milliseconds, and which, nobody can tell beforehand. A point that is found becomes the ceiling of the
// runs to come.
//
// A run that finishes claims that there is nothing below its ceiling, or nothing below the point it
// found. Two settings have to claim it before it is believed. Settings come in pairs that branch on
// variables in the same order, but not in the same direction nor by the same pivots: where the first of a
// pair has finished, its second is likely to be as fast, and is asked next.
type hunt struct {
	*search
	p      *program
	points int // claims that are enough where a point is known
	none   int // claims that are enough where none is

	top    ceiling
	values []float64 // of the best point so far
	status Status    // at the end
	claims int       // that there is nothing below top
	open   int       // claims that the objective has no limit
	rounds int       // of claims: grows with every point
	lanes  []lane
	shares int64 // of work given out
}

// lane is a setting in a hunt.
type lane struct {
	set     *setting
	first   *lane // of its pair, where it is the second
	spare   bool  // only after trouble
	failed  bool  // gave trouble, is not asked again
	claimed int   // the round of its last claim; 0 for none
}

// ceiling is what the objective, to be minimised and without its constant, may be at most.
type ceiling struct {
	limit  float64 // the row's right-hand side; infinite for none
	accept float64 // above it a point is refused; between the two it is rounding
}

func noCeiling() ceiling { return ceiling{math.Inf(1), math.Inf(1)} }

// How much work a run has at first, and how the shares grow from turn to turn: then all turns before
// together are a third of the present one.
const (
	firstPivots    = 600 // and
	pivotsADim     = 3   // for each row and column: a large relaxation is no sign of trouble
	growth         = 4
	greatestPivots = math.MaxInt64 / growth
)

// run hunts until there are claims enough, the time is over, or no setting is left. It sets status.
func (h *hunt) run() error {
	h.rounds = 1 // so that a claimed of 0 is none
	h.lanes = make([]lane, 0, 2*len(pairs)+len(spares))
	for _, pair := range pairs {
		h.lanes = append(h.lanes, lane{set: pair[0]})
		h.lanes = append(h.lanes, lane{set: pair[1], first: &h.lanes[len(h.lanes)-1]})
	}
	for _, set := range spares {
		h.lanes = append(h.lanes, lane{set: set, spare: true})
	}
	pivots := int64(firstPivots + pivotsADim*(len(h.p.kind)+len(h.p.lo)))
	trouble := false
	for {
		asked := false
		for i := range h.lanes {
			l := &h.lanes[i]
			if l.failed || l.claimed == h.rounds || l.spare && !trouble || l.first != nil && !l.first.failed && l.first.claimed != h.rounds {
				continue
			}
			asked = true
			share := h.share(pivots)
			if share == 0 {
				h.end(GaveUp)
				return nil
			}
			done, err := h.turn(l, share)
			if done || err != nil {
				return err
			}
			trouble = trouble || l.failed
		}
		if !asked { // every setting has claimed or failed, and it is not enough
			h.end(GaveUp)
			return nil
		}
		pivots = min(pivots, greatestPivots) * growth
	}
}

// share returns what a run may do of so many pivots, 0 where all that there may be are given out.
func (h *hunt) share(pivots int64) int64 {
	if h.o.Pivots > 0 {
		pivots = min(pivots, h.o.Pivots-h.shares)
	}
	h.shares += pivots
	return pivots
}

// end sets the status: Best where there is a point, else another.
func (h *hunt) end(none Status) {
	h.status = none
	if h.values != nil {
		h.status = Best
	}
}

// turn gives a setting a share of work and says whether the hunt is over.
func (h *hunt) turn(l *lane, pivots int64) (done bool, err error) {
	if h.w.due() {
		h.sol.Ended = true
		h.end(Stopped)
		return true, nil
	}
	p := h.p
	if !math.IsInf(h.top.limit, 1) {
		q := *p // shares the rows of p: what is appended here is not seen there
		q.addRow(h.m.obj, h.sign, int32(AtMost), h.top.limit)
		q.fine = h.top.accept - h.top.limit
		p = &q
	}
	out, err := h.once(p, l.set, pivots)
	if err != nil {
		return true, err
	}
	if len(p.objcol) == len(h.m.obj) && out.code != codeInfeasible && out.code != codeUnbounded && !math.IsNaN(out.root) {
		h.bound = math.Max(h.bound, out.root) // the relaxation bounds whatever is below the ceiling
	}
	trouble := ""
	switch {
	case out.values != nil:
		if trouble, err = h.settle(p, l.set, out.values, h.top); err != nil {
			return true, err
		}
		if trouble == "" {
			h.found(l, &out)
		}
	case out.code == codeInfeasible && out.cut:
		trouble = "branched too deep to exclude anything"
	case out.code == codeInfeasible:
		l.claimed = h.rounds
		h.claims++
	case out.code == codeUnbounded && h.values == nil && h.limitless():
		l.claimed = h.rounds
		if h.open++; h.open >= h.none {
			return true, h.unbounded()
		}
	case (out.code == codeAborted || out.code == codeTimeout) && (out.spent || h.w.due()):
	default:
		trouble = fmt.Sprintf("the engine returned %d", out.code)
	}
	if trouble != "" {
		h.note(l.set, trouble)
		l.failed = true
	}
	return h.enough(), nil
}

// found makes a point the best one and raises the demands on the next.
func (h *hunt) found(l *lane, out *outcome) {
	for i := range h.lanes {
		if other := &h.lanes[i]; h.values == nil && other.claimed == h.rounds {
			h.note(other.set, "found none where another setting found a point")
		}
	}
	h.values = out.values
	h.rounds++
	h.claims = 0
	if out.code == codeOptimal && !out.cut {
		l.claimed = h.rounds
		h.claims = 1
	}
	at := h.value(h.values)
	// Half of what matters is the margin: a point that misses the limit by less is still better than the
	// one in hand, one that misses it by more is the one in hand again.
	matters := h.better(at)
	h.top = ceiling{limit: at - matters, accept: at - matters/2}
	if len(h.p.objcol) == 0 { // nothing can be better
		h.claims, h.top.limit, h.bound = h.points, at, at
	}
}

// enough reports whether the claims suffice, and ends the hunt where they do.
func (h *hunt) enough() bool {
	switch {
	case h.values == nil && h.claims >= h.none, h.values != nil && h.claims >= h.points:
		h.end(Infeasible)
		return true
	}
	return false
}

// limitless reports whether the bounds of the variables leave the objective without limit.
func (h *hunt) limitless() bool {
	for k, c := range h.p.objcol {
		coef, lo, hi := h.p.objcoef[k], h.p.lo[c-1], h.p.hi[c-1]
		if coef > 0 && lo <= -engineInfinity || coef < 0 && hi >= engineInfinity {
			return true
		}
	}
	return false
}

// unbounded ends a hunt in which the objective was found to have no limit: if there is a point at all.
// Then, as all coefficients are rational, the integers have no limit either where the relaxation has none.
func (h *hunt) unbounded() error {
	q := *h.p
	q.objcol, q.objcoef = nil, nil
	any := &hunt{search: h.search, p: &q, top: h.top, points: 1, none: h.none}
	if err := any.run(); err != nil {
		return err
	}
	h.status = any.status
	if any.values != nil {
		h.status = Unbounded
	}
	return nil
}

// note records trouble that was met.
func (s *search) note(set *setting, trouble string) {
	s.sol.Retries = append(s.sol.Retries, set.name+": "+trouble)
}
