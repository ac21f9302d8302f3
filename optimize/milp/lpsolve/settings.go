package lpsolve

// Numbers the engine is given in every run. Those of the same value as the engine's own default are set
// all the same, since its defaults differ from its guide in places.
const (
	// infinite is what the engine takes for infinite.
	infinite = 1e30
	// roundedTo0 is what the engine rounds to 0 within its arithmetic.
	roundedTo0 = 1e-12
	// rowOff is how far a scaled basic variable may be beyond its bound and still count as feasible.
	rowOff = 1e-10
	// dualOff is how far a reduced cost may be on the wrong side and still count as optimal.
	dualOff = 1e-9
	// smallestPivot guards against dividing by a pivot that is rounding error only.
	smallestPivot = 2e-7
	// perturbedBy is by how much bounds are shifted where a setting asks to break degeneracy.
	perturbedBy = 1e-5
	// mirrorBelow is below which a lower bound makes the engine mirror a variable that has an upper
	// bound of at most 0.
	mirrorBelow = -1e-6
	// accuracy is the relative error of the rows at which the engine itself disowns its point.
	accuracy = 5e-7
	// tightest is the level of all other tolerances, which the library then leaves as they are set.
	tightest = 0
	// neutral is the level of messages at which nothing is printed.
	neutral = 0
	// leastGap is the least improvement of the objective the engine looks for where no larger one is
	// given; relativeGap is the same relative to the objective. Gaps of per cents, as are common,
	// return a worse point and call it best.
	leastGap    = 1e-11
	relativeGap = 1e-9
	// anySolutions keeps the engine from guessing by how much the next point must be better, which it does
	// at its default of 1 and at times wrongly; see the package comment.
	anySolutions = 0
	// refactorAfter is after how many pivots the basis is factorised anew.
	refactorAfter = 250
	// scaleLoops is how often scaling is repeated where a setting asks for the engine's scaling.
	scaleLoops = 5
	// deepest is how often branching may return to one variable before the engine drops the branch. A
	// search that came so deep excludes nothing.
	deepest = 2000
	// defaultIntTol is how far an integer may be off a whole number before it is rounded. It guards against
	// branching for ever on rounding error; what it lets through is rounded and checked.
	defaultIntTol = 1e-7
	// tightIntTol is for trouble: of an integer with a coefficient of 1e5, defaultIntTol lets through 0.01.
	tightIntTol = 1e-10
)

// setting is a way to run the engine: what differs from one turn to the next.
type setting struct {
	name string
	// ownScale multiplies rows and objective by powers of 2 before they are handed over, which is exact.
	// The engine's own scaling touches the objective by a factor that is not told, so that a gap in
	// money would be a gap in something else; then only the tiny gap is used.
	ownScale  bool
	scaling   int
	pricing   int
	improve   int
	antiDegen int
	nodeRule  int
	branch    int // which one is first
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

// The settings, in the order in which they take turns. Which order of branching is fast only trying can tell. The
// second three branch on the same variables as the first, the other way and by other pivots; the last three are
// for trouble and differ in everything. Package milp gives the first three a turn, since it only wants points; the
// tests run all.
var settings = []setting{
	{name: "first fraction, floor, devex", ownScale: true, scaling: noScaling, pricing: devex, improve: improveDual,
		antiDegen: noPerturbing, nodeRule: firstFraction + reducedCost, branch: floorFirst, intTol: defaultIntTol},
	{name: "widest gap, floor, devex", ownScale: true, scaling: noScaling, pricing: devex, improve: improveDual,
		antiDegen: noPerturbing, nodeRule: widestGap + reducedCost, branch: floorFirst, intTol: defaultIntTol},
	{name: "fewest fractions, floor, devex", ownScale: true, scaling: noScaling, pricing: devex, improve: improveDual,
		antiDegen: noPerturbing, nodeRule: fewestFractions, branch: floorFirst, intTol: defaultIntTol},
	{name: "first fraction, ceiling, largest coefficient", ownScale: true, scaling: noScaling, pricing: dantzig,
		improve: improveDual, antiDegen: noPerturbing, nodeRule: firstFraction, branch: ceilingFirst, intTol: defaultIntTol},
	{name: "widest gap, ceiling, largest coefficient", ownScale: true, scaling: noScaling, pricing: dantzig,
		improve: improveDual, antiDegen: noPerturbing, nodeRule: widestGap, branch: ceilingFirst, intTol: defaultIntTol},
	{name: "fewest fractions, ceiling, largest coefficient", ownScale: true, scaling: noScaling, pricing: dantzig,
		improve: improveDual, antiDegen: noPerturbing, nodeRule: fewestFractions, branch: ceilingFirst, intTol: defaultIntTol},
	{name: "geometric scaling, largest coefficient", scaling: geometricScaling, pricing: dantzig, improve: improveDual,
		antiDegen: noPerturbing, nodeRule: firstFraction, branch: ceilingFirst, intTol: defaultIntTol},
	{name: "no scaling, steepest edge, perturbing", scaling: noScaling, pricing: steepestEdge, improve: improveAll,
		antiDegen: perturbing, nodeRule: firstFraction, branch: floorFirst, intTol: tightIntTol},
	{name: "power scaling, first index", scaling: powerScaling, pricing: firstIndex, improve: improveDual,
		antiDegen: noPerturbing, nodeRule: firstFraction, branch: ceilingFirst, intTol: tightIntTol},
}
