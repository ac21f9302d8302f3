package milp_test

import (
	"context"
	"fmt"
	"math"
	"os"

	"cartwright/optimize/milp"
)

// The Wyndor Glass example of Hillier and Lieberman, Introduction to Operations Research: two products,
// three plants; 36 (thousand dollars a week) at 2 and 6 batches.
func Example() {
	m := milp.New("wyndor")
	doors := m.Integer("doors", 0, math.Inf(1))
	windows := m.Integer("windows", 0, math.Inf(1))
	m.Row("plant 1", milp.Sum(milp.T(1, doors)), milp.AtMost, 4)
	m.Row("plant 2", milp.Sum(milp.T(2, windows)), milp.AtMost, 12)
	m.Row("plant 3", milp.Sum(milp.T(3, doors), milp.T(2, windows)), milp.AtMost, 18)
	m.Maximize(milp.Sum(milp.T(3, doors), milp.T(5, windows)))

	s, err := m.Solve(context.Background(), milp.Options{Prove: true})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%v: %g with %d doors and %d windows\n", s.Status, s.Objective, s.Int(doors), s.Int(windows))
	// Output: proved best: 36 with 2 doors and 6 windows
}

func ExampleModel_WriteMPS() {
	m := milp.New("a small one")
	x := m.Integer("strings of LFP-5", 0, 4)
	y := m.Continuous("metres", 0, math.Inf(1))
	m.Row("length", milp.Sum(milp.T(2.5, x), milp.T(-1, y)), milp.AtMost, 0)
	cost := milp.Sum(milp.T(-100, x), milp.T(3.2, y))
	cost.Const(25)
	m.Minimize(cost)
	if err := m.WriteMPS(os.Stdout); err != nil {
		fmt.Println(err)
	}
	// Output:
	// NAME a_small_one FREE
	// ROWS
	//  N OBJ
	//  L length
	// COLUMNS
	//  M0 'MARKER' 'INTORG'
	//  strings_of_LFP_5 OBJ -100
	//  strings_of_LFP_5 length 2.5
	//  M1 'MARKER' 'INTEND'
	//  metres OBJ 3.2
	//  metres length -1
	//  CONSTANT OBJ 25
	// RHS
	// BOUNDS
	//  LO BND strings_of_LFP_5 0
	//  UP BND strings_of_LFP_5 4
	//  FX BND CONSTANT 1
	// ENDATA
}
