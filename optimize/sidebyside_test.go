package optimize_test

import (
	"context"
	"flag"
	"fmt"
	"math"
	"testing"
	"time"

	"cartwright/optimize"
	"cartwright/optimize/question"
)

var sideBySide = flag.Bool("sidebyside", false, "compare times with the other solvers on 30, 300 and 1,000 batteries, and ask to be faster than cbc on 300")

// peerTime is how long another solver may take for one model.
const peerTime = 2 * time.Minute

// Ten plans proved are timed against other solvers, each of which finds the first plan alone from the
// exported model; in turn, in the same run. All have to agree what it costs. By default only the smallest
// catalogue is looked at and no time is asked for, since tests share the machine; with -sidebyside all:
//
//	go test ./optimize -run TestSideBySide -sidebyside -v -timeout 60m
func TestSideBySide(t *testing.T) {
	sizes := [][3]int{{30, 6, 4}}
	if *sideBySide {
		sizes = append(sizes, [3]int{300, 60, 40}, [3]int{1000, 200, 133})
	}
	fmt.Println("| batteries, inverters, casters | variables | ten plans proved, s | models | cbc first plan, s | glpsol first plan, s | cbc / ours | glpsol / ours |")
	fmt.Println("|---|---:|---:|---:|---:|---:|---:|---:|")
	for _, n := range sizes {
		p := Generated(n[0], n[1], n[2])
		start := time.Now()
		r, err := optimize.Rank(context.Background(), p, question.Options{Plans: 10})
		ours := time.Since(start).Seconds()
		if err != nil {
			t.Fatal(err)
		}
		if r.Solver.Status != question.Optimal || len(r.Plans) != 10 {
			t.Fatalf("%v: %s with %d plans", n, r.Solver.Status, len(r.Plans))
		}
		m, err := optimize.FullModel(context.Background(), p, question.Options{})
		if err != nil {
			t.Fatal(err)
		}
		vars, _ := m.Size()
		file := writeModel(t, p, question.ByCost)
		var took [2]float64
		for i := range peers {
			start := time.Now()
			cost, done := peers[i].solveWithin(t, file, peerTime)
			took[i] = time.Since(start).Seconds()
			if !done {
				fmt.Printf("%s was stopped after %v on %v: its figures are at the least\n", peers[i].program, peerTime, n)
				continue
			}
			// The model is of unrounded money; the bill rounds each line to the cent.
			if first := &r.Plans[0]; math.Abs(cost-first.Cost.Units()) > roundingCents(first)/100+0.005 {
				t.Errorf("%v: the first plan costs %s, %s says %.4f", n, first.Cost, peers[i].program, cost)
			}
		}
		glpsol, cbc := took[0], took[1]
		fmt.Printf("| %d, %d, %d | %d | %.2f | %d | %.2f | %.2f | %.1f | %.1f |\n", n[0], n[1], n[2], vars, ours, r.Solver.Models,
			cbc, glpsol, cbc/ours, glpsol/ours)
		if *sideBySide && n[0] == 300 && ours >= cbc {
			t.Errorf("ten plans from 300 batteries took %.2f s, cbc %.2f s for one", ours, cbc)
		}
	}
}
