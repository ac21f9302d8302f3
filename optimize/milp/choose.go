package milp

import (
	"fmt"
	"os"

	"cartwright/optimize/milp/branch"
	"cartwright/optimize/milp/engine"
	"cartwright/optimize/milp/lpsolve"
)

// EngineVariable names the variable of the environment that says which engine looks for points: "go", or nothing, for
// the one that proves, which then does both; "lp_solve" for that library, where it is installed. What is found is
// proved by the same engine and checked by the same checker.
const EngineVariable = "CARTWRIGHT_ENGINE"

// chosen is what the variable asks for.
func chosen() (engine.Engine, error) {
	switch name := os.Getenv(EngineVariable); name {
	case "", "go":
		return nil, nil
	case "lp_solve":
		library, err := lpsolve.Open()
		if err != nil {
			return nil, fmt.Errorf("%s is %q, which is not found: %w", EngineVariable, name, err)
		}
		return library, nil
	default:
		return nil, fmt.Errorf("%s is %q; want go or lp_solve", EngineVariable, name)
	}
}

// Choose returns an error where the environment asks for an engine that is not there. Solve would then go on with the
// engine that proves alone.
func Choose() error {
	_, err := chosen()
	return err
}

// Points returns the engine that is asked for points before the one that proves, nil for none.
func Points() engine.Engine {
	e, _ := chosen()
	return e
}

// Finder returns the engine that looks for points first.
func Finder() engine.Engine {
	if e := Points(); e != nil {
		return e
	}
	return branch.Engine{}
}

// Engines describes the engines there are, one a line.
func Engines() []string {
	var own branch.Engine
	lines := []string{fmt.Sprintf("engine: %s %s, the program's own", own.Name(), own.Version())}
	library, err := lpsolve.Open()
	if err != nil {
		return append(lines, "engine: lp_solve is not found; nothing needs it")
	}
	return append(lines, fmt.Sprintf("engine: %s %s, found; it looks for plans where %s=lp_solve", library.Name(), library.Version(), EngineVariable))
}
