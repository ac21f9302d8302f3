package milp

import (
	"context"
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"cartwright/optimize/milp/proof"
)

// solved solves a model to a proof and checks that the point keeps every row.
func solved(t *testing.T, m *Model) Solution {
	t.Helper()
	s, err := m.Solve(context.Background(), Options{Prove: true})
	if err != nil {
		t.Fatal(err)
	}
	if s.Status != Proved {
		t.Fatalf("%s: %v, want %v; %q", m.Name(), s.Status, Proved, s.Retries)
	}
	if v := Violations(m, s.Values(), proof.Slack); len(v) > 0 {
		t.Errorf("%s: %v", m.Name(), v)
	}
	return s
}

// wantOptimum compares with a published optimum; 1e-9 of it is what adding up in another order may change.
func wantOptimum(t *testing.T, m *Model, want float64) Solution {
	t.Helper()
	s := solved(t, m)
	if math.Abs(s.Objective-want) > 1e-9*math.Max(1, math.Abs(want)) {
		t.Errorf("%s: optimum %v, published %v", m.Name(), s.Objective, want)
	}
	return s
}

// table reads a CSV file of testdata with '#' comments; the source stands in the file.
func table(t *testing.T, name string) (records []map[string]string) {
	t.Helper()
	f, err := os.Open("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows[1:] {
		record := map[string]string{}
		for i, column := range rows[0] {
			record[column] = row[i]
		}
		records = append(records, record)
	}
	return records
}

func num(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func nums(t *testing.T, text string) (list []float64) {
	t.Helper()
	for _, field := range strings.Fields(text) {
		list = append(list, num(t, field))
	}
	return list
}

// TestPublishedLinear solves the textbook programs of lp_problems.csv.
func TestPublishedLinear(t *testing.T) {
	rel := map[string]Rel{"<=": AtMost, ">=": AtLeast, "=": Equal}
	var m *Model
	var vars []Var
	for _, r := range table(t, "lp_problems.csv") {
		coefs := nums(t, r["coefs"])
		var e Expr
		if r["row"] == "objective" {
			m, vars = New(r["problem"]), nil
			for i := range coefs {
				if name := fmt.Sprintf("x%d", i+1); r["var_type"] == "binary" {
					vars = append(vars, m.Binary(name))
				} else {
					vars = append(vars, m.Continuous(name, 0, math.Inf(1)))
				}
			}
		}
		if r["row"] != "solution" {
			for i, c := range coefs {
				e.Add(c, vars[i])
			}
		}
		switch {
		case r["row"] == "solution":
			s := wantOptimum(t, m, num(t, r["rhs"]))
			for i, want := range coefs { // each optimum is the only one
				if math.Abs(s.Value(vars[i])-want) > 1e-6 {
					t.Errorf("%s: x%d is %v, published %v", m.Name(), i+1, s.Value(vars[i]), want)
				}
			}
		case r["sense_or_rel"] == "max":
			m.Maximize(e)
		case r["sense_or_rel"] == "min":
			m.Minimize(e)
		default:
			m.Row(r["row"], e, rel[r["sense_or_rel"]], num(t, r["rhs"]))
		}
	}
}

// TestKnapsack01 solves the eight problems of knapsack01_p01_p08.csv.
func TestKnapsack01(t *testing.T) {
	records := table(t, "knapsack01_p01_p08.csv")
	for len(records) > 0 {
		first := records[0]
		m := New(first["problem"])
		var weight, profit Expr
		for len(records) > 0 && records[0]["problem"] == first["problem"] {
			v := m.Binary("item " + records[0]["item"])
			weight.Add(num(t, records[0]["weight"]), v)
			profit.Add(num(t, records[0]["profit"]), v)
			records = records[1:]
		}
		m.Row("capacity", weight, AtMost, num(t, first["capacity"]))
		m.Maximize(profit)
		wantOptimum(t, m, num(t, first["optimum_profit"]))
	}
}

// TestKnapsackBounded solves the problem of knapsack_bounded.csv: 400 dag, best value 1010.
func TestKnapsackBounded(t *testing.T) {
	m := New("bounded knapsack")
	var weight, value Expr
	for _, r := range table(t, "knapsack_bounded.csv") {
		v := m.Integer(r["item"], 0, num(t, r["available"]))
		weight.Add(num(t, r["weight"]), v)
		value.Add(num(t, r["value"]), v)
	}
	m.Row("weight", weight, AtMost, 400)
	m.Maximize(value)
	wantOptimum(t, m, 1010)
}

// stream reads the numbers of a file of testdata, its '#' lines left out.
func stream(t *testing.T, name string) func() float64 {
	t.Helper()
	data, err := os.ReadFile("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	var list []float64
	for line := range strings.Lines(string(data)) {
		if !strings.HasPrefix(line, "#") {
			list = append(list, nums(t, line)...)
		}
	}
	return func() float64 {
		v := list[0]
		list = list[1:]
		return v
	}
}

// TestMultiKnapsack solves the seven problems of mknap1.txt.
func TestMultiKnapsack(t *testing.T) {
	next := stream(t, "mknap1.txt")
	for k := range int(next()) {
		n, rows, optimum := int(next()), int(next()), next()
		m := New(fmt.Sprintf("mknap1-%d", k+1))
		var profit Expr
		vars := make([]Var, n)
		for j := range vars {
			vars[j] = m.Binary(fmt.Sprintf("x%d", j+1))
			profit.Add(next(), vars[j])
		}
		left := make([]Expr, rows)
		for i := range left {
			for _, v := range vars {
				left[i].Add(next(), v)
			}
		}
		for i := range left {
			m.Row(fmt.Sprintf("c%d", i+1), left[i], AtMost, next())
		}
		m.Maximize(profit)
		wantOptimum(t, m, optimum)
	}
}

// TestGeneralisedAssignment solves the five problems of gap1.txt.
func TestGeneralisedAssignment(t *testing.T) {
	next := stream(t, "gap1.txt")
	for k := range int(next()) {
		agents, jobs := int(next()), int(next())
		m := New(fmt.Sprintf("c515-%d", k+1))
		var brings Expr
		does := make([][]Var, agents)
		for i := range does {
			for j := range jobs {
				does[i] = append(does[i], m.Binary(fmt.Sprintf("agent %d does job %d", i+1, j+1)))
				brings.Add(next(), does[i][j])
			}
		}
		takes := make([]Expr, agents)
		for i := range takes {
			for j := range jobs {
				takes[i].Add(next(), does[i][j])
			}
		}
		for i := range takes {
			m.Row(fmt.Sprintf("capacity of agent %d", i+1), takes[i], AtMost, next())
		}
		for j := range jobs {
			var by Expr
			for i := range does {
				by.Add(1, does[i][j])
			}
			m.Row(fmt.Sprintf("job %d is done", j+1), by, Equal, 1)
		}
		m.Maximize(brings)
		wantOptimum(t, m, next())
	}
}
