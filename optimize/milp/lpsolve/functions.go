//go:build linux && (amd64 || arm64) && !nolpsolve

package lpsolve

import (
	"fmt"

	"github.com/ebitengine/purego"
)

// functions are those of the library that are used, by the names of its header, lp_lib.h.
type functions struct {
	lpSolveVersion   func(major, minor, release, build *int32)
	makeLP           func(rows, cols int32) uintptr
	deleteLP         func(lp uintptr)
	resizeLP         func(lp uintptr, rows, cols int32) bool
	setAddRowmode    func(lp uintptr, on bool) bool
	setObjFnex       func(lp uintptr, count int32, coefs *float64, cols *int32) bool
	addConstraintex  func(lp uintptr, count int32, coefs *float64, cols *int32, kind int32, side float64) bool
	setBounds        func(lp uintptr, col int32, lower, upper float64) bool
	setInt           func(lp uintptr, col int32, on bool) bool
	solve            func(lp uintptr) int32
	getVariables     func(lp uintptr, values *float64) bool
	getMaxLevel      func(lp uintptr) int32
	putAbortfunc     func(lp, function, handle uintptr)
	getTotalIter     uintptr // int64 of lp; asked so often that it is called by its address
	setVerbose       func(lp uintptr, level int32)
	setTimeout       func(lp uintptr, seconds int64)
	setMinim         func(lp uintptr)
	setInfinite      func(lp uintptr, v float64)
	setEpslevel      func(lp uintptr, level int32) bool
	setEpsint        func(lp uintptr, v float64)
	setEpsel         func(lp uintptr, v float64)
	setEpsb          func(lp uintptr, v float64)
	setEpsd          func(lp uintptr, v float64)
	setEpspivot      func(lp uintptr, v float64)
	setEpsperturb    func(lp uintptr, v float64)
	setNegrange      func(lp uintptr, v float64)
	setBreakAccuracy func(lp uintptr, v float64)
	setMIPGap        func(lp uintptr, absolute bool, gap float64)
	setBreakAtFirst  func(lp uintptr, on bool)
	setBreakAtValue  func(lp uintptr, v float64)
	setObjBound      func(lp uintptr, v float64)
	setSolutionlimit func(lp uintptr, n int32)
	setObjInBasis    func(lp uintptr, on bool)
	setBoundsTighter func(lp uintptr, on bool)
	setBasiscrash    func(lp uintptr, mode int32)
	setMaxpivot      func(lp uintptr, n int32) bool
	setSimplextype   func(lp uintptr, kind int32)
	setPivoting      func(lp uintptr, rule int32)
	setMultiprice    func(lp uintptr, n int32) bool
	setScaling       func(lp uintptr, mode int32)
	setScalelimit    func(lp uintptr, v float64)
	setPresolve      func(lp uintptr, mode, loops int32)
	setImprove       func(lp uintptr, mode int32)
	setAntiDegen     func(lp uintptr, mode int32)
	setBBRule        func(lp uintptr, rule int32)
	setBBFloorfirst  func(lp uintptr, mode int32)
	setBBDepthlimit  func(lp uintptr, depth int32)
}

// find looks up every function in an open library. The header's types are int, long long, double, unsigned char
// and pointers, and long, which has 64 bits on the systems of this file.
func (f *functions) find(handle uintptr) error {
	for _, e := range []struct {
		name     string
		function any
	}{
		{"lp_solve_version", &f.lpSolveVersion}, {"make_lp", &f.makeLP}, {"delete_lp", &f.deleteLP},
		{"resize_lp", &f.resizeLP}, {"set_add_rowmode", &f.setAddRowmode}, {"set_obj_fnex", &f.setObjFnex},
		{"add_constraintex", &f.addConstraintex}, {"set_bounds", &f.setBounds},
		{"set_int", &f.setInt}, {"solve", &f.solve}, {"get_variables", &f.getVariables},
		{"get_max_level", &f.getMaxLevel}, {"put_abortfunc", &f.putAbortfunc},
		{"set_verbose", &f.setVerbose}, {"set_timeout", &f.setTimeout}, {"set_minim", &f.setMinim},
		{"set_infinite", &f.setInfinite}, {"set_epslevel", &f.setEpslevel}, {"set_epsint", &f.setEpsint},
		{"set_epsel", &f.setEpsel}, {"set_epsb", &f.setEpsb}, {"set_epsd", &f.setEpsd},
		{"set_epspivot", &f.setEpspivot}, {"set_epsperturb", &f.setEpsperturb}, {"set_negrange", &f.setNegrange},
		{"set_break_numeric_accuracy", &f.setBreakAccuracy}, {"set_mip_gap", &f.setMIPGap},
		{"set_break_at_first", &f.setBreakAtFirst}, {"set_break_at_value", &f.setBreakAtValue},
		{"set_obj_bound", &f.setObjBound}, {"set_solutionlimit", &f.setSolutionlimit},
		{"set_obj_in_basis", &f.setObjInBasis}, {"set_bounds_tighter", &f.setBoundsTighter},
		{"set_basiscrash", &f.setBasiscrash}, {"set_maxpivot", &f.setMaxpivot},
		{"set_simplextype", &f.setSimplextype}, {"set_pivoting", &f.setPivoting},
		{"set_multiprice", &f.setMultiprice}, {"set_scaling", &f.setScaling},
		{"set_scalelimit", &f.setScalelimit}, {"set_presolve", &f.setPresolve}, {"set_improve", &f.setImprove},
		{"set_anti_degen", &f.setAntiDegen}, {"set_bb_rule", &f.setBBRule},
		{"set_bb_floorfirst", &f.setBBFloorfirst}, {"set_bb_depthlimit", &f.setBBDepthlimit},
	} {
		address, err := purego.Dlsym(handle, e.name)
		if err != nil {
			return fmt.Errorf("lpsolve: the library has no %s: %w", e.name, err)
		}
		purego.RegisterFunc(e.function, address)
	}
	var err error
	if f.getTotalIter, err = purego.Dlsym(handle, "get_total_iter"); err != nil {
		return fmt.Errorf("lpsolve: %w", err)
	}
	return nil
}
