package milp

import "slices"

// Term is a coefficient times a variable.
type Term struct {
	coef float64
	v    Var
}

// T returns the term coef * v.
func T(coef float64, v Var) Term { return Term{coef: coef, v: v} }

// Expr is a sum of terms and a constant. The zero Expr is 0 and ready to use. A variable may occur more
// than once; its coefficients add up. A copy of an Expr may be added to without changing the original.
type Expr struct {
	terms    []Term
	constant float64
	owner    *Expr // who may append to terms: a copy finds another address here and takes its own
}

// Sum returns the sum of the terms.
func Sum(terms ...Term) Expr { return Expr{terms: slices.Clone(terms)} }

// Add adds coef * v and returns e.
func (e *Expr) Add(coef float64, v Var) *Expr {
	e.own()
	e.terms = append(e.terms, Term{coef: coef, v: v})
	return e
}

// AddExpr adds coef times another expression, its constant included, and returns e.
func (e *Expr) AddExpr(coef float64, other Expr) *Expr {
	e.own()
	for _, t := range other.terms {
		e.terms = append(e.terms, Term{coef: coef * t.coef, v: t.v})
	}
	e.constant += coef * other.constant
	return e
}

// Const adds a constant and returns e.
func (e *Expr) Const(c float64) *Expr {
	e.constant += c
	return e
}

// Len returns the number of terms, a variable that was added twice counted twice.
func (e Expr) Len() int { return len(e.terms) }

// own gives e its own terms where they were copied from another Expr.
func (e *Expr) own() {
	if e.owner != e {
		if e.owner != nil {
			e.terms = slices.Clone(e.terms)
		}
		e.owner = e
	}
}
