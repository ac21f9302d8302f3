package milp

/*
#cgo CFLAGS: -O2
#cgo linux LDFLAGS: -Wl,--wrap=load_BLAS
#cgo LDFLAGS: -llpsolve55 -lcolamd -ldl -lm
#include <stdlib.h>
#include "lpsolve.h"
*/
import "C"

import (
	"context"
	"errors"
	"fmt"
	"sync"
	"time"
	"unsafe"
)

// This file is the only one that touches C.

// prepare makes the engine ready once a process.
var prepare = sync.OnceFunc(func() { C.milp_init() })

// Version returns the version of the engine, as "5.5.2.5".
func Version() string {
	var major, minor, release, build C.int
	C.lp_solve_version(&major, &minor, &release, &build)
	return fmt.Sprintf("%d.%d.%d.%d", major, minor, release, build)
}

// errNoMemory is returned where the engine could not take the model in.
var errNoMemory = errors.New("milp: the solver found no memory for the model")

// watch ends running searches when its context is cancelled or its deadline passes.
type watch struct {
	c    *C.milp_watch
	free func() // to be called when no search runs any more
}

// newWatch starts to watch a context and, unless limit is 0, the clock.
func newWatch(ctx context.Context, limit time.Duration) (*watch, error) {
	prepare()
	c := C.milp_new_watch(C.longlong(limit))
	if c == nil {
		return nil, errNoMemory
	}
	if ctx.Err() != nil {
		C.milp_stop(c)
	}
	stopped := make(chan struct{})
	cancel := context.AfterFunc(ctx, func() {
		C.milp_stop(c)
		close(stopped)
	})
	return &watch{c: c, free: func() {
		if !cancel() { // the function has started: wait for it, or it would write to freed memory
			<-stopped
		}
		C.free(unsafe.Pointer(c))
	}}, nil
}

// due reports whether searching must end.
func (w *watch) due() bool { return C.milp_due(w.c) != 0 }

// outcome is what one run of the engine says. It is a claim, to be checked.
type outcome struct {
	code   int       // the engine's own return value
	values []float64 // by column; nil where there is no point
	root   float64   // optimum of the relaxation, NaN where there is none
	spent  bool      // the search ended because it had done its share of work
	cut    bool      // branching may have been cut off at the setting's depth: nothing is excluded
}

// The engine's return values, as its header names them.
const (
	codeNoMemory   = int(C.NOMEMORY)
	codeOptimal    = int(C.OPTIMAL)
	codeSuboptimal = int(C.SUBOPTIMAL)
	codeInfeasible = int(C.INFEASIBLE)
	codeUnbounded  = int(C.UNBOUNDED)
	codeAborted    = int(C.USERABORT)
	codeTimeout    = int(C.TIMEOUT)
)

// run loads a program, searches once with a setting, and frees everything. The engine's improvements are
// to be at least gap, in the program's own scale; it ends after a number of pivots, which is the same
// every time, unlike a time.
func (p *program) run(s *setting, gap float64, pivots int64, w *watch) (outcome, error) {
	if err := p.check(); err != nil {
		return outcome{}, err
	}
	lp := C.milp_load(C.int(len(p.kind)), C.int(len(p.lo)), ints(p.begin), ints(p.colno), doubles(p.coef),
		ints(p.kind), doubles(p.rhs), C.int(len(p.objcol)), ints(p.objcol), doubles(p.objcoef),
		doubles(p.lo), doubles(p.hi), (*C.uchar)(unsafe.SliceData(p.isint)))
	if lp == nil {
		return outcome{}, errNoMemory
	}
	defer C.delete_lp(lp)
	s.apply(lp, gap)
	C.milp_obey(lp, w.c, C.longlong(pivots))
	out := outcome{code: int(C.solve(lp))}
	if out.code == codeNoMemory {
		return outcome{}, errNoMemory
	}
	out.root = finite(float64(C.milp_root(lp)))
	out.cut = int(C.get_max_level(lp)) >= s.depth
	out.spent = w.c.spent != 0
	if out.code == codeOptimal || out.code == codeSuboptimal {
		out.values = make([]float64, len(p.lo))
		if C.get_variables(lp, doubles(out.values)) == C.FALSE {
			return outcome{}, errors.New("milp: internal: the solver has a point but does not give it")
		}
	}
	return out, nil
}

// ints and doubles give C a slice for the time of a call.
func ints(s []int32) *C.int         { return (*C.int)(unsafe.SliceData(s)) }
func doubles(s []float64) *C.double { return (*C.double)(unsafe.SliceData(s)) }

// apply sets every parameter of the engine; nothing is left to a default. The reasons stand at setting.
func (s *setting) apply(lp *C.lprec, gap float64) {
	C.set_verbose(lp, C.NEUTRAL)
	C.set_print_sol(lp, C.FALSE)
	C.set_trace(lp, C.FALSE)
	C.set_debug(lp, C.FALSE)
	C.set_lag_trace(lp, C.FALSE)
	C.set_minim(lp)
	C.set_timeout(lp, 0) // whole seconds only; the watch is finer
	C.set_infinite(lp, C.double(engineInfinity))
	C.set_epslevel(lp, C.EPS_TIGHT)
	C.set_epsint(lp, C.double(s.intTol))
	C.set_epsel(lp, C.double(engineZero))
	C.set_epsb(lp, C.double(engineRow))
	C.set_epsd(lp, C.double(engineDual))
	C.set_epspivot(lp, C.double(enginePivot))
	C.set_epsperturb(lp, C.double(enginePerturb))
	C.set_negrange(lp, C.double(engineNegRange))
	C.set_break_numeric_accuracy(lp, C.double(engineAccuracy))
	C.set_mip_gap(lp, C.TRUE, C.double(max(gap, engineGap)))
	C.set_mip_gap(lp, C.FALSE, C.double(engineRelativeGap))
	C.set_break_at_first(lp, C.FALSE)
	C.set_break_at_value(lp, C.double(-engineInfinity))
	C.set_obj_bound(lp, C.double(engineInfinity))
	C.set_solutionlimit(lp, C.int(s.solutions))
	C.set_obj_in_basis(lp, C.TRUE)
	C.set_bounds_tighter(lp, C.FALSE)
	C.set_basiscrash(lp, C.CRASH_NONE)
	C.set_maxpivot(lp, enginePivots)
	C.set_simplextype(lp, C.int(s.simplex))
	C.set_pivoting(lp, C.int(s.pricing))
	C.set_multiprice(lp, 0)
	C.set_scaling(lp, C.int(s.scaling))
	C.set_scalelimit(lp, engineScaleLoops)
	C.set_presolve(lp, C.PRESOLVE_NONE, 0)
	C.set_improve(lp, C.int(s.improve))
	C.set_anti_degen(lp, C.int(s.antiDegen))
	C.set_bb_rule(lp, C.int(s.nodeRule))
	C.set_bb_floorfirst(lp, C.int(s.branch))
	C.set_bb_depthlimit(lp, C.int(-s.depth))
}
