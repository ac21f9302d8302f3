package milp

import (
	"fmt"
	"math"
	"math/rand/v2"
)

// dice draws a whole number from lo to hi: from a seeded generator, or from rapid.
type dice func(lo, hi int) int

func (d dice) num(lo, hi int) float64   { return float64(d(lo, hi)) }
func (d dice) hundredth(hi int) float64 { return float64(d(0, 100*hi)) / 100 }
func (d dice) part(of float64) float64  { return math.Floor(of * (0.2 + 0.6*float64(d(0, 100))/100)) }
func (d dice) oneIn(n int) bool         { return d(1, n) == 1 }
func seeded(seed uint64) dice {
	r := rand.New(rand.NewPCG(seed, 0))
	return func(lo, hi int) int { return lo + r.IntN(hi-lo+1) }
}

// shape is a family of random models. At size 1 all variables together take at most some ten thousand
// values, unless they are real.
type shape struct {
	name  string
	build func(d dice, size int) *Model
	real  bool // has variables that are not integer
	open  bool // may be without limit
}

var shapes = []shape{
	{name: "covering", build: covering},
	{name: "covering by yes or no", build: binaryCovering},
	{name: "covering with real data", build: realCovering},
	{name: "covering at equal costs", build: equalCovering},
	{name: "assignment", build: assignment},
	{name: "one option a group and a count", build: oneOption},
	{name: "equality knapsack", build: equalityKnapsack},
	{name: "packing into bins", build: binPacking},
	{name: "whole numbers, any rows", build: func(d dice, size int) *Model { return anyRows(d, size, false) }},
	{name: "whole and real numbers, any rows", build: func(d dice, size int) *Model { return anyRows(d, size, true) }, real: true},
	{name: "charge for opening, big M", build: fixedCharge, real: true},
	{name: "no bounds", build: noBounds, real: true, open: true},
	{name: "cart", build: cart, real: true},
}

func name(what string, i int) string { return fmt.Sprintf("%s%d", what, i) }
