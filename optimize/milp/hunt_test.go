package milp

import (
	"context"
	"math"
	"strings"
	"testing"
)

// liar is an engine that answers as told where a rule fits, by the setting's name and how often it was
// asked; else it runs the true one.
type liar struct {
	rules map[string]func(turn int, p *program) *outcome // nil: the truth
	asked map[string]int
}

func (l *liar) run(p *program, s *setting, gap float64, pivots int64, w *watch) (outcome, error) {
	l.asked[s.name]++
	if rule := l.rules[s.name]; rule != nil {
		if out := rule(l.asked[s.name], p); out != nil {
			return *out, nil
		}
	}
	return p.run(s, gap, pivots, w)
}

// says answers the same each time.
func says(code int, values ...float64) func(int, *program) *outcome {
	return func(int, *program) *outcome {
		return &outcome{code: code, values: append([]float64(nil), values...), root: math.NaN()}
	}
}

// none has no point.
func none(code int) func(int, *program) *outcome {
	return func(int, *program) *outcome { return &outcome{code: code, root: math.NaN()} }
}

// TestLies puts a wrong answer of every kind into the engine's mouth. The model is 2 x + 3 y >= 7 for
// whole x and y up to 9, least 2 x + 4 y: best x = 4, 8.
func TestLies(t *testing.T) {
	tests := []struct {
		name      string
		rules     map[string]func(int, *program) *outcome
		options   Options
		want      Status
		objective float64
		retries   string // a part of what is noted
	}{
		{"a worse point called best", map[string]func(int, *program) *outcome{
			usual.name: says(codeOptimal, 9, 0)}, Options{Prove: true}, Proved, 8, ""},
		{"worse points, each better than the last", map[string]func(int, *program) *outcome{
			usual.name: says(codeOptimal, 9, 0), usualToo.name: says(codeOptimal, 8, 0), widest.name: says(codeOptimal, 7, 0)},
			Options{Prove: true}, Proved, 8, ""},
		{"the same worse point again", map[string]func(int, *program) *outcome{
			usual.name: says(codeOptimal, 9, 0), usualToo.name: says(codeOptimal, 9, 0)},
			Options{Prove: true}, Proved, 8, usualToo.name + ": an objective of 18 against a limit"},
		{"impossible, by one", map[string]func(int, *program) *outcome{
			usual.name: none(codeInfeasible)}, Options{Prove: true}, Proved, 8, usual.name + ": found none where another setting found a point"},
		{"impossible, by the one that is trusted", map[string]func(int, *program) *outcome{
			usual.name: none(codeInfeasible)}, Options{TrustInfeasible: true}, Infeasible, 0, ""},
		{"a point that misses a row", map[string]func(int, *program) *outcome{
			usual.name: says(codeOptimal, 3, 0)}, Options{Prove: true}, Proved, 8, usual.name + `: row "r": 6 against 7`},
		{"a point beyond a bound", map[string]func(int, *program) *outcome{
			usual.name: says(codeOptimal, 12, 0)}, Options{Prove: true}, Proved, 8, `upper bound "x": 12 against 9`},
		{"no number", map[string]func(int, *program) *outcome{
			usual.name: says(codeOptimal, math.NaN(), 0)}, Options{Prove: true}, Proved, 8, `number "x"`},
		{"almost whole", map[string]func(int, *program) *outcome{
			usual.name: says(codeOptimal, 4-1e-8, 1e-9)}, Options{Prove: true}, Proved, 8, ""},
		{"failure", map[string]func(int, *program) *outcome{
			usual.name: none(25)}, Options{Prove: true}, Proved, 8, usual.name + ": the engine returned 25"},
		{"no limit, though the bounds set one", map[string]func(int, *program) *outcome{
			usual.name: none(codeUnbounded)}, Options{Prove: true}, Proved, 8, usual.name + ": the engine returned 3"},
		{"aborted, though nobody asked for it", map[string]func(int, *program) *outcome{
			usual.name: none(codeAborted)}, Options{Prove: true}, Proved, 8, "the engine returned 6"},
		{"impossible after too deep a search", map[string]func(int, *program) *outcome{
			usual.name: func(int, *program) *outcome { return &outcome{code: codeInfeasible, cut: true, root: math.NaN()} }},
			Options{Prove: true}, Proved, 8, "branched too deep"},
		{"failure of all but one", failing(usual.name), Options{Prove: true}, Best, 8, "the engine returned 5"},
		{"failure of all", failing(""), Options{Prove: true}, GaveUp, 0, "the engine returned 5"},
		{"failure of all pairs", failing(geometric.name, perturbed.name), Options{Prove: true}, Proved, 8, "the engine returned 5"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			m := New("m")
			x, y := m.Integer("x", 0, 9), m.Integer("y", 0, 9)
			m.Row("r", Sum(T(2, x), T(3, y)), AtLeast, 7)
			m.Minimize(Sum(T(2, x), T(4, y)))
			w, err := newWatch(context.Background(), 0)
			if err != nil {
				t.Fatal(err)
			}
			defer w.free()
			s := newSearch(m, test.options, w)
			s.engine = (&liar{rules: test.rules, asked: map[string]int{}}).run
			if err := s.run(); err != nil {
				t.Fatal(err)
			}
			if s.sol.Status != test.want || s.sol.Objective != test.objective {
				t.Errorf("%v %v, want %v %v; %q", s.sol.Status, s.sol.Objective, test.want, test.objective, s.sol.Retries)
			}
			if got := strings.Join(s.sol.Retries, "\n"); !strings.Contains(got, test.retries) || test.retries == "" && got != "" {
				t.Errorf("noted %q, want %q", got, test.retries)
			}
			if s.sol.Ended {
				t.Error("said to have been cut short")
			}
		})
	}
}

// TestLimitless: that there is no limit has to be said by two, of a model whose bounds allow it, and there
// must be a point.
func TestLimitless(t *testing.T) {
	for _, test := range []struct {
		name     string
		rules    map[string]func(int, *program) *outcome
		possible bool
		want     Status
	}{
		{"one says so", map[string]func(int, *program) *outcome{usual.name: none(codeUnbounded)}, true, Proved},
		{"two say so", map[string]func(int, *program) *outcome{usual.name: none(codeUnbounded), usualToo.name: none(codeUnbounded)}, true, Unbounded},
		{"two say so, and a point is found by others", map[string]func(int, *program) *outcome{
			usual.name: once(codeUnbounded), usualToo.name: once(codeUnbounded)}, true, Unbounded},
		{"two say so, and there is no point", map[string]func(int, *program) *outcome{
			usual.name: once(codeUnbounded), usualToo.name: once(codeUnbounded)}, false, Infeasible},
	} {
		t.Run(test.name, func(t *testing.T) {
			m := New("m")
			x, y := m.Integer("x", 0, math.Inf(1)), m.Integer("y", 0, 9)
			m.Row("r", Sum(T(2, x), T(2, y)), AtMost, 9)
			if !test.possible {
				m.Row("s", Sum(T(2, y)), Equal, 7)
			}
			m.Maximize(Sum(T(1, x)))
			w, err := newWatch(context.Background(), 0)
			if err != nil {
				t.Fatal(err)
			}
			defer w.free()
			s := newSearch(m, Options{Prove: true}, w)
			s.engine = (&liar{rules: test.rules, asked: map[string]int{}}).run
			if err := s.run(); err != nil {
				t.Fatal(err)
			}
			if s.sol.Status != test.want {
				t.Errorf("%v, want %v; %q", s.sol.Status, test.want, s.sol.Retries)
			}
		})
	}
}

// once answers the first time and tells the truth after that.
func once(code int) func(int, *program) *outcome {
	return func(turn int, p *program) *outcome {
		if turn > 1 {
			return nil
		}
		return none(code)(turn, p)
	}
}

// failing lets every setting fail but those named.
func failing(but ...string) map[string]func(int, *program) *outcome {
	rules := map[string]func(int, *program) *outcome{}
	for _, pair := range pairs {
		rules[pair[0].name], rules[pair[1].name] = none(5), none(5)
	}
	for _, set := range spares {
		rules[set.name] = none(5)
	}
	for _, name := range but {
		delete(rules, name)
	}
	return rules
}

// TestShares: a run that does not finish hands over, and every turn is longer than the last.
func TestShares(t *testing.T) {
	m := New("m")
	x := m.Integer("x", 0, 9)
	m.Row("r", Sum(T(2, x)), AtLeast, 7)
	m.Minimize(Sum(T(1, x)))
	w, err := newWatch(context.Background(), 0)
	if err != nil {
		t.Fatal(err)
	}
	defer w.free()
	s := newSearch(m, Options{Prove: true}, w)
	var turns []string
	var shares []int64
	s.engine = func(p *program, set *setting, gap float64, pivots int64, w *watch) (outcome, error) {
		turns = append(turns, set.name)
		shares = append(shares, pivots)
		if len(turns) <= 5 {
			return outcome{code: codeAborted, spent: true, root: math.NaN()}, nil
		}
		return p.run(set, gap, pivots, w)
	}
	if err := s.run(); err != nil {
		t.Fatal(err)
	}
	// Three unfinished, two unfinished at the larger share, then one finds and its second proves.
	want := []string{usual.name, widest.name, fewest.name, usual.name, widest.name, fewest.name, fewestToo.name}
	if strings.Join(turns, "; ") != strings.Join(want, "; ") {
		t.Errorf("turns %q, want %q", turns, want)
	}
	if shares[3] != growth*shares[0] || shares[0] != shares[2] || shares[0] != firstPivots+2*pivotsADim {
		t.Errorf("shares %v", shares)
	}
	if s.sol.Status != Proved || s.sol.Objective != 4 || len(s.sol.Retries) > 0 || s.sol.Solves != 7 {
		t.Errorf("got %+v", s.sol)
	}
}
