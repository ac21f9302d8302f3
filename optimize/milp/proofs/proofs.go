// Package proofs keeps programs and their certificates in a folder, and checks such a folder with nothing but the
// checker: 001.mps holds a program, 001.proof beside it what is proved of it. Both are text, described by the packages
// mps and proof; README.txt in the folder describes them once more.
package proofs

import (
	"bytes"
	_ "embed"
	"fmt"
	"io/fs"
	"math"
	"math/big"
	"path"
	"slices"
	"strings"

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
	Wrong []error // proofs that do not hold
}

// Count returns how many proofs hold.
func (r *Report) Count() int { return r.Least + r.Above + r.Impossible }

// Check reads a folder and checks each proof in it. An error says that it is no such folder: a file can't be read, or
// its pair is missing. Proofs that are read and do not hold are listed in Report.Wrong.
func Check(folder fs.FS) (*Report, error) {
	entries, err := fs.ReadDir(folder, ".")
	if err != nil {
		return nil, err
	}
	names := map[string]int{} // of programs 1, of certificates 2
	var all []string
	for _, e := range entries {
		for of, end := range []string{1: programEnd, 2: proofEnd} {
			if name, is := strings.CutSuffix(e.Name(), end); is && end != "" {
				names[name] |= of
				all = append(all, name)
			}
		}
	}
	slices.Sort(all)
	all = slices.Compact(all)
	if len(all) == 0 {
		return nil, fmt.Errorf("there is no proof in it: no file that ends in %s", proofEnd)
	}
	r := new(Report)
	for _, name := range all {
		switch names[name] {
		case 1:
			return nil, fmt.Errorf("%s has no %s beside it", name+programEnd, name+proofEnd)
		case 2:
			return nil, fmt.Errorf("%s has no %s beside it", name+proofEnd, name+programEnd)
		}
		if err := r.check(folder, name); err != nil {
			return nil, err
		}
	}
	return r, nil
}

// check adds one proof. It returns an error where one of its files can't be read.
func (r *Report) check(folder fs.FS, name string) error {
	f, c, err := read(folder, name)
	if err != nil {
		return err
	}
	if err := proof.Check(&f.Program, c.Tree, c.Bound); err != nil {
		r.Wrong = append(r.Wrong, fmt.Errorf("%s: %w", name+proofEnd, err))
		return nil
	}
	switch {
	case c.Point != nil && math.IsInf(c.Bound, 1):
		r.Wrong = append(r.Wrong, fmt.Errorf("%s: it gives a point of a program that it claims to be impossible", name+proofEnd))
	case c.Point != nil:
		cost, err := proof.CheckPoint(&f.Program, c.Point)
		if err != nil {
			r.Wrong = append(r.Wrong, fmt.Errorf("%s: %w", name+proofEnd, err))
			return nil
		}
		short, _ := cost.Sub(cost, new(big.Rat).SetFloat64(c.Bound)).Float64()
		r.Least, r.Short = r.Least+1, math.Max(r.Short, short)
	case math.IsInf(c.Bound, 1):
		r.Impossible++
	default:
		r.Above++
	}
	return nil
}

// read reads the two files of a proof.
func read(folder fs.FS, name string) (*mps.File, *proof.Certificate, error) {
	program, err := fs.ReadFile(folder, path.Join(".", name+programEnd))
	if err != nil {
		return nil, nil, err
	}
	f, err := mps.Read(bytes.NewReader(program))
	if err != nil {
		return nil, nil, fmt.Errorf("%s: %w", name+programEnd, err)
	}
	certificate, err := fs.ReadFile(folder, path.Join(".", name+proofEnd))
	if err != nil {
		return nil, nil, err
	}
	c, err := proof.Read(bytes.NewReader(certificate), f.Names)
	if err != nil {
		return nil, nil, fmt.Errorf("%s: %w", name+proofEnd, err)
	}
	return f, c, nil
}
