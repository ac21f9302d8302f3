package milp

import (
	"math"
	"strings"
	"testing"
)

// TestMIPLIB solves the two problems of miplib3.csv, p0033 and flugpl: 3089 and 1201500. A third of that
// library, stein27, is in TestSteinerTriples.
func TestMIPLIB(t *testing.T) {
	var m *Model
	var vars map[string]Var
	var cost Expr
	rel := map[string]Rel{"<=": AtMost, ">=": AtLeast, "=": Equal}
	for _, r := range table(t, "miplib3.csv") {
		if m == nil || m.Name() != r["problem"] {
			m, vars, cost = New(r["problem"]), map[string]Var{}, Expr{}
		}
		switch r["what"] {
		case "variable":
			lo, hi := num(t, r["low_or_relation"]), math.Inf(1)
			if r["high_or_rhs"] != "" {
				hi = num(t, r["high_or_rhs"])
			}
			if r["type"] == "integer" {
				vars[r["name"]] = m.Integer(r["name"], lo, hi)
			} else {
				vars[r["name"]] = m.Continuous(r["name"], lo, hi)
			}
			cost.Add(num(t, r["cost_or_terms"]), vars[r["name"]])
		case "row":
			var e Expr
			terms := strings.Fields(r["cost_or_terms"])
			for i := 0; i < len(terms); i += 2 {
				e.Add(num(t, terms[i]), vars[terms[i+1]])
			}
			m.Row(r["name"], e, rel[r["low_or_relation"]], num(t, r["high_or_rhs"]))
		case "optimum":
			m.Minimize(cost)
			wantOptimum(t, m, num(t, r["high_or_rhs"]))
		}
	}
}
