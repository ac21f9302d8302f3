//go:build !linux || !(amd64 || arm64) || nolpsolve

package lpsolve

import (
	"context"
	"errors"

	"cartwright/optimize/milp/engine"
	"cartwright/optimize/milp/proof"
)

// Library is lp_solve, which this program does not look for.
type Library struct{}

var errAbsent = errors.New("lpsolve: the library is looked for on Linux only, and not with the build tag nolpsolve")

// Open says that the library is not looked for.
func Open() (*Library, error) { return nil, errAbsent }

// Name returns "lp_solve".
func (*Library) Name() string { return "lp_solve" }

// Version returns nothing: there is no library.
func (*Library) Version() string { return "" }

// Search fails: there is no library.
func (*Library) Search(context.Context, *proof.Program, engine.Query) (engine.Answer, error) {
	return engine.Answer{}, errAbsent
}
