package milp

import (
	"math"
	"math/big"

	"cartwright/optimize/milp/mps"
	"cartwright/optimize/milp/proof"
)

// Evidence is a certificate and the program it is about, as both are written to files.
type Evidence struct {
	File        *mps.File
	Certificate *proof.Certificate
}

// Evidence returns what shows that nothing is better than the solution's point, or that there is none; nil where
// nothing shows it. The objective's constant is in it.
func (s Solution) Evidence() *Evidence {
	if s.Proof == nil {
		return nil
	}
	e := &Evidence{File: s.model.file(), Certificate: new(proof.Certificate)}
	e.File.Program.Integer = append(s.Program.Integer[:len(s.Program.Integer):len(s.Program.Integer)],
		e.File.Program.Integer[len(s.Program.Integer):]...) // a relaxation has none
	*e.Certificate = *s.Proof
	if constant := s.model.sign() * s.model.objConst; constant != 0 {
		if s.Proof.Point != nil {
			e.Certificate.Point = append(s.Values(), 1)
		}
		e.Certificate.Bound = down(s.Proof.Bound, constant)
	}
	return e
}

// down returns a sum rounded down, so that what is proved of the exact one is proved of it.
func down(a, b float64) float64 {
	if math.IsInf(a, 1) {
		return a
	}
	exact := new(big.Rat).Add(new(big.Rat).SetFloat64(a), new(big.Rat).SetFloat64(b))
	v, _ := exact.Float64()
	if new(big.Rat).SetFloat64(v).Cmp(exact) > 0 {
		v = math.Nextafter(v, math.Inf(-1))
	}
	return v
}
