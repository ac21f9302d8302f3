package milp

import (
	"context"
	"flag"
	"math"
	"runtime"
	"sync"
	"testing"
	"time"
)

// Twenty thousand models, in half an hour on two cores:
//
//	go test ./optimize/milp -run TestRivals -timeout 0 -v -milp.runs 20000
//	CARTWRIGHT_ENGINE=lp_solve go test ./optimize/milp -run TestRivals -timeout 0 -v -milp.runs 20000
var runs = flag.Int("milp.runs", 300, "random models that TestRivals asks glpsol and cbc about")

// TestRivals solves random models of every shape and asks glpsol and cbc through MPS files. Where they
// differ, the better point is checked row by row; what counts is that nobody ever has a better good point
// than we have, or a point where we say there is none. Rivals mix up impossible and without limit; where we
// say either, all are asked again without the objective.
func TestRivals(t *testing.T) {
	for _, program := range []string{"glpsol", "cbc"} {
		if err := have(program); err != nil {
			t.Fatal(err)
		}
	}
	const batch = 100
	var models []*Model
	for i := range *runs {
		models = append(models, shapes[i%len(shapes)].build(seeded(uint64(i)), 1+i/len(shapes)%3))
	}
	var work sync.WaitGroup
	slots := make(chan struct{}, runtime.GOMAXPROCS(0))
	var count tally
	for from := 0; from < len(models); from += batch {
		work.Add(1)
		slots <- struct{}{}
		go func() {
			defer work.Done()
			defer func() { <-slots }()
			count.ask(t, from, models[from:min(from+batch, len(models))])
		}()
	}
	work.Wait()
	t.Logf("%s: %d models: %d proved, %d impossible, %d without limit, %d without a certificate; glpsol wrong %d, cbc wrong %d; rivals out of time %d, crashed %d; seconds: we %.1f, glpsol %.1f, cbc %.1f",
		Finder().Name(), len(models), count.proved, count.infeasible, count.unbounded, count.bare, count.wrong["glpsol"], count.wrong["cbc"],
		count.stopped, count.crashed, count.took["milp"].Seconds(), count.took["glpsol"].Seconds(), count.took["cbc"].Seconds())
	if *runs >= 300 && (count.infeasible == 0 || count.unbounded == 0) {
		t.Errorf("%d impossible and %d without limit: the shapes leave something out", count.infeasible, count.unbounded)
	}
	if silent := count.stopped + count.crashed; silent > len(models)/50 {
		t.Errorf("the rivals left %d of 2 x %d questions unanswered: too many to tell much", silent, len(models))
	}
}

// tally counts what came out.
type tally struct {
	sync.Mutex
	proved, infeasible, unbounded, stopped, crashed int
	bare                                            int // found, or said to be impossible, without a certificate
	wrong                                           map[string]int
	took                                            map[string]time.Duration
}

// ask puts a batch of models, the first of which is number from, to all three.
func (c *tally) ask(t *testing.T, from int, models []*Model) {
	ctx, cancel := context.WithTimeout(t.Context(), rivalLimit*time.Duration(len(models)))
	defer cancel()
	ours := make([]Solution, len(models))
	start := time.Now()
	for i, m := range models {
		s, err := m.Solve(ctx, Options{Prove: true})
		if err != nil {
			t.Errorf("model %d: %v", from+i, err)
			return
		}
		ours[i] = s
	}
	c.count(t, from, models, ours, time.Since(start))
	c.rivals(ctx, t, from, models, ours)
	var twins []*Model
	var again []Solution
	for i, m := range models {
		if ours[i].Status != Unbounded && ours[i].Status != Infeasible {
			continue
		}
		any, err := twin(m).Solve(ctx, Options{Prove: true})
		if err != nil || any.Status.HasPoint() != (ours[i].Status == Unbounded) {
			t.Errorf("model %d, %s: %v, and %v without an objective; %v", from+i, m.Name(), ours[i].Status, any.Status, err)
		}
		twins, again = append(twins, twin(m)), append(again, any)
	}
	c.rivals(ctx, t, from, twins, again)
}

// rivals compares what we found with what the rivals find. From is the number of the first model, or of the
// batch that models without an objective come from.
func (c *tally) rivals(ctx context.Context, t *testing.T, from int, models []*Model, ours []Solution) {
	dir := t.TempDir()
	if err := writeModels(dir, models); err != nil {
		t.Error(err)
		return
	}
	for _, rival := range []struct {
		name string
		ask  func(context.Context, string, []*Model) ([]rivalAnswer, error)
	}{{"glpsol", glpsol}, {"cbc", cbc}} {
		start := time.Now()
		answers, err := rival.ask(ctx, dir, models)
		if err != nil {
			t.Error(err)
			return
		}
		c.Lock()
		c.took[rival.name] += time.Since(start)
		for i, a := range answers {
			switch a.status {
			case Stopped:
				c.stopped++
			case GaveUp:
				c.crashed++
			}
			wrong, theirs := compare(models[i], ours[i], a)
			if wrong != "" {
				t.Errorf("model %d, %s, %s: %s", from+i, models[i].Name(), rival.name, wrong)
			}
			if theirs != "" {
				c.wrong[rival.name]++
				t.Logf("model %d, %s, %s is wrong: %s", from+i, models[i].Name(), rival.name, theirs)
			}
		}
		c.Unlock()
	}
}

// coarse is how far a bound may be below the best point of a model that is bounded, relative to it: what the rows may be
// off can be worth more than the 1e-6 that is asked for.
const coarse = 1e-3

func (c *tally) count(t *testing.T, from int, models []*Model, ours []Solution, took time.Duration) {
	c.Lock()
	defer c.Unlock()
	if c.wrong == nil {
		c.wrong, c.took = map[string]int{}, map[string]time.Duration{}
	}
	c.took["milp"] += took
	for i, s := range ours {
		switch s.Status {
		case Proved:
			c.proved++
		case Infeasible:
			c.infeasible++
		case Unbounded:
			c.unbounded++
		default:
			c.bare++
			if near := math.Abs(s.Objective-s.Bound) <= coarse*math.Max(1, math.Abs(s.Objective)); !unbounded(models[i]) && !(s.Status == Best && near) {
				t.Errorf("model %d, %s: %v, %q", from+i, models[i].Name(), s.Status, s.Retries)
			}
		}
	}
}
