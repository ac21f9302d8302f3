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
	r, err := Check(folder(t), "p")
	if err != nil || len(r.Wrong) > 0 || r.Least != 1 || r.Above != 1 || r.Impossible != 1 || r.Count() != 3 || r.Short != 0.5 {
		t.Errorf("%+v, %v", r, err)
	}
}

// What no longer holds is told with its file; the others are still counted.
func TestWrongProofs(t *testing.T) {
	for _, c := range []struct{ file, from, to, want string }{
		{"001.proof", "claim least 3.5", "claim least 4.5", "p/001.proof:10:1: the leaf falls short of the claim; it has to reach it"},
		{"001.proof", "y 2\n", "y 1\n", `p/001.proof:4:1: row "enough" is not kept; it may be off by 1e-09 of its largest term`},
		{"001.proof", "claim least 3.5", "claim impossible", "p/001.proof:10:1: the leaf does not say that it is impossible; every leaf of such a claim does"},
		{"001.mps", "OBJ 2", "OBJ 1", "p/001.proof:10:1: the leaf falls short of the claim; it has to reach it"},
		{"002.proof", "enough 2", "enough -2", `p/002.proof:4:1: row "enough" has no such side for the multiplier -2; above 0 it takes the lower side, below the upper`},
		{"003.mps", "UP BND y 1", "UP BND y 2", "p/003.proof:4:1: the impossible leaf comes to no more than 0; it has to come to more"},
		{"003.proof", "claim impossible\n", "claim impossible\npoint 0\n", "p/003.proof:4:1: a point of a program that is claimed to be impossible; one of the two is wrong"},
	} {
		all := folder(t)
		before := string(all[c.file].Data)
		after := strings.Replace(before, c.from, c.to, 1)
		if before == after {
			t.Fatalf("%s has no %q:\n%s", c.file, c.from, before)
		}
		all[c.file] = &fstest.MapFile{Data: []byte(after)}
		r, err := Check(all, "p")
		if err != nil || len(r.Wrong) != 1 || r.Count() != 2 || r.Wrong[0].Error() != c.want {
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
		"p: there is no proof in it; name a folder with files that end in .proof": {"README.txt": {}},
		"p/002.mps: there is no 002.proof beside it; the two belong together":     change(func(all fstest.MapFS) { delete(all, "002.proof") }),
		"p/003.proof: there is no 003.mps beside it; the two belong together":     change(func(all fstest.MapFS) { delete(all, "003.mps") }),
		`p/001.mps:1:1: "not" where the section NAME`:                             change(func(all fstest.MapFS) { all["001.mps"].Data = []byte("not MPS") }),
		`p/002.proof:1:1: the first line is "no proof"; write `:                   change(func(all fstest.MapFS) { all["002.proof"].Data = []byte("no proof") }),
		`p/001.proof:5:1: the program has no "z"; write `: change(func(all fstest.MapFS) {
			all["001.proof"].Data = []byte(strings.Replace(string(all["001.proof"].Data), "y 2", "z 2", 1))
		}),
	} {
		if _, err := Check(all, "p"); err == nil || !strings.HasPrefix(err.Error(), want) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%v; want %s", err, want)
		}
	}
	_, err := Check(change(func(all fstest.MapFS) { // every file that can't be read is told, and no pair
		all["001.mps"].Data, all["003.proof"].Data = []byte("not MPS"), nil
		delete(all, "002.mps")
	}), "p")
	const want = `p/001.mps:1:1: "not" where the section NAME has to begin; write NAME, ROWS, COLUMNS, RHS, BOUNDS, ENDATA in this order
p/002.proof: there is no 002.mps beside it; the two belong together
p/003.proof: the certificate ends here; its last line is "end"`
	if err == nil || err.Error() != want {
		t.Errorf("%v; want %s", err, want)
	}
}
