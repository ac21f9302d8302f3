package proofs

import (
	"math"
	"strings"
	"testing"
	"testing/fstest"

	"cartwright/optimize/milp/mps"
	"cartwright/optimize/milp/proof"
)

var inf = math.Inf(1)

// cover is: make 3x + 2y least, x + y >= 1.5, both whole, from 0 to 10.
func cover() *mps.File {
	return &mps.File{Name: "cover", Names: proof.Names{Columns: []string{"x", "y"}, Rows: []string{"enough"}},
		Program: proof.Program{Cost: []float64{3, 2}, Lower: []float64{0, 0}, Upper: []float64{10, 10}, Integer: []bool{true, true},
			Rows: []proof.Row{{Cols: []int{0, 1}, Coefs: []float64{1, 1}, Lower: 1.5, Upper: inf}}}}
}

// folder writes three proofs: of the best point, of a limit, and that no point has x and y at 0.
func folder(t *testing.T) fstest.MapFS {
	t.Helper()
	all := fstest.MapFS{"README.txt": {Data: Readme}}
	leaf := &proof.Tree{Multipliers: []proof.Multiplier{{Row: 0, Value: 2}}}
	split := &proof.Tree{Column: 0, At: 0, // x = 0: y >= 2 costs 4; x = 1: y >= 1 costs 5; x >= 2 costs 6
		Below: &proof.Tree{Column: 1, At: 1, Below: &proof.Tree{Impossible: true, Multipliers: leaf.Multipliers}, Above: &proof.Tree{}},
		Above: &proof.Tree{Column: 0, At: 1, Below: &proof.Tree{Column: 1, At: 0, Below: &proof.Tree{Impossible: true, Multipliers: leaf.Multipliers},
			Above: &proof.Tree{}}, Above: &proof.Tree{}}}
	none := cover()
	none.Program.Upper = []float64{0, 1}
	for i, p := range []struct {
		f *mps.File
		c proof.Certificate
	}{
		{cover(), proof.Certificate{Bound: 3.5, Point: []float64{0, 2}, Tree: split}},
		{cover(), proof.Certificate{Bound: 2.9, Tree: leaf}},
		{none, proof.Certificate{Bound: inf, Tree: &proof.Tree{Impossible: true, Multipliers: leaf.Multipliers}}},
	} {
		pair, err := Write(i+1, "1 x anything", p.f, &p.c)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range pair {
			all[f.Name] = &fstest.MapFile{Data: f.Text}
		}
	}
	return all
}

func TestCheck(t *testing.T) {
	r, err := Check(folder(t))
	if err != nil || len(r.Wrong) > 0 || r.Least != 1 || r.Above != 1 || r.Impossible != 1 || r.Count() != 3 || r.Short != 0.5 {
		t.Errorf("%+v, %v", r, err)
	}
}

// What no longer holds is told with its file; the others are still counted.
func TestWrongProofs(t *testing.T) {
	for _, c := range []struct{ file, from, to, want string }{
		{"001.proof", "claim least 3.5", "claim least 4.5", "001.proof: proof: a leaf falls short"},
		{"001.proof", "y 2\n", "y 1\n", "001.proof: proof: row 0"},
		{"001.proof", "claim least 3.5", "claim impossible", "001.proof: proof: a leaf that does not say"},
		{"001.mps", "OBJ 2", "OBJ 1", "001.proof: proof: a leaf falls short"},
		{"002.proof", "enough 2", "enough -2", "002.proof: proof: a multiplier of -2"},
		{"003.mps", "UP BND y 1", "UP BND y 2", "003.proof: proof: an impossible leaf"},
		{"003.proof", "claim impossible\n", "claim impossible\npoint 0\n", "003.proof: it gives a point of a program that it claims to be impossible"},
	} {
		all := folder(t)
		before := string(all[c.file].Data)
		after := strings.Replace(before, c.from, c.to, 1)
		if before == after {
			t.Fatalf("%s has no %q:\n%s", c.file, c.from, before)
		}
		all[c.file] = &fstest.MapFile{Data: []byte(after)}
		r, err := Check(all)
		if err != nil || len(r.Wrong) != 1 || r.Count() != 2 || !strings.Contains(r.Wrong[0].Error(), c.want) {
			t.Errorf("%s, %q: %+v, %v; want %s", c.file, c.to, r, err, c.want)
		}
	}
}

func TestNoFolderOfProofs(t *testing.T) {
	change := func(f func(all fstest.MapFS)) fstest.MapFS {
		all := folder(t)
		f(all)
		return all
	}
	for want, all := range map[string]fstest.MapFS{
		"there is no proof in it":            {"README.txt": {}},
		"002.mps has no 002.proof beside it": change(func(all fstest.MapFS) { delete(all, "002.proof") }),
		"003.proof has no 003.mps beside it": change(func(all fstest.MapFS) { delete(all, "003.mps") }),
		"001.mps: line 1: ":                  change(func(all fstest.MapFS) { all["001.mps"].Data = []byte("not MPS") }),
		"002.proof: line 1: ":                change(func(all fstest.MapFS) { all["002.proof"].Data = []byte("no proof") }),
		`001.proof: line 5: the program has`: change(func(all fstest.MapFS) {
			all["001.proof"].Data = []byte(strings.Replace(string(all["001.proof"].Data), "y 2", "z 2", 1))
		}),
	} {
		if _, err := Check(all); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v; want %s", err, want)
		}
	}
}
