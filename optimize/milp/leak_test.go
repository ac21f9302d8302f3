package milp

import (
	"context"
	"os"
	"runtime"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"
)

// residentKB returns what the process holds in memory, C's share included.
func residentKB(t *testing.T) int {
	t.Helper()
	data, err := os.ReadFile("/proc/self/status")
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(string(data)) {
		if rest, ok := strings.CutPrefix(line, "VmRSS:"); ok {
			kb, err := strconv.Atoi(strings.Fields(rest)[0])
			if err != nil {
				t.Fatal(err)
			}
			return kb
		}
	}
	t.Fatal("no VmRSS in /proc/self/status")
	return 0
}

// TestLeaks solves 5,000 models, with proofs, impossible ones, cancelled ones and contexts to watch. One
// leaked lprec of these models is 100 KB and more, so that 500 of them would show.
func TestLeaks(t *testing.T) {
	solve := func(n int) {
		ctx, cancel := context.WithCancel(context.Background())
		defer cancel()
		for i := range n {
			m := shapes[i%len(shapes)].build(seeded(uint64(i)), 1)
			o := Options{Prove: true, TimeLimit: time.Minute}
			if i%7 == 0 {
				o.TimeLimit = time.Microsecond
			}
			if _, err := m.Solve(ctx, o); err != nil {
				t.Error(err)
			}
		}
	}
	solve(500) // fill what is kept for reuse
	runtime.GC()
	before, goroutines := residentKB(t), runtime.NumGoroutine()
	solve(5000)
	runtime.GC()
	if grown := residentKB(t) - before; grown > 50<<10 {
		t.Errorf("5,000 solves left %d KB behind", grown)
	}
	for range 100 { // goroutines that are just ending
		if runtime.NumGoroutine() <= goroutines {
			return
		}
		time.Sleep(10 * time.Millisecond)
	}
	t.Errorf("%d goroutines, were %d", runtime.NumGoroutine(), goroutines)
}

// TestTogether solves the same models one after the other and eight at once: the answers are the same. One
// model is solved by all of them.
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
