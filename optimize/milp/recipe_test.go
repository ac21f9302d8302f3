package milp

import (
	"fmt"
	"testing"
)

// TestQueens finds the fewest queens that attack every square of an n x n board: OEIS A075458, "domination
// number of the queens' graph": 1, 1, 1, 2, 3, 3, 4, 5 for n = 1 to 8.
func TestQueens(t *testing.T) {
	for n, want := range map[int]float64{4: 2, 5: 3, 6: 3, 7: 4} {
		m := New(fmt.Sprintf("queens on %d x %d", n, n))
		board := make([][]Var, n)
		var queens Expr
		for i := range board {
			for j := range n {
				board[i] = append(board[i], m.Binary(fmt.Sprintf("queen on %d,%d", i, j)))
				queens.Add(1, board[i][j])
			}
		}
		for i := range n {
			for j := range n {
				var seen Expr
				for a := range n {
					for b := range n {
						if a == i || b == j || a-b == i-j || a+b == i+j {
							seen.Add(1, board[a][b])
						}
					}
				}
				m.Row(fmt.Sprintf("seen %d,%d", i, j), seen, AtLeast, 1)
			}
		}
		m.Minimize(queens)
		wantOptimum(t, m, want)
	}
}

// TestSteinerTriples covers the lines of the affine space AG(d,3) by the fewest points: the covering
// problems A9 and A27 of D. R. Fulkerson, G. L. Nemhauser and L. E. Trotter, Mathematical Programming Study
// 2, 1974, with optima 5 and 18 (they are 3^d less the largest caps, 4 and 9).
func TestSteinerTriples(t *testing.T) {
	for d, want := range map[int]float64{2: 5, 3: 18} {
		points := 1
		for range d {
			points *= 3
		}
		m := New(fmt.Sprintf("stein%d", points))
		var vars []Var
		var size Expr
		for p := range points {
			vars = append(vars, m.Binary(fmt.Sprintf("x%d", p)))
			size.Add(1, vars[p])
		}
		third := func(a, b int) int { // the point on the line of two: digits base 3 that add up to 0
			c, place := 0, 1
			for range d {
				c += (6 - a%3 - b%3) % 3 * place
				a, b, place = a/3, b/3, place*3
			}
			return c
		}
		for a := range points {
			for b := a + 1; b < points; b++ {
				if c := third(a, b); c > b {
					m.Row(fmt.Sprintf("line %d %d %d", a, b, c), Sum(T(1, vars[a]), T(1, vars[b]), T(1, vars[c])), AtLeast, 1)
				}
			}
		}
		m.Minimize(size)
		wantOptimum(t, m, want)
	}
}

// TestWagnerWhitin plans twelve months of H. M. Wagner and T. M. Whitin, Management Science 5(1), 1958: a
// charge for ordering at all, 1 a piece and month for holding; least cost 864 (data and optimum from
// memory; the recursion of the paper in this test recomputes the optimum).
func TestWagnerWhitin(t *testing.T) {
	demand := []float64{69, 29, 36, 61, 61, 26, 34, 67, 45, 67, 79, 56}
	charge := []float64{85, 102, 102, 101, 98, 114, 105, 86, 119, 110, 98, 114}
	n := len(demand)

	best := make([]float64, n+1) // F(t): least cost of the first t months
	for month := 1; month <= n; month++ {
		best[month] = -1
		for first := 1; first <= month; first++ { // the last order covers months first to month
			cost := best[first-1] + charge[first-1]
			for k := first; k <= month; k++ {
				cost += float64(k-first) * demand[k-1]
			}
			if best[month] < 0 || cost < best[month] {
				best[month] = cost
			}
		}
	}
	if best[n] != 864 {
		t.Fatalf("the recursion gives %v, published 864", best[n])
	}

	m := New("wagner-whitin")
	var cost Expr
	total := 0.0
	for _, d := range demand {
		total += d
	}
	var before Var
	for k, d := range demand {
		order := m.Binary(fmt.Sprintf("order in month %d", k+1))
		pieces := m.Continuous(fmt.Sprintf("pieces in month %d", k+1), 0, total)
		stock := m.Continuous(fmt.Sprintf("stock after month %d", k+1), 0, total)
		balance := Sum(T(1, pieces), T(-1, stock))
		if k > 0 {
			balance.Add(1, before)
		}
		m.Row(fmt.Sprintf("balance of month %d", k+1), balance, Equal, d)
		m.Row(fmt.Sprintf("pieces only with an order %d", k+1), Sum(T(1, pieces), T(-total, order)), AtMost, 0)
		cost.Add(charge[k], order)
		cost.Add(1, stock)
		before = stock
	}
	m.Minimize(cost)
	wantOptimum(t, m, 864)
}

// TestGolomb finds the shortest rulers on which no two distances between n marks are the same: OEIS
// A003022: 1, 3, 6, 11, 17 for n = 2 to 6.
func TestGolomb(t *testing.T) {
	for n, want := range map[int]float64{3: 3, 4: 6, 5: 11} {
		m := New(fmt.Sprintf("golomb ruler of %d marks", n))
		longest := float64(n * n)
		length := m.Integer("length", 0, longest)
		// uses[d][i][j]: marks i < j are d apart; every distance is used once at most.
		marks := make([]Var, n)
		for i := range marks {
			marks[i] = m.Integer(fmt.Sprintf("mark %d", i), 0, longest)
			m.Row(fmt.Sprintf("mark %d is on the ruler", i), Sum(T(1, marks[i]), T(-1, length)), AtMost, 0)
		}
		once := make([]Expr, int(longest)+1)
		for i := range n {
			for j := i + 1; j < n; j++ {
				apart := Sum(T(1, marks[j]), T(-1, marks[i]))
				var one Expr
				for d := 1; d <= int(longest); d++ {
					v := m.Binary(fmt.Sprintf("%d and %d are %d apart", i, j, d))
					one.Add(1, v)
					apart.Add(-float64(d), v)
					once[d].Add(1, v)
				}
				m.Row(fmt.Sprintf("one distance of %d and %d", i, j), one, Equal, 1)
				m.Row(fmt.Sprintf("distance of %d and %d", i, j), apart, Equal, 0)
			}
		}
		for d := 1; d <= int(longest); d++ {
			m.Row(fmt.Sprintf("distance %d once", d), once[d], AtMost, 1)
		}
		m.Minimize(Sum(T(1, length)))
		wantOptimum(t, m, want)
	}
}
