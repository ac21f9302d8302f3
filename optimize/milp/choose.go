package milp

import (
	"os"
	"sync"

	"cartwright/optimize/milp/branch"
	"cartwright/optimize/milp/engine"
	"cartwright/optimize/milp/lpsolve"
)

// EnginesVariable names the environment's variable that says which engine looks for points: "lp_solve" for that
// library, where it is found; anything else for the engine that proves, which then does both.
const EnginesVariable = "CARTWRIGHT_ENGINE"

// Points returns the engine that is asked for points before the one that proves, nil for none.
var Points = sync.OnceValue(func() engine.Engine {
	if os.Getenv(EnginesVariable) != "lp_solve" {
		return nil
	}
	library, err := lpsolve.Open()
	if err != nil {
		return nil
	}
	return library
})

// Finder returns the engine that looks for points first.
func Finder() engine.Engine {
	if e := Points(); e != nil {
		return e
	}
	return branch.Engine{}
}
