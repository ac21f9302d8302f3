package energy

import (
	"fmt"
	"math"
	"testing"

	"cartwright/scenarios"
)

// The search gives up on many loads of unrelated watts; what stands then is no worse than putting the
// largest load first, each on the leg that has less: at most 7/6 of the least (Graham, Bounds on
// multiprocessing timing anomalies, SIAM J. Appl. Math. 17, 1969, for two machines).
func TestLegsOfTooManyLoadsStayNearTheLeast(t *testing.T) {
	var loads []scenarios.Load
	total := 0.0
	for i := range 40 {
		l := allDay(fmt.Sprint(i), 100*math.Sqrt(float64(2+i*i%37)+float64(i)/41))
		l.Leg = scenarios.LegAuto
		loads = append(loads, l)
		total += l.Watts
	}
	d := demandOf(t, loads...)
	if d.LegsProven {
		t.Error("40 loads of unrelated watts proven")
	}
	if got := d.PeakLegVA(); got > 7.0/6*total/2 {
		t.Errorf("larger leg %v W of %v W", got, total)
	}
	if again := demandOf(t, loads...); fmt.Sprint(again.Legs) != fmt.Sprint(d.Legs) {
		t.Error("not the same twice")
	}
}

// A load as large as many small ones together must be placed before them, or too few are left to
// balance it within the nodes.
func TestLegsPlaceTheLargestFirst(t *testing.T) {
	var loads []scenarios.Load
	total := 0.0
	for i := range 61 {
		l := allDay(fmt.Sprint(i), 10+math.Sqrt(float64(i+2))/9)
		if i == 60 {
			l.Watts = 500
		}
		l.Leg = scenarios.LegAuto
		loads = append(loads, l)
		total += l.Watts
	}
	if got := demandOf(t, loads...).PeakLegVA(); got > 7.0/6*total/2 {
		t.Errorf("larger leg %v W of %v W", got, total)
	}
}

// The search takes the way down first where the peak grows least, and ends once a leg has no more than
// half of all.
func TestLegsSearchGoesStraightToAGoodAssignment(t *testing.T) {
	a, b, auto := scenarios.LegA, scenarios.LegB, scenarios.LegAuto
	load := func(leg scenarios.Leg, watts float64, from, to int) scenarios.Load {
		l := between("x", watts, from, to)
		l.Leg = leg
		return l
	}
	var equal []scenarios.Load
	for range 10 {
		equal = append(equal, load(auto, 100, 0, 60))
	}
	for _, c := range []struct {
		name  string
		loads []scenarios.Load
		auto  []int
		nodes int // at most: the loads, the end, and as many again where an equal peak may have a smaller surge
		best  []scenarios.Leg
	}{
		{"ten equal", equal, []int{0, 1, 2, 3, 4, 5, 6, 7, 8, 9}, 11, []scenarios.Leg{a, b, a, b, a, b, a, b, a, b}},
		{"beside fixed loads", []scenarios.Load{
			load(a, 100, 0, 60), load(b, 50, 60, 120), load(auto, 80, 60, 120),
		}, []int{2}, 4, []scenarios.Leg{a}},
		{"none", []scenarios.Load{load(a, 100, 0, 60)}, nil, 2, []scenarios.Leg{}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := newPlacer(&scenarios.Scenario{Loads: c.loads}, true)
			s.run()
			got := []scenarios.Leg{}
			for _, i := range c.auto {
				got = append(got, s.found.legs[i])
			}
			if s.nodes > c.nodes || fmt.Sprint(got) != fmt.Sprint(c.best) {
				t.Errorf("%v after %d nodes, want %v after at most %d", got, s.nodes, c.best, c.nodes)
			}
		})
	}
}

// Many equal loads have many equal assignments; they are looked into once.
func TestLegsOfManyEqualLoadsAreProven(t *testing.T) {
	var loads []scenarios.Load
	for i := range 41 {
		l := between(fmt.Sprint(i), 90, 60*(i%3), 12*60)
		l.Leg = scenarios.LegAuto
		loads = append(loads, l)
	}
	d := demandOf(t, loads...)
	if !d.LegsProven || d.PeakLegVA() != 21*90 {
		t.Errorf("larger leg %v W, proven %v; want %v W, true", d.PeakLegVA(), d.LegsProven, 21*90)
	}
}

func TestBusiestMomentsCoverTheDay(t *testing.T) {
	for _, c := range []struct {
		name  string
		loads []scenarios.Load
		want  []int
	}{
		{"no loads", nil, []int{0}},
		{"all day", []scenarios.Load{allDay("a", 1)}, []int{0}},
		{"one inside another", []scenarios.Load{between("a", 1, 60, 300), between("b", 1, 120, 180)}, []int{120}},
		{"apart", []scenarios.Load{between("a", 1, 60, 120), between("b", 1, 180, 240)}, []int{60, 180}},
		{"one ends at midnight, the other begins", []scenarios.Load{
			between("a", 1, 20*60, 0), between("b", 1, 24*60, 60),
		}, []int{0, 1200}},
		{"overlap and a third", []scenarios.Load{
			between("a", 1, 60, 180), between("b", 1, 120, 240), between("c", 1, 600, 660),
		}, []int{120, 600}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := busiestMoments(c.loads, 60)
			if fmt.Sprint(got) != fmt.Sprint(c.want) {
				t.Errorf("moments %v, want %v", got, c.want)
			}
		})
	}
}
