package branch

import (
	"math"

	"cartwright/optimize/milp/proof"
)

// program is a program in the scale of the simplex. Rows, cost and the columns of what need not be whole are
// multiplied by powers of 2, which changes no digit: x = columns * x here, and so on.
type program struct {
	p       *proof.Program
	begin   []int // where each row starts in col and coef; one more at the end
	col     []int
	coef    []float64
	cost    []float64
	lo, hi  []float64 // of the columns, then of the rows
	columns []float64
	rows    []float64
	money   float64 // of the cost
}

// scaleRounds is how often rows and columns are scaled in turn.
const scaleRounds = 3

func newProgram(p *proof.Program) *program {
	n, rows := len(p.Cost), len(p.Rows)
	s := &program{p: p, begin: make([]int, 1, rows+1), cost: make([]float64, n),
		lo: make([]float64, n+rows), hi: make([]float64, n+rows),
		columns: make([]float64, n), rows: make([]float64, rows)}
	for _, r := range p.Rows {
		s.col = append(s.col, r.Cols...)
		s.coef = append(s.coef, r.Coefs...)
		s.begin = append(s.begin, len(s.col))
	}
	for j := range s.columns {
		s.columns[j] = 1
	}
	for range scaleRounds {
		s.scaleRows()
		s.scaleColumns()
	}
	s.scaleRows()
	for i := range rows {
		for k := s.begin[i]; k < s.begin[i+1]; k++ {
			s.coef[k] *= s.rows[i] * s.columns[s.col[k]]
		}
		s.lo[n+i], s.hi[n+i] = p.Rows[i].Lower*s.rows[i], p.Rows[i].Upper*s.rows[i]
	}
	var mean middle
	for j, c := range p.Cost {
		s.cost[j] = c * s.columns[j]
		mean.add(s.cost[j])
	}
	s.money = mean.factor()
	for j := range s.cost {
		s.cost[j] *= s.money
		s.lo[j], s.hi[j] = p.Lower[j]/s.columns[j], p.Upper[j]/s.columns[j]
	}
	return s
}

func (s *program) scaleRows() {
	for i := range s.rows {
		var mean middle
		for k := s.begin[i]; k < s.begin[i+1]; k++ {
			mean.add(s.coef[k] * s.columns[s.col[k]])
		}
		s.rows[i] = mean.factor()
	}
}

func (s *program) scaleColumns() {
	means := make([]middle, len(s.columns))
	for i := range s.rows {
		for k := s.begin[i]; k < s.begin[i+1]; k++ {
			means[s.col[k]].add(s.coef[k] * s.rows[i])
		}
	}
	for j := range s.columns {
		if !s.p.Integer[j] { // a whole number stays one
			s.columns[j] = means[j].factor()
		}
	}
}

// middle is the geometric mean of the smallest and the largest of some numbers.
type middle struct{ least, most float64 }

func (m *middle) add(v float64) {
	if v = math.Abs(v); v == 0 {
		return
	}
	if m.least == 0 || v < m.least {
		m.least = v
	}
	m.most = max(m.most, v)
}

// factor returns the power of 2 that brings the mean to about 1.
func (m *middle) factor() float64 {
	if m.most == 0 {
		return 1
	}
	return math.Exp2(-math.Round((math.Log2(m.least) + math.Log2(m.most)) / 2))
}
