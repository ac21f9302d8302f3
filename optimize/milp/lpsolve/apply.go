//go:build linux && (amd64 || arm64) && !nolpsolve

package lpsolve

// apply sets every parameter of the library; nothing is left to a default. The reasons stand at setting.
func (l *Library) apply(lp uintptr, s *setting, gap float64) {
	l.setMinim(lp)
	l.setTimeout(lp, 0) // whole seconds only; asking is finer
	l.setInfinite(lp, infinite)
	l.setEpslevel(lp, tightest)
	l.setEpsint(lp, s.intTol)
	l.setEpsel(lp, roundedTo0)
	l.setEpsb(lp, rowOff)
	l.setEpsd(lp, dualOff)
	l.setEpspivot(lp, smallestPivot)
	l.setEpsperturb(lp, perturbedBy)
	l.setNegrange(lp, mirrorBelow)
	l.setBreakAccuracy(lp, accuracy)
	l.setMIPGap(lp, true, max(gap, leastGap))
	l.setMIPGap(lp, false, relativeGap)
	l.setBreakAtFirst(lp, false)
	l.setBreakAtValue(lp, -infinite)
	l.setObjBound(lp, infinite)
	l.setSolutionlimit(lp, anySolutions)
	l.setObjInBasis(lp, true)
	l.setBoundsTighter(lp, false)
	l.setBasiscrash(lp, 0)
	l.setMaxpivot(lp, refactorAfter)
	l.setSimplextype(lp, dualThenPrimal)
	l.setPivoting(lp, int32(s.pricing))
	l.setMultiprice(lp, 0)
	l.setScaling(lp, int32(s.scaling))
	l.setScalelimit(lp, scaleLoops)
	l.setPresolve(lp, 0, 0)
	l.setImprove(lp, int32(s.improve))
	l.setAntiDegen(lp, int32(s.antiDegen))
	l.setBBRule(lp, int32(s.nodeRule))
	l.setBBFloorfirst(lp, int32(s.branch))
	l.setBBDepthlimit(lp, -deepest)
}
