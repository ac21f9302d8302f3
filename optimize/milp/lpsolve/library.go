//go:build linux && (amd64 || arm64) && !nolpsolve

package lpsolve

import (
	"errors"
	"fmt"
	"sync"
	"sync/atomic"

	"github.com/ebitengine/purego"
)

// places are where the library may be: where Debian's package lp-solve puts it, and where the loader looks.
var places = []string{"/usr/lib/lp_solve/liblpsolve55.so", "liblpsolve55.so"}

// Library is lp_solve, found on this machine.
type Library struct {
	functions
	asked   uintptr  // a function of C's for the library to ask whether to end
	running sync.Map // by key, what is under way: C is given keys and no pointer of Go's
	last    atomic.Uintptr
}

// Open finds the library, once a process, and makes it ready; else it says why there is none.
var Open = sync.OnceValues(open)

func open() (*Library, error) {
	var missing error
	for _, place := range places {
		handle, err := purego.Dlopen(place, purego.RTLD_NOW|purego.RTLD_LOCAL)
		if err != nil {
			missing = errors.Join(missing, err)
			continue
		}
		l := new(Library)
		if err := l.find(handle); err != nil {
			return nil, err
		}
		keepMemory()
		l.asked = purego.NewCallback(l.mustEnd)
		// The first model of a process fills in tables that all share; so it is made before threads are.
		if lp := l.makeLP(0, 0); lp != 0 {
			l.deleteLP(lp)
		}
		return l, nil
	}
	return nil, fmt.Errorf("lpsolve: no library: %w", missing)
}

// Name returns "lp_solve".
func (l *Library) Name() string { return "lp_solve" }

// Version returns the version of the library, as "5.5.2.5".
func (l *Library) Version() string {
	var major, minor, release, build int32
	l.lpSolveVersion(&major, &minor, &release, &build)
	return fmt.Sprintf("%d.%d.%d.%d", major, minor, release, build)
}

// run is one run of the library under way.
type run struct {
	stop  atomic.Bool
	work  int64 // pivots it may make; 0: any number
	spent bool  // it has made them
}

// begin notes a run and returns its key, which end forgets.
func (l *Library) begin(r *run) (key uintptr) {
	key = l.last.Add(1)
	l.running.Store(key, r)
	return key
}

func (l *Library) end(key uintptr) { l.running.Delete(key) }

// mustEnd is asked by the library every few pivots; 0 lets it go on.
func (l *Library) mustEnd(lp, key uintptr) uintptr {
	v, found := l.running.Load(key)
	if !found {
		return 1
	}
	r := v.(*run)
	r.spent = r.work > 0 && l.pivots(lp) >= r.work
	if r.spent || r.stop.Load() {
		return 1
	}
	return 0
}

// pivots returns how many pivots a model has taken.
func (l *Library) pivots(lp uintptr) int64 {
	n, _, _ := purego.SyscallN(l.getTotalIter, lp)
	return int64(n)
}

// keepMemory tells the C library to keep freed memory, where it is one that can be told so. Every model takes and
// frees a few arrays of 0.1 to 1 MB; left alone, they are mapped and unmapped each time, which costs a small model more
// than its solving.
func keepMemory() {
	const (
		trimThreshold = -1 // as malloc.h of glibc numbers them
		mapThreshold  = -3
		bytes         = 32 << 20
	)
	address, err := purego.Dlsym(purego.RTLD_DEFAULT, "mallopt")
	if err != nil {
		return
	}
	var mallopt func(parameter, value int32) int32
	purego.RegisterFunc(&mallopt, address)
	mallopt(trimThreshold, bytes)
	mallopt(mapThreshold, bytes)
}
