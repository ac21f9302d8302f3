package milp

import (
	"context"
	"math"
	"slices"
	"testing"
	"time"

	"cartwright/optimize/milp/proof"
)

// split is a market split problem after G. Cornuejols and M. Dawande (INFORMS J. Computing 11, 1999):
// rows of random whole numbers up to 99 of which half must be reached exactly. Branching visits almost
// every node; 40 variables take longer than anybody waits. With slack, each row may be missed at a cost.
func split(rows, vars int, slack bool) *Model {
	d := seeded(1)
	m := New("market split")
	sums := make([]Expr, rows)
	total := make([]float64, rows)
	for j := range vars {
		x := m.Binary(name("x", j))
		for i := range sums {
			c := d.num(0, 99)
			sums[i].Add(c, x)
			total[i] += c
		}
	}
	var missed Expr
	for i := range sums {
		if slack {
			more, less := m.Continuous(name("more", i), 0, math.Inf(1)), m.Continuous(name("less", i), 0, math.Inf(1))
			sums[i].Add(1, more).Add(-1, less)
			missed.Add(1, more).Add(1, less)
		}
		m.Row(name("r", i), sums[i], Equal, math.Floor(total[i]/2))
	}
	m.Minimize(missed)
	return m
}

// late is how long after its end a search may return, on a machine that has much else to do.
const late = 5 * time.Second

// TestWork: a limit of work ends a search at the same place every time.
func TestWork(t *testing.T) {
	for _, test := range []struct {
		name  string
		slack bool
		want  Status
	}{{"nothing found", false, Stopped}, {"something found", true, Best}} {
		t.Run(test.name, func(t *testing.T) {
			m := split(6, 40, test.slack)
			s, err := m.Solve(context.Background(), Options{Work: 3000, Prove: true})
			if err != nil || s.Status != test.want || !s.Ended || s.Proof != nil {
				t.Fatalf("%v, ended %v, %v; want %v", s.Status, s.Ended, err, test.want)
			}
			if s.Status == Best && (s.Bound > s.Objective || len(Violations(m, s.Values(), proof.Slack)) > 0) {
				t.Errorf("bound %v, objective %v", s.Bound, s.Objective)
			}
			again, err := m.Solve(context.Background(), Options{Work: 3000, Prove: true})
			if err != nil || again.Objective != s.Objective || again.Bound != s.Bound || !slices.Equal(again.Values(), s.Values()) {
				t.Errorf("then %v of %v, now %v of %v", s.Objective, s.Bound, again.Objective, again.Bound)
			}
		})
	}
}

func TestCancellation(t *testing.T) {
	m := split(6, 40, false)
	ctx, cancel := context.WithCancel(context.Background())
	var stopped time.Time
	time.AfterFunc(100*time.Millisecond, func() {
		stopped = time.Now()
		cancel()
	})
	s, err := m.Solve(ctx, Options{Prove: true})
	if err != nil || s.Status != Stopped || !s.Ended {
		t.Fatalf("%v, ended %v, %v", s.Status, s.Ended, err)
	}
	<-ctx.Done()
	if took := time.Since(stopped); took > late {
		t.Errorf("returned %v after the end", took)
	}
	// A context that is cancelled already, and one whose deadline is over.
	s, err = m.Solve(ctx, Options{})
	if err != nil || s.Status != Stopped || !s.Ended {
		t.Errorf("cancelled before: %v, ended %v, %v", s.Status, s.Ended, err)
	}
	over, cancel2 := context.WithTimeout(context.Background(), 50*time.Millisecond)
	defer cancel2()
	if s, err = m.Solve(over, Options{}); err != nil || s.Status != Stopped {
		t.Errorf("deadline of the context: %v, %v", s.Status, err)
	}
}

// TestCancellationRace cancels at any moment of short searches: whatever comes back must be consistent.
func TestCancellationRace(t *testing.T) {
	for i := range 300 {
		m := cart(seeded(uint64(i)), 1)
		ctx, cancel := context.WithCancel(context.Background())
		go func() {
			time.Sleep(time.Duration(i) * 10 * time.Microsecond)
			cancel()
		}()
		s, err := m.Solve(ctx, Options{Prove: true})
		cancel()
		switch {
		case err != nil:
			t.Fatal(err)
		case s.Status.HasPoint() && len(Violations(m, s.Values(), proof.Slack)) > 0:
			t.Fatalf("round %d: a point that does not hold", i)
		case s.Status == Stopped && !s.Ended, s.Status == GaveUp:
			t.Fatalf("round %d: %v, ended %v, %q", i, s.Status, s.Ended, s.Retries)
		}
	}
}
