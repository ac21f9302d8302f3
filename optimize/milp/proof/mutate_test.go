package proof

import (
	"math"
	"math/big"
	"math/rand/v2"
	"slices"
	"testing"
)

// Certificates of random knapsacks are passed, and every change of theirs is judged as the theorem judges it; none
// is ever passed for a bound that is wrong.
func TestMutants(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 1))
	passed, refused, splits := 0, 0, 0
	for range 30 {
		b := randomBag(r)
		p := b.program()
		_, value := b.best(p.Lower, p.Upper)
		bound, wrong := -value-0.01, -value+0.01
		tree := b.prove(p.Lower, p.Upper, value+0.02)
		if err := Check(p, tree, bound); err != nil {
			t.Fatalf("%+v: %v", b, err)
		}
		splits += len(nodes(tree)) / 2
		for _, m := range mutants(tree) {
			if Check(p, m.tree, wrong) == nil {
				t.Fatalf("%s: passed for %v where the best is %v", m.what, wrong, -value)
			}
			err := Check(p, m.tree, bound)
			reach, good := oracle(p, m.tree, p.Lower, p.Upper)
			good = good && (reach == nil || reach.Cmp(new(big.Rat).SetFloat64(bound)) >= 0)
			if (err == nil) != good {
				t.Fatalf("%s: %v; want %v\n%+v", m.what, err, good, b)
			}
			if m.never && err == nil {
				t.Fatalf("%s: passed", m.what)
			}
			if err == nil {
				passed++
			} else {
				refused++
			}
		}
	}
	t.Logf("%d splits; of the mutants %d passed and %d were refused", splits, passed, refused)
	if splits < 50 || passed < 200 || refused < 1500 {
		t.Error("too little was tried")
	}
}

// Impossible knapsacks, for which every leaf has to be impossible.
func TestImpossibleMutants(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 2))
	for range 40 {
		b := randomBag(r)
		p := b.program()
		for j := range p.Lower {
			p.Lower[j], p.Integer[j] = p.Upper[j], true
		}
		p.Rows[0].Upper = -1 // and a second row that would do
		p.Rows = append(p.Rows, Row{Cols: []int{0}, Coefs: []float64{1}, Lower: p.Upper[0] + 1, Upper: inf})
		tree := &Tree{Column: 0, At: int64(p.Upper[0]) - 1, Below: &Tree{},
			Above: &Tree{Impossible: true, Multipliers: []Multiplier{{0, -0.5}, {1, 2}}}}
		if err := Check(p, tree, inf); err != nil {
			t.Fatal(err)
		}
		possible := b.program() // nothing may show that this one is not
		for _, m := range mutants(tree) {
			if len(m.tree.Multipliers) < 3 && Check(possible, m.tree, inf) == nil {
				t.Fatalf("%s: passed for a program that has points", m.what)
			}
			_, good := oracle(p, m.tree, p.Lower, p.Upper)
			if reach, _ := oracle(p, m.tree, p.Lower, p.Upper); reach != nil {
				good = false // a leaf that claims only a cost
			}
			if err := Check(p, m.tree, inf); (err == nil) != good {
				t.Fatalf("%s: %v; want %v", m.what, err, good)
			}
		}
	}
}

// The exact reach of a certificate, rounded down, is the largest double that is passed.
func TestReachToTheLastUnit(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 3))
	for range 100 {
		b := randomBag(r)
		p := b.program()
		_, value := b.best(p.Lower, p.Upper)
		tree := b.prove(p.Lower, p.Upper, value+0.02)
		reach, good := oracle(p, tree, p.Lower, p.Upper)
		if !good || reach == nil {
			t.Fatalf("%+v: %v %v", b, reach, good)
		}
		most, _ := reach.Float64()
		if new(big.Rat).SetFloat64(most).Cmp(reach) > 0 {
			most = math.Nextafter(most, math.Inf(-1))
		}
		if err := Check(p, tree, most); err != nil {
			t.Errorf("%v: %v", most, err)
		}
		if Check(p, tree, math.Nextafter(most, inf)) == nil {
			t.Errorf("one unit in the last place beyond %v was passed", most)
		}
	}
}

type mutant struct {
	what  string
	tree  *Tree
	never bool // nothing of the kind can be right
}

// mutants changes every node of a tree in every way, one a time.
func mutants(tree *Tree) []mutant {
	var all []mutant
	for i := range nodes(tree) {
		change := func(what string, never bool, f func(n *Tree)) {
			twin := clone(tree)
			f(nodes(twin)[i])
			all = append(all, mutant{what, twin, never})
		}
		n := nodes(tree)[i]
		change("impossible or not", false, func(n *Tree) { n.Impossible = !n.Impossible })
		change("nothing in its place", false, func(n *Tree) { *n = Tree{} })
		change("impossible in its place", false, func(n *Tree) { *n = Tree{Impossible: true} })
		change("a multiplier more", false, func(n *Tree) { n.Multipliers = append(n.Multipliers, Multiplier{0, -0.1}) })
		change("a multiplier of the wrong sign", true, func(n *Tree) { n.Multipliers = append(n.Multipliers, Multiplier{0, 0.1}) })
		change("a multiplier that is no number", true, func(n *Tree) { n.Multipliers = append(n.Multipliers, Multiplier{0, math.NaN()}) })
		change("a multiplier without end", true, func(n *Tree) { n.Multipliers = append(n.Multipliers, Multiplier{0, math.Inf(-1)}) })
		change("a multiplier of no row", true, func(n *Tree) { n.Multipliers = append(n.Multipliers, Multiplier{9, -1}) })
		if n.Below != nil {
			change("without its lower half", true, func(n *Tree) { n.Below = nil })
			change("without its upper half", true, func(n *Tree) { n.Above = nil })
			change("halves exchanged", false, func(n *Tree) { n.Below, n.Above = n.Above, n.Below })
			change("the lower half twice", false, func(n *Tree) { n.Above = n.Below })
			change("the upper half twice", false, func(n *Tree) { n.Below = n.Above })
			change("split one lower", false, func(n *Tree) { n.At-- })
			change("split one higher", false, func(n *Tree) { n.At++ })
			change("another variable", false, func(n *Tree) { n.Column = 1 - min(n.Column, 1) })
			change("no variable", true, func(n *Tree) { n.Column = 99 })
			change("only its lower half", false, func(n *Tree) { *n = *n.Below })
			change("only its upper half", false, func(n *Tree) { *n = *n.Above })
			continue
		}
		for k, m := range n.Multipliers {
			change("without a multiplier", false, func(n *Tree) { n.Multipliers = slices.Delete(n.Multipliers, k, k+1) })
			change("the other sign", true, func(n *Tree) { n.Multipliers[k].Value = -m.Value })
			for _, by := range []float64{0, 0.5, 0.9, 1 - 0x1p-53, 1 + 0x1p-52, 1.1, 2, 1e6, 1e300} {
				change("a multiplier times something", false, func(n *Tree) { n.Multipliers[k].Value *= by })
			}
		}
	}
	return all
}

// nodes lists the nodes of a tree, itself first.
func nodes(t *Tree) []*Tree {
	if t == nil {
		return nil
	}
	return append(append([]*Tree{t}, nodes(t.Below)...), nodes(t.Above)...)
}

func clone(t *Tree) *Tree {
	if t == nil {
		return nil
	}
	twin := *t
	twin.Multipliers = slices.Clone(t.Multipliers)
	twin.Below, twin.Above = clone(t.Below), clone(t.Above)
	return &twin
}
