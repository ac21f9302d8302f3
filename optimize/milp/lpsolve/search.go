//go:build linux && (amd64 || arm64) && !nolpsolve

package lpsolve

import (
	"context"
	"errors"
	"fmt"
	"math"
	"unsafe"

	"cartwright/optimize/milp/engine"
	"cartwright/optimize/milp/proof"
)

// The library's return values, as its header names them.
const (
	noMemory   = -2
	optimal    = 0
	suboptimal = 1
	infeasible = 2
	unbounded  = 3
	aborted    = 6
	timedOut   = 7
)

var errNoMemory = errors.New("lpsolve: no memory for the program")

// Search runs the library once, with the setting whose turn it is.
func (l *Library) Search(ctx context.Context, p *proof.Program, q engine.Query) (engine.Answer, error) {
	set := &settings[q.Turn%len(settings)]
	f := newProgram(p)
	if !math.IsInf(q.Ceiling, 1) {
		f.under(q.Ceiling, q.Accept)
	}
	if err := f.check(); err != nil {
		return engine.Answer{}, err
	}
	gap := q.Gap
	switch {
	case set.ownScale:
		gap *= f.scale()
	case set.scaling != noScaling:
		gap = 0
	}
	a, err := l.run(ctx, f, set, gap, q.Work)
	if err != nil || a.Point == nil {
		return a, err
	}
	rounded(p, a.Point)
	return a, nil
}

// rounded puts integers on whole numbers, and what is beyond a bound on the bound.
func rounded(p *proof.Program, x []float64) {
	for j, v := range x {
		if p.Integer[j] {
			v = math.Round(v)
		}
		x[j] = math.Max(p.Lower[j], math.Min(p.Upper[j], v)) + 0 // never the negative zero
	}
}

// run loads a program, searches once, and frees everything.
func (l *Library) run(ctx context.Context, f *program, set *setting, gap float64, work int64) (engine.Answer, error) {
	lp := l.makeLP(0, int32(len(f.lower)))
	if lp == 0 {
		return engine.Answer{}, errNoMemory
	}
	defer l.deleteLP(lp)
	l.setVerbose(lp, neutral)
	if !l.load(lp, f) {
		return engine.Answer{}, errNoMemory
	}
	l.apply(lp, set, gap)
	r := &run{work: work}
	defer context.AfterFunc(ctx, func() { r.stop.Store(true) })()
	key := l.begin(r)
	l.putAbortfunc(lp, l.asked, key)
	code := l.solve(lp)
	l.end(key)
	a := engine.Answer{Work: l.pivots(lp)}
	a.Ended = code != optimal && !r.spent && ctx.Err() != nil
	if code == optimal || code == suboptimal {
		a.Point = make([]float64, len(f.lower))
		if !l.getVariables(lp, unsafe.SliceData(a.Point)) {
			return engine.Answer{}, errors.New("lpsolve: a point that is not given")
		}
	}
	cut := int(l.getMaxLevel(lp)) >= deepest // then nothing is excluded
	switch {
	case code == noMemory:
		return engine.Answer{}, errNoMemory
	case code == optimal && !cut:
		a.Claim = engine.Best
	case code == infeasible && !cut:
		a.Claim = engine.None
	case code == unbounded:
		a.Claim = engine.Unbounded
	case code == optimal, code == suboptimal, code == infeasible, (code == aborted || code == timedOut) && (r.spent || a.Ended):
	default:
		a.Trouble = fmt.Sprintf("%s: the library returned %d", set.name, code)
	}
	return a, nil
}

// load hands a program over, row by row.
func (l *Library) load(lp uintptr, f *program) bool {
	if !l.resizeLP(lp, int32(len(f.kinds)), int32(len(f.lower))) {
		return false
	}
	l.setAddRowmode(lp, true)
	if len(f.costs) > 0 && !l.setObjFnex(lp, int32(len(f.costs)), unsafe.SliceData(f.costs), unsafe.SliceData(f.costCols)) {
		return false
	}
	for i, kind := range f.kinds {
		from, to := f.begin[i], f.begin[i+1]
		if !l.addConstraintex(lp, to-from, unsafe.SliceData(f.coefs[from:to]), unsafe.SliceData(f.cols[from:to]), kind, f.sides[i]) {
			return false
		}
	}
	l.setAddRowmode(lp, false)
	for j, lower := range f.lower {
		if (lower != 0 || f.upper[j] < infinite) && !l.setBounds(lp, int32(j+1), lower, f.upper[j]) {
			return false
		}
		if f.integer[j] && !l.setInt(lp, int32(j+1), true) {
			return false
		}
	}
	return true
}
