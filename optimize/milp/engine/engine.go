// Package engine is the interface of what searches integer programs. Whatever an engine answers is a claim.
package engine

import (
	"context"

	"cartwright/optimize/milp/proof"
)

// Engine searches programs. Several goroutines may use one at the same time.
type Engine interface {
	// Name and Version tell people which engine it is.
	Name() string
	Version() string
	// Search looks for the best point. It returns an error only where the engine itself fails: no memory, a
	// program that it can't take in. The same program and query give the same answer, but for Ended.
	Search(ctx context.Context, p *proof.Program, q Query) (Answer, error)
}

// Query is what is asked of an engine.
type Query struct {
	// Ceiling asks only for points that cost at most this; +Inf for any. Accept is what a point may cost after
	// rounding, a little more.
	Ceiling, Accept float64
	// Gap is by how much a point has to beat another to be worth looking for; 0 stands for any gain.
	Gap float64
	// Work is how many pivots there are to be at most; 0 for no limit.
	Work int64
	// Turn counts the queries about one program: an engine of many settings takes another one each turn.
	Turn int
}

// Answer is what an engine claims.
type Answer struct {
	Claim Claim
	Point []float64 // the best point found, integers rounded; nil for none
	// Tree, from an engine that proves, shows for Best and None that no point costs less than Bound, or with a
	// Bound of +Inf that there is none.
	Tree  *proof.Tree
	Bound float64
	Work  int64 // pivots made
	Ended bool  // the context ended the search
	// Trouble tells what went wrong, "" for nothing.
	Trouble string
}

// Claim is how a search ended.
type Claim int

// The claims.
const (
	Open      Claim = iota // the work or the time ran out, or there was trouble
	Best                   // nothing is better than the point by the gap
	None                   // no point costs so little
	Unbounded              // the cost has no limit
)

// String returns the claim in words.
func (c Claim) String() string {
	switch c {
	case Open:
		return "open"
	case Best:
		return "best"
	case None:
		return "none"
	case Unbounded:
		return "without limit"
	}
	return "unknown"
}
