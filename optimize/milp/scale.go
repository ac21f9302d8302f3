package milp

import "math"

// scaled returns the program with each row and the objective multiplied by a power of 2 that brings the
// geometric mean of its smallest and largest coefficient to about 1, and the factor of the objective.
// Powers of 2 change no digit. Columns are left alone: an integer stays one. A limit of the objective is
// kept so large that what matters in it stands out of the engine's tolerances.
func (p *program) scaled() (q *program, objective float64) {
	q = new(program)
	*q = *p
	q.coef = append([]float64(nil), p.coef...)
	q.rhs = append([]float64(nil), p.rhs...)
	q.objcoef = append([]float64(nil), p.objcoef...)
	for i := range q.kind {
		f := factor(q.coef[q.begin[i]:q.begin[i+1]])
		if i == len(q.kind)-1 && q.fine > 0 {
			f = math.Max(f, math.Exp2(math.Ceil(math.Log2(standsOut/q.fine))))
		}
		// A right-hand side at the edge of what is allowed must not reach the engine's infinity.
		if math.Abs(q.rhs[i])*f < engineInfinity/2 {
			multiply(q.coef[q.begin[i]:q.begin[i+1]], f)
			q.rhs[i] *= f
		}
	}
	f := factor(q.objcoef)
	multiply(q.objcoef, f)
	return q, f
}

// standsOut is what a difference must be in a scaled row to be seen: the engine lets a row be off by up to
// its smallest pivot, enginePivot, where it finds no way to mend that.
const standsOut = 100 * enginePivot

// factor returns the power of 2 by which to multiply coefficients.
func factor(coef []float64) float64 {
	least, most := math.Inf(1), 0.0
	for _, c := range coef {
		least, most = math.Min(least, math.Abs(c)), math.Max(most, math.Abs(c))
	}
	if most == 0 {
		return 1
	}
	return math.Exp2(-math.Round((math.Log2(least) + math.Log2(most)) / 2))
}

func multiply(coef []float64, f float64) {
	for i := range coef {
		coef[i] *= f
	}
}
