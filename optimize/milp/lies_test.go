package milp

import (
	"context"
	"errors"
	"math"
	"strings"
	"sync"
	"testing"

	"cartwright/optimize/milp/engine"
	"cartwright/optimize/milp/proof"
)

// liar is an engine that answers as told.
type liar struct {
	answers []engine.Answer // turn by turn, the last for ever
	err     error
	asked   *int
}

func (*liar) Name() string    { return "liar" }
func (*liar) Version() string { return "0" }
func (l *liar) Search(_ context.Context, _ *proof.Program, q engine.Query) (engine.Answer, error) {
	*l.asked++
	return l.answers[min(q.Turn, len(l.answers)-1)], l.err
}

// TestLies puts a wrong answer of every kind into the mouth of the engine that looks for points. The model is
// 2 x + 3 y >= 7 for whole x and y up to 9, least 2 x + 4 y: best x = 4, 8.
func TestLies(t *testing.T) {
	point := func(c engine.Claim, values ...float64) engine.Answer { return engine.Answer{Claim: c, Point: values} }
	for _, test := range []struct {
		name    string
		answers []engine.Answer
		engine  string // who found the point that stands
		retries string // a part of what is noted
		asked   int
	}{
		{"a worse point called best", []engine.Answer{point(engine.Best, 9, 0)}, "cartwright", "", 1},
		{"the best point", []engine.Answer{point(engine.Best, 4, 0)}, "liar", "", 1},
		{"the best point, unsure", []engine.Answer{point(engine.Open, 4, 0)}, "liar", "", 1},
		{"impossible", []engine.Answer{{Claim: engine.None}}, "cartwright", "", 3},
		{"impossible, with a tree that proves nothing", []engine.Answer{{Claim: engine.None, Tree: &proof.Tree{}, Bound: math.Inf(1)}}, "cartwright", "", 3},
		{"a point that misses a row", []engine.Answer{point(engine.Best, 3, 0)}, "cartwright", "liar: row 0", 3},
		{"a point that misses a row, then a good one", []engine.Answer{point(engine.Best, 3, 0), point(engine.Best, 5, 0)}, "cartwright", "liar: row 0", 2},
		{"a point beyond a bound", []engine.Answer{point(engine.Best, 12, 0)}, "cartwright", "", 1}, // the nearest within is taken
		{"no number", []engine.Answer{point(engine.Best, math.NaN(), 0)}, "cartwright", "liar: variable 0", 3},
		{"almost whole", []engine.Answer{point(engine.Best, 4-1e-8, 1e-9)}, "liar", "", 1},
		{"trouble", []engine.Answer{{Trouble: "out of sorts"}}, "cartwright", "liar: out of sorts", 3},
		{"without limit", []engine.Answer{{Claim: engine.Unbounded}}, "cartwright", "", 3},
	} {
		t.Run(test.name, func(t *testing.T) {
			m := New("m")
			x, y := m.Integer("x", 0, 9), m.Integer("y", 0, 9)
			m.Row("r", Sum(T(2, x), T(3, y)), AtLeast, 7)
			m.Minimize(Sum(T(2, x), T(4, y)))
			asked := 0
			s, err := m.Solve(context.Background(), Options{Prove: true, Points: &liar{answers: test.answers, asked: &asked}})
			if err != nil {
				t.Fatal(err)
			}
			if s.Status != Proved || s.Objective != 8 || s.Checked != 1 || s.Engine != test.engine || asked != test.asked {
				t.Errorf("%v %v by %s, %d certificates, asked %d times; %q", s.Status, s.Objective, s.Engine, s.Checked, asked, s.Retries)
			}
			if got := strings.Join(s.Retries, "\n"); !strings.Contains(got, test.retries) || test.retries == "" && got != "" {
				t.Errorf("noted %q, want %q", got, test.retries)
			}
			if err := proof.Check(s.Program, s.Proof.Tree, s.Proof.Bound); err != nil || s.Objective-s.Proof.Bound > 2 {
				t.Errorf("the certificate proves %v: %v", s.Proof.Bound, err)
			}
		})
	}
}

// TestFailure: an engine that fails is an error, not a status.
func TestFailure(t *testing.T) {
	m := New("m")
	m.Minimize(Sum(T(1, m.Integer("x", 2, 9))))
	broken := errors.New("no memory")
	asked := 0
	if _, err := m.Solve(context.Background(), Options{Points: &liar{answers: make([]engine.Answer, 1), err: broken, asked: &asked}}); !errors.Is(err, broken) {
		t.Errorf("got %v", err)
	}
}

// TestUnproved: what the engine that proves says without a certificate that passes is not believed.
func TestUnproved(t *testing.T) {
	good := proof.Tree{Multipliers: []proof.Multiplier{{Row: 0, Value: 0.5}}}
	for _, test := range []struct {
		name   string
		answer engine.Answer
		want   Status
	}{
		{"with a good tree", engine.Answer{Claim: engine.Best, Point: []float64{3}, Tree: &good, Bound: 2.4}, Proved},
		{"with a tree that proves less than said", engine.Answer{Claim: engine.Best, Point: []float64{3}, Tree: &good, Bound: 2.9}, Best},
		{"with a tree that proves too little", engine.Answer{Claim: engine.Best, Point: []float64{3}, Tree: &good, Bound: 1}, Best},
		{"without a tree", engine.Answer{Claim: engine.Best, Point: []float64{3}, Bound: 3}, Best},
		{"a point that is none", engine.Answer{Claim: engine.Best, Point: []float64{2}, Tree: &good, Bound: 2}, GaveUp},
		{"impossible, with a tree", engine.Answer{Claim: engine.None, Tree: &good, Bound: math.Inf(1)}, GaveUp},
		{"impossible, without", engine.Answer{Claim: engine.None, Bound: math.Inf(1)}, GaveUp},
		{"impossible, with a bound that is too low", engine.Answer{Claim: engine.None, Tree: &good, Bound: 2}, GaveUp},
	} {
		t.Run(test.name, func(t *testing.T) {
			m := New("m")
			x := m.Integer("x", 0, 9)
			m.Row("r", Sum(T(2, x)), AtLeast, 5)
			m.Minimize(Sum(T(1, x)))
			asked := 0
			s := newSearch(m, Options{Prove: true})
			s.points = nil // whatever engine this process was started with
			s.prover = &liar{answers: []engine.Answer{test.answer}, asked: &asked}
			if err := s.run(context.Background()); err != nil {
				t.Fatal(err)
			}
			if s.sol.Status != test.want || (s.sol.Proof != nil) != (test.want == Proved || test.name == "with a tree that proves too little") {
				t.Errorf("%v, certificate %v; %q", s.sol.Status, s.sol.Proof, s.sol.Retries)
			}
		})
	}
}

// TestTogether solves the same models one after the other and eight at once: the answers are the same. One model is
// solved by all of them.
func TestTogether(t *testing.T) {
	const n = 104
	models := make([]*Model, n)
	for i := range models {
		models[i] = shapes[i%len(shapes)].build(seeded(uint64(i)), 1+i/len(shapes)%2)
	}
	shared := cart(seeded(3), 2)
	answer := func(m *Model) Solution {
		s, err := m.Solve(context.Background(), Options{Prove: true})
		if err != nil {
			t.Error(err)
		}
		return s
	}
	alone := make([]Solution, n)
	for i, m := range models {
		alone[i] = answer(m)
	}
	sharedAlone := answer(shared)
	var work sync.WaitGroup
	for w := range 8 {
		work.Add(1)
		go func() {
			defer work.Done()
			for k := range n {
				i := (k + w*n/8) % n
				s := answer(models[i])
				if s.Status != alone[i].Status || s.Objective != alone[i].Objective || s.Bound != alone[i].Bound {
					t.Errorf("model %d: %v %v, alone %v %v", i, s.Status, s.Objective, alone[i].Status, alone[i].Objective)
				}
			}
			if s := answer(shared); s.Objective != sharedAlone.Objective {
				t.Errorf("shared model: %v, alone %v", s.Objective, sharedAlone.Objective)
			}
		}()
	}
	work.Wait()
}
