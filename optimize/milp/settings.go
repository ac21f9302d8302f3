package milp

// Numbers the engine is given in every run. Those of the same value as the engine's own default are set
// all the same, since its defaults differ from its guide in places.
const (
	// engineInfinity is what the engine takes for infinite.
	engineInfinity = 1e30
	// engineZero is what the engine rounds to 0 within its arithmetic.
	engineZero = 1e-12
	// engineRow is how far a scaled basic variable may be beyond its bound and still count as feasible.
	engineRow = 1e-10
	// engineDual is how far a reduced cost may be on the wrong side and still count as optimal.
	engineDual = 1e-9
	// enginePivot guards against dividing by a pivot that is rounding error only.
	enginePivot = 2e-7
	// enginePerturb is by how much bounds are shifted where a setting asks to break degeneracy.
	enginePerturb = 1e-5
	// engineNegRange is below which a lower bound makes the engine mirror a variable that has an upper
	// bound of at most 0.
	engineNegRange = -1e-6
	// engineAccuracy is the relative error of the rows at which the engine itself disowns its point.
	engineAccuracy = 5e-7
	// engineGap is the least improvement of the objective the engine looks for where no larger one is
	// given; engineRelativeGap is the same relative to the objective. Gaps of per cents, as are common,
	// return a worse point and call it best.
	engineGap         = 1e-11
	engineRelativeGap = 1e-9
	// anySolutions keeps the engine from guessing by how much the next point must be better, which it does
	// at its default of 1 and at times wrongly; see the package comment.
	anySolutions = 0
	// enginePivots is after how many pivots the basis is factorised anew.
	enginePivots = 250
	// engineScaleLoops is how often scaling is repeated where a setting asks for the engine's scaling.
	engineScaleLoops = 5
	// deepest is how often branching may return to one variable before the engine drops the branch. A
	// search that came so deep excludes nothing.
	deepest = 2000
)

// setting is a way to run the engine: what differs between the first run, the proof and the retries.
type setting struct {
	name string
	// ownScale multiplies rows and objective by powers of 2 before they are handed over, which is exact.
	// The engine's own scaling touches the objective by a factor that is not told, so that a gap in
	// money would be a gap in something else; then only the tiny gap is used.
	ownScale  bool
	scaling   int
	simplex   int
	pricing   int
	improve   int
	antiDegen int
	nodeRule  int
	branch    int // which one is first
	depth     int
	solutions int // anySolutions, or the engine's default of 1
	intTol    float64
}

// Values of the engine's header, named here so that settings can be written down without C.
const (
	noScaling        = 0
	geometricScaling = 4 + 64 + 128      // geometric mean, equilibrated, integers too
	powerScaling     = 1 + 32 + 64 + 128 // extreme values, powers of 2, equilibrated, integers too

	// dualThenPrimal is the only kind of simplex in use: with a primal first phase the engine takes out
	// artificial columns and then writes beyond the end of a list of its own, which AddressSanitizer
	// showed on assignment problems.
	dualThenPrimal = 2 + 4

	firstIndex   = 0 // Bland's rule: slow, cannot cycle
	dantzig      = 1 + adaptive
	devex        = 2 + adaptive
	steepestEdge = 3 + adaptive
	adaptive     = 32 // another rule for a while where the first one cycles

	improveDual = 2 + 4 // dual feasibility, Harris ratio test gap
	improveAll  = 1 + 2 + 4

	noPerturbing = 0
	perturbing   = 1 + 4 + 8 + 16 + 64 // fixed variables, stalling, numerical failure, lost feasibility, dynamic

	firstFraction   = 0     // branch on the first variable that is not whole
	widestGap       = 1     // on the one farthest from its bounds
	fewestFractions = 5     // on the one that has left the fewest fractions behind
	reducedCost     = 16384 // and fix what a reduced cost excludes, once there is a point

	floorFirst   = 0
	ceilingFirst = 1
)

// The settings. What finds and proves comes in pairs, see hunt; the pairs differ in the order of branching.
// The others are spare, for trouble, and differ in everything.
var (
	usual = setting{name: "first fraction, floor, devex", ownScale: true, scaling: noScaling,
		simplex: dualThenPrimal, pricing: devex, improve: improveDual, antiDegen: noPerturbing,
		nodeRule: firstFraction + reducedCost, branch: floorFirst, depth: deepest, solutions: anySolutions,
		intTol: defaultIntTol}
	usualToo = setting{name: "first fraction, ceiling, largest coefficient", ownScale: true, scaling: noScaling,
		simplex: dualThenPrimal, pricing: dantzig, improve: improveDual, antiDegen: noPerturbing,
		nodeRule: firstFraction, branch: ceilingFirst, depth: deepest, solutions: anySolutions,
		intTol: defaultIntTol}
	widest = setting{name: "widest gap, floor, devex", ownScale: true, scaling: noScaling,
		simplex: dualThenPrimal, pricing: devex, improve: improveDual, antiDegen: noPerturbing,
		nodeRule: widestGap + reducedCost, branch: floorFirst, depth: deepest, solutions: anySolutions,
		intTol: defaultIntTol}
	widestToo = setting{name: "widest gap, ceiling, largest coefficient", ownScale: true, scaling: noScaling,
		simplex: dualThenPrimal, pricing: dantzig, improve: improveDual, antiDegen: noPerturbing,
		nodeRule: widestGap, branch: ceilingFirst, depth: deepest, solutions: anySolutions,
		intTol: defaultIntTol}
	fewest = setting{name: "fewest fractions, floor, devex", ownScale: true, scaling: noScaling,
		simplex: dualThenPrimal, pricing: devex, improve: improveDual, antiDegen: noPerturbing,
		nodeRule: fewestFractions, branch: floorFirst, depth: deepest, solutions: anySolutions,
		intTol: defaultIntTol}
	fewestToo = setting{name: "fewest fractions, ceiling, largest coefficient", ownScale: true, scaling: noScaling,
		simplex: dualThenPrimal, pricing: dantzig, improve: improveDual, antiDegen: noPerturbing,
		nodeRule: fewestFractions, branch: ceilingFirst, depth: deepest, solutions: anySolutions,
		intTol: defaultIntTol}

	geometric = setting{name: "geometric scaling, largest coefficient", scaling: geometricScaling,
		simplex: dualThenPrimal, pricing: dantzig, improve: improveDual, antiDegen: noPerturbing,
		nodeRule: firstFraction, branch: ceilingFirst, depth: deepest, solutions: anySolutions,
		intTol: defaultIntTol}
	perturbed = setting{name: "no scaling, steepest edge, perturbing", scaling: noScaling,
		simplex: dualThenPrimal, pricing: steepestEdge, improve: improveAll, antiDegen: perturbing,
		nodeRule: firstFraction, branch: floorFirst, depth: deepest, solutions: anySolutions,
		intTol: tightIntTol}
	bland = setting{name: "power scaling, first index", scaling: powerScaling,
		simplex: dualThenPrimal, pricing: firstIndex, improve: improveDual, antiDegen: noPerturbing,
		nodeRule: firstFraction, branch: ceilingFirst, depth: deepest, solutions: anySolutions,
		intTol: tightIntTol}
)

// The order in which settings have their turns.
var (
	pairs  = [][2]*setting{{&usual, &usualToo}, {&widest, &widestToo}, {&fewest, &fewestToo}}
	spares = []*setting{&geometric, &perturbed, &bland}
)
