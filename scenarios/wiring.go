package scenarios

import "cartwright/catalog/problem"

// CableWish says how cable is cut, and of which kind it has to be.
type CableWish struct {
	Slack float64 // 0..1, what a conductor is longer than its path; default 0
	StepM float64 // lengths are rounded up to whole steps; 0: they are not
	Fine  bool    // string and main runs are of fine strands
}

// RunKind names what a cable path is for.
type RunKind string

// The runs. A branch is the run of an AC circuit, a dc run that of a circuit on the bus.
const (
	RunString RunKind = "string"
	RunMain   RunKind = "main"
	RunFeeder RunKind = "feeder"
	RunBranch RunKind = "branch"
	RunDC     RunKind = "dc"
	RunInlet  RunKind = "inlet" // from the supply to the charger
	RunSolar  RunKind = "solar" // from the modules to an input
	RunBond   RunKind = "bond"  // from the frame to the main ground
)

// Run is the cable path of the strings, of the inverters, of the feeder, of the inlet, of the modules or of the
// frame's bond.
type Run struct {
	Kind        RunKind
	LengthM     float64
	LinkM       float64 // of each link of modules in series, of a string run; default 0.3
	AmbientC    float64
	Bundled     int     // current-carrying conductors in the bundle
	TerminalC   float64 // 0: not stated, by rule
	Drop        float64 // 0..1 of nominal volts
	Conduit     string  // a type of the catalogue's conduits, in lower case; "": none
	OwnBreakerA float64 // 0: none; the inverter's own breaker, nothing is bought
	Pos         problem.Pos
}

// Receptacle is what a circuit ends in.
type Receptacle struct {
	Role    string
	RatingA float64 // 0: not stated
	Count   int
}

// Circuit is one branch circuit behind the load centre, or one on the bus.
type Circuit struct {
	Name       string
	DC         bool    // fed from the bus bars
	Volts      float64 // of a DC circuit the nominal volts of the bus
	DeviceA    float64
	LengthM    float64
	Neutral    bool
	TerminalC  float64 // 0: not stated, by rule
	AmbientC   float64
	Bundled    int
	Drop       float64
	Conduit    string // as of a Run
	Receptacle *Receptacle
	Pos        problem.Pos
}
