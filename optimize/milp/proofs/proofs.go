// Package proofs keeps programs and their certificates in a folder, and checks such a folder with nothing but the
// checker: 001.mps holds a program, 001.proof beside it what is proved of it. Both are text, described by the packages
// mps and proof; README.txt in the folder describes them once more.
package proofs

import (
	"bytes"
	_ "embed"
	"errors"
	"fmt"
	"io/fs"
	"math"
	"math/big"
	"path"
	"strings"

	"cartwright/catalog/problem"
	"cartwright/optimize/milp/mps"
	"cartwright/optimize/milp/proof"
)

// Readme is README.txt, for whoever finds such a folder.
//
//go:embed README.txt
var Readme []byte

// The endings of names.
const (
	programEnd = ".mps"
	proofEnd   = ".proof"
)

// File is a file of a folder.
type File struct {
	Name string
	Text []byte
}

// Write returns the two files of one proof, which is the number-th of a folder. What it is about is told on top.
func Write(number int, about string, f *mps.File, c *proof.Certificate) ([2]File, error) {
	name := fmt.Sprintf("%03d", number)
	told := *f
	told.Comments = append([]string{about}, f.Comments...)
	var program, certificate bytes.Buffer
	if err := mps.Write(&program, &told); err != nil {
		return [2]File{}, err
	}
	fmt.Fprintf(&certificate, "# of %s: %s\n", name+programEnd, about)
	if err := proof.Write(&certificate, f.Names, c); err != nil {
		return [2]File{}, err
	}
	return [2]File{{name + programEnd, program.Bytes()}, {name + proofEnd, certificate.Bytes()}}, nil
}

// Report is what a folder proves.
type Report struct {
	Least      int // programs with a point: nothing costs less than it by more than Short
	Above      int // programs without a point: nothing costs less than the bound claimed
	Impossible int // programs that have no point
	// Short is the most by which a bound is below the cost of the point beside it.
	Short float64
	// Wrong has, of each proof that does not hold, what is wrong with it.
	Wrong []problem.Problem
}

// Count returns how many proofs hold.
func (r *Report) Count() int { return r.Least + r.Above + r.Impossible }

// Check reads a folder and checks each proof in it; mistakes are told as of files in dir. What is no such folder, a file
// that can't be read, or whose pair is missing, is a *problem.Error with every such file. Proofs that are read and do not
// hold are listed in Report.Wrong.
func Check(folder fs.FS, dir string) (*Report, error) {
	var mistakes problem.List
	names, err := pairs(folder, dir, &mistakes)
	if err != nil {
		return nil, err
	}
	r := new(Report)
	for _, name := range names {
		f, c, at, err := read(folder, dir, name)
		var wrong *problem.Error
		switch {
		case errors.As(err, &wrong):
			for _, p := range wrong.Problems {
				mistakes.Add(p.Pos, p.Wrong, p.Right)
			}
		case err != nil:
			mistakes.Add(problem.Pos{File: path.Join(dir, name)}, err.Error(), "make sure that it may be read")
		default:
			r.judge(f, c, at)
		}
	}
	return r, mistakes.Err()
}

// pairs returns the names of what has a program and a certificate. What has only one of them is a mistake.
func pairs(folder fs.FS, dir string, mistakes *problem.List) ([]string, error) {
	entries, err := fs.ReadDir(folder, ".")
	if err != nil {
		return nil, err
	}
	found := map[string]bool{}
	for _, e := range entries {
		found[e.Name()] = true
	}
	var names []string
	for _, e := range entries { // in the order of their names
		if name, is := strings.CutSuffix(e.Name(), programEnd); is && !found[name+proofEnd] {
			mistakes.Add(problem.Pos{File: path.Join(dir, e.Name())}, "there is no "+name+proofEnd+" beside it", "the two belong together")
		}
		if name, is := strings.CutSuffix(e.Name(), proofEnd); is && !found[name+programEnd] {
			mistakes.Add(problem.Pos{File: path.Join(dir, e.Name())}, "there is no "+name+programEnd+" beside it", "the two belong together")
		} else if is {
			names = append(names, name)
		}
	}
	if len(names)+mistakes.Len() == 0 {
		mistakes.Add(problem.Pos{File: dir}, "there is no proof in it", "name a folder with files that end in "+proofEnd)
	}
	return names, nil
}

// read reads the two files of a proof.
func read(folder fs.FS, dir, name string) (*mps.File, *proof.Certificate, *proof.Places, error) {
	program, err := fs.ReadFile(folder, name+programEnd)
	if err != nil {
		return nil, nil, nil, err
	}
	f, err := mps.Read(bytes.NewReader(program), path.Join(dir, name+programEnd))
	if err != nil {
		return nil, nil, nil, err
	}
	certificate, err := fs.ReadFile(folder, name+proofEnd)
	if err != nil {
		return nil, nil, nil, err
	}
	c, at, err := proof.Read(bytes.NewReader(certificate), path.Join(dir, name+proofEnd), f.Names)
	return f, c, at, err
}

// judge counts a proof by what it proves, or lists what is wrong with it.
func (r *Report) judge(f *mps.File, c *proof.Certificate, at *proof.Places) {
	wrong := func(pos problem.Pos, err error) {
		flaw := &proof.Flaw{Wrong: err.Error()}
		errors.As(err, &flaw)
		if node, known := at.Nodes[flaw.Node]; known {
			pos = node
		}
		r.Wrong = append(r.Wrong, problem.Problem{Pos: pos, Wrong: flaw.Told(f.Names), Right: flaw.Right})
	}
	if err := proof.Check(&f.Program, c.Tree, c.Bound); err != nil {
		wrong(at.Claim, err)
		return
	}
	switch {
	case c.Point != nil && math.IsInf(c.Bound, 1):
		r.Wrong = append(r.Wrong, problem.Problem{Pos: at.Point, Wrong: "a point of a program that is claimed to be impossible", Right: "one of the two is wrong"})
	case c.Point != nil:
		cost, err := proof.CheckPoint(&f.Program, c.Point)
		if err != nil {
			wrong(at.Point, err)
			return
		}
		short, _ := cost.Sub(cost, new(big.Rat).SetFloat64(c.Bound)).Float64()
		r.Least, r.Short = r.Least+1, math.Max(r.Short, short)
	case math.IsInf(c.Bound, 1):
		r.Impossible++
	default:
		r.Above++
	}
}
