package milp

/*
#cgo CFLAGS: -O2
#cgo LDFLAGS: -llpsolve55 -lcolamd -ldl -lm
#include <stdatomic.h>
#include <stdlib.h>
#include <time.h>
#include <lpsolve/lp_lib.h>

// milp_watch tells a running search to end: another thread sets stop, or the deadline passes. It lives
// in C memory, so that no Go pointer is kept by C.
typedef struct {
	atomic_int stop;
	int timed_out;           // written by the searching thread only
	long long deadline_ns;   // of the monotonic clock, 0: none
} milp_watch;

static long long milp_now(void) {
	struct timespec t;
	clock_gettime(CLOCK_MONOTONIC, &t);
	return (long long)t.tv_sec * 1000000000LL + t.tv_nsec;
}

static milp_watch *milp_new_watch(long long limit_ns) {
	milp_watch *w = calloc(1, sizeof *w);
	if (w != NULL && limit_ns > 0)
		w->deadline_ns = milp_now() + limit_ns;
	return w;
}

static void milp_stop(milp_watch *w) { atomic_store(&w->stop, 1); }

static int milp_stopped(milp_watch *w) { return atomic_load(&w->stop); }

// milp_due is what the engine asks every few pivots: nonzero ends the search.
static int __WINAPI milp_due(lprec *lp, void *handle) {
	milp_watch *w = handle;
	(void)lp;
	if (atomic_load_explicit(&w->stop, memory_order_relaxed))
		return 1;
	if (w->deadline_ns != 0 && milp_now() >= w->deadline_ns)
		w->timed_out = 1;
	return w->timed_out;
}

static void milp_put_watch(lprec *lp, milp_watch *w) { put_abortfunc(lp, milp_due, w); }

// milp_load makes an lprec of a model by rows. Indices are checked by the caller; NULL: no memory.
// begin has rows+1 entries; at and coef are addressed by it; colnos count from 1.
static lprec *milp_load(int rows, int cols, int *begin, int *colno, double *coef, int *type, double *rhs,
		int objs, int *objcol, double *objcoef, double *lo, double *hi, unsigned char *isint) {
	lprec *lp = make_lp(0, cols);
	int i, j, ok = lp != NULL;
	if (!ok)
		return NULL;
	set_verbose(lp, NEUTRAL);
	set_use_names(lp, TRUE, FALSE);
	set_use_names(lp, FALSE, FALSE);
	ok = resize_lp(lp, rows, cols);
	set_add_rowmode(lp, TRUE);
	ok = ok && set_obj_fnex(lp, objs, objcoef, objcol);
	for (i = 0; ok && i < rows; i++)
		ok = add_constraintex(lp, begin[i+1] - begin[i], coef + begin[i], colno + begin[i], type[i], rhs[i]);
	set_add_rowmode(lp, FALSE);
	for (j = 0; ok && j < cols; j++) {
		ok = set_bounds(lp, j + 1, lo[j], hi[j]);
		if (ok && isint[j])
			ok = set_int(lp, j + 1, TRUE);
	}
	if (!ok) {
		delete_lp(lp);
		return NULL;
	}
	return lp;
}
*/
import "C"

import (
	"context"
	"errors"
	"fmt"
	"math"
	"runtime"
	"time"
)

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
	free func()
}

// newWatch starts to watch. The caller frees it when no search runs any more.
func newWatch(ctx context.Context, limit time.Duration) (*watch, error) {
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
		if !cancel() { // the function has started: wait, or it would write to freed memory
			<-stopped
		}
		C.free(unsafePointer(c))
	}}, nil
}

// due reports whether searching must end.
func (w *watch) due() bool { return C.milp_due(nil, unsafePointer(w.c)) != 0 }

// outcome is what one run of the engine says. It is a claim, to be checked.
type outcome struct {
	code   int       // the engine's own return value
	values []float64 // by column of the loaded model; nil where there is no point
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

// run loads a program, searches once with the setting s, and frees everything.
func (p *program) run(s *setting, w *watch) (outcome, error) {
	if err := p.check(); err != nil {
		return outcome{}, err
	}
	// The engine copies what it is given; nothing of Go's memory is kept after the call.
	lp := C.milp_load(C.int(len(p.kind)), C.int(len(p.lo)),
		(*C.int)(&p.begin[0]), (*C.int)(first(p.colno)), (*C.double)(first(p.coef)),
		(*C.int)(first(p.kind)), (*C.double)(first(p.rhs)),
		C.int(len(p.objcol)), (*C.int)(first(p.objcol)), (*C.double)(first(p.objcoef)),
		(*C.double)(first(p.lo)), (*C.double)(first(p.hi)), (*C.uchar)(first(p.isint)))
	runtime.KeepAlive(p)
	if lp == nil {
		return outcome{}, errNoMemory
	}
	defer C.delete_lp(lp)
	s.apply(lp)
	C.milp_put_watch(lp, w.c)
	out := outcome{code: int(C.solve(lp))}
	if out.code == codeNoMemory {
		return outcome{}, errNoMemory
	}
	if out.code == codeOptimal || out.code == codeSuboptimal {
		out.values = make([]float64, len(p.lo))
		if C.get_variables(lp, (*C.double)(first(out.values))) == 0 {
			out.values = nil
		}
	}
	return out, nil
}

// apply sets every parameter of the engine; nothing is left to a default.
func (s *setting) apply(lp *C.lprec) {
	C.set_verbose(lp, C.NEUTRAL)
	C.set_print_sol(lp, C.FALSE)
	C.set_trace(lp, C.FALSE)
	C.set_debug(lp, C.FALSE)
	C.set_lag_trace(lp, C.FALSE)
	C.set_minim(lp)
	C.set_timeout(lp, 0) // whole seconds only; the watch is finer
	C.set_infinite(lp, C.double(engineInfinity))
	C.set_epsint(lp, C.double(s.intTol))
	C.set_epsel(lp, 1e-12)
	C.set_epsb(lp, C.double(s.rowTol))
	C.set_epsd(lp, 1e-9)
	C.set_epspivot(lp, 2e-7)
	C.set_epsperturb(lp, 1e-5)
	C.set_negrange(lp, -1e-6)
	C.set_mip_gap(lp, C.TRUE, 1e-11)
	C.set_mip_gap(lp, C.FALSE, 1e-9)
	C.set_break_at_first(lp, C.FALSE)
	C.set_break_at_value(lp, C.double(-engineInfinity))
	C.set_obj_bound(lp, C.double(engineInfinity))
	C.set_solutionlimit(lp, 1)
	C.set_obj_in_basis(lp, C.TRUE)
	C.set_bounds_tighter(lp, C.FALSE)
	C.set_basiscrash(lp, C.CRASH_NONE)
	C.set_maxpivot(lp, 250)
	C.set_simplextype(lp, C.int(s.simplex))
	C.set_pivoting(lp, C.int(s.pricing))
	C.set_scaling(lp, C.int(s.scaling))
	C.set_scalelimit(lp, 5)
	C.set_presolve(lp, C.PRESOLVE_NONE, 0)
	C.set_improve(lp, C.int(s.improve))
	C.set_anti_degen(lp, C.int(s.antiDegen))
	C.set_bb_rule(lp, C.int(s.nodeRule))
	C.set_bb_floorfirst(lp, C.int(s.floor))
	C.set_bb_depthlimit(lp, C.int(s.depth))
}

// engineInfinity is what the engine takes for infinite: its own default.
const engineInfinity = 1e30

// toEngine turns an infinity of Go into the engine's.
func toEngine(v float64) float64 { return math.Max(-engineInfinity, math.Min(engineInfinity, v)) }
