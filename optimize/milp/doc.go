// Package milp states linear programs with integers by named variables and rows, and solves them. It knows
// nothing of what the variables stand for.
//
// The engine is the C library lp_solve 5.5 (LGPL-2.1), one lprec a search, so that several goroutines may
// solve at once. What it returns is taken as a claim: indices and numbers are checked before they cross
// over, and every point that comes back is rounded to whole numbers and checked against each row in Go.
package milp
