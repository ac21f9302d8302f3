package milp

// setting is a way to run the engine. The numbers are those of its header lp_lib.h.
type setting struct {
	name      string
	scaling   int
	simplex   int
	pricing   int
	improve   int
	antiDegen int
	nodeRule  int
	floor     int
	depth     int
	intTol    float64
	rowTol    float64
}

// Values of lp_lib.h, named here so that settings can be written down without C.
const (
	scaleNone          = 0
	scaleGeometric     = 4 + 64 + 128 // geometric, equilibrated, integers too
	scaleGeometricDyn  = scaleGeometric + 256
	scaleExtremePower2 = 1 + 32 + 64 + 128
	scaleCurtisReid    = 7 + 32 + 128
	simplexDualPrimal  = 2 + 4
	simplexPrimalBoth  = 1 + 4
	pricerFirst        = 0 // Bland's rule
	pricerDantzig      = 1
	pricerDevex        = 2
	pricerSteepest     = 3
	priceAdaptive      = 32
	improveDualTheta   = 2 + 4
	floorBranch        = 0
	ceilBranch         = 1
)

// settings are tried in this order.
var settings = []setting{
	{name: "geometric scaling, devex", scaling: scaleGeometric, simplex: simplexDualPrimal,
		pricing: pricerDevex + priceAdaptive, improve: improveDualTheta, depth: -50, intTol: 1e-7, rowTol: 1e-9},
	{name: "no scaling, devex", scaling: scaleNone, simplex: simplexDualPrimal,
		pricing: pricerDevex + priceAdaptive, improve: improveDualTheta, depth: -50, intTol: 1e-7, rowTol: 1e-9},
	{name: "power-of-2 scaling, steepest edge, primal", scaling: scaleExtremePower2, simplex: simplexPrimalBoth,
		pricing: pricerSteepest + priceAdaptive, improve: improveDualTheta, depth: -50, intTol: 1e-7, rowTol: 1e-9},
	{name: "no scaling, first index, primal", scaling: scaleNone, simplex: simplexPrimalBoth,
		pricing: pricerFirst, improve: improveDualTheta, depth: -50, intTol: 1e-7, rowTol: 1e-9},
}
