package milp

import (
	"context"
	"flag"
	"fmt"
	"math"
	"os"
	"testing"
	"text/tabwriter"
	"time"
)

// The table of the package comment, in a few minutes:
//
//	go test ./optimize/milp -run TestSettings -timeout 0 -v -milp.settings 2000
var settingRuns = flag.Int("milp.settings", 30, "models of each shape that TestSettings runs under each setting")

// variant is a setting to be measured.
type variant struct {
	name string
	set  setting
	gap  bool // tell the engine the least improvement that matters
	ours bool // in use: must never be wrong
}

func vary(s setting, change func(s *setting)) setting {
	change(&s)
	return s
}

// variants are the settings in use and those that were tried against them.
func variants() []variant {
	engine := vary(geometric, func(s *setting) {
		s.branch, s.pricing, s.depth, s.solutions = floorFirst, devex, 50, 1
	})
	return []variant{
		{"usual", usual, true, true},
		{"usual, too", usualToo, true, true},
		{"widest gap", widest, true, true},
		{"widest gap, too", widestToo, true, true},
		{"fewest fractions", fewest, true, true},
		{"fewest fractions, too", fewestToo, true, true},
		{"geometric", geometric, false, true},
		{"perturbed", perturbed, true, true},
		{"bland", bland, false, true},
		{"the engine's defaults", engine, false, false},
		{"the same, deep as you like", vary(engine, func(s *setting) { s.depth = deepest }), false, false},
		{"the same, no scaling", vary(engine, func(s *setting) { s.scaling = noScaling }), false, false},
		{"usual, step guessed", vary(usual, func(s *setting) { s.solutions = 1 }), true, false},
		{"usual, no gap", usual, false, false},
		{"usual, no reduced costs", vary(usual, func(s *setting) { s.nodeRule = firstFraction }), true, false},
		{"usual, ceiling", vary(usual, func(s *setting) { s.branch = ceilingFirst }), true, false},
		{"usual, steepest edge", vary(usual, func(s *setting) { s.pricing = steepestEdge }), true, false},
		{"usual, engine's scaling", vary(usual, func(s *setting) { s.ownScale, s.scaling = false, geometricScaling }), false, false},
	}
}

// measured is what one setting did.
type measured struct {
	wrong, missed, refused, failed int // a worse point called best; a point there is, not found; a point that does not hold; no answer
	lost                           int // in a proof: the best point, just within the limit, called impossible
	first, proof                   time.Duration
}

// TestSettings runs each setting once over random models, without retries and checks, and compares with
// the best point that any of them found. Then it asks each for a point as good as the best, which is there,
// and for one that is better, which is not.
func TestSettings(t *testing.T) {
	list := variants()
	total := make([]measured, len(list))
	models := 0
	for _, sh := range shapes {
		if sh.open {
			continue
		}
		for i := range *settingRuns {
			models++
			compareSettings(t, sh.build(seeded(uint64(i)), 1+i%2), list, total)
		}
	}
	if *settingRuns > 100 {
		w := tabwriter.NewWriter(os.Stdout, 0, 0, 2, ' ', 0)
		fmt.Fprintf(w, "%d models\twrong\tmissed\trefused\tfailed\tus first\tlost\tus proof\n", models)
		for k, v := range list {
			x := total[k]
			fmt.Fprintf(w, "%s\t%d\t%d\t%d\t%d\t%d\t%d\t%d\n", v.name, x.wrong, x.missed, x.refused, x.failed,
				x.first.Microseconds()/int64(models), x.lost, x.proof.Microseconds()/int64(models))
		}
		w.Flush()
	}
	for k, v := range list {
		if x := total[k]; v.ours && (x.wrong > 0 || x.missed > 0 || x.lost > 0) {
			t.Errorf("%s: %d wrong, %d missed, %d lost of %d", v.name, x.wrong, x.missed, x.lost, models)
		}
	}
}

func compareSettings(t *testing.T, m *Model, list []variant, total []measured) {
	const (
		resolution = 1e-3
		mostPivots = 20000 // then a setting is said to have failed
	)
	w, err := newWatch(context.Background(), time.Minute)
	if err != nil {
		t.Fatal(err)
	}
	defer w.free()
	s := &search{m: m, o: Options{Resolution: resolution}, w: w, sign: m.sign(), spacing: m.spacing()}
	p, _ := m.flatten(false)

	// run returns the objective to be minimised, +Inf for "impossible", NaN for neither.
	run := func(v *variant, top ceiling) (at float64, code int, took time.Duration) {
		q, gap, set := *p, 0.0, v.set
		if !math.IsInf(top.limit, 1) {
			q.addRow(m.obj, s.sign, int32(AtMost), top.limit)
			q.fine = top.accept - top.limit
		}
		start := time.Now()
		use := &q
		if v.gap {
			gap = gapPart * s.better(0)
		}
		if set.ownScale {
			scaled, f := q.scaled()
			use, gap = scaled, gap*f
		}
		out, err := use.run(&set, gap, mostPivots, w)
		took = time.Since(start)
		if err != nil {
			t.Fatal(err)
		}
		switch {
		case out.code == codeOptimal && s.round(out.values, top) == "":
			return s.sign * (m.objectiveAt(out.values) - m.objConst), out.code, took
		case out.code == codeInfeasible:
			return math.Inf(1), out.code, took
		}
		return math.NaN(), out.code, took
	}
	best := math.Inf(1)
	found := make([]float64, len(list))
	codes := make([]int, len(list))
	for k := range list {
		var took time.Duration
		found[k], codes[k], took = run(&list[k], noCeiling())
		total[k].first += took
		if found[k] < best {
			best = found[k]
		}
	}
	for k, at := range found {
		switch {
		case math.IsNaN(at) && codes[k] == codeOptimal:
			total[k].refused++
		case math.IsNaN(at):
			total[k].failed++
		case math.IsInf(at, 1) && best < at:
			total[k].missed++
		case at > best+1.5*s.better(best):
			total[k].wrong++
		}
	}
	if math.IsInf(best, 1) || len(m.obj) == 0 {
		return
	}
	for k := range list {
		step := s.better(best)
		if at, _, _ := run(&list[k], ceiling{best + step/10, best + step/2}); math.IsInf(at, 1) {
			total[k].lost++
		}
		at, _, took := run(&list[k], ceiling{best - step, best - step/2})
		total[k].proof += took
		if at < best {
			t.Errorf("%s: %s finds %v better than %v, which all settings called best", m.Name(), list[k].name, at, best)
		}
	}
}

// TestWrongStep is why anySolutions is set. With its default limit of one solution the engine takes for the
// least improvement the least difference of costs, of differences of costs and so on; sums of costs can
// lie closer. Here the best cover costs 77 = 20 + 8 + 13 + 36, and the engine settles for 78.
func TestWrongStep(t *testing.T) {
	m := New("wrong step")
	cover := [][]float64{ // by row; the last is what is asked for
		{18, 8, 10, 10, 0, 17, 39},
		{0, 0, 7, 12, 0, 0, 12},
		{15, 4, 0, 9, 14, 14, 14},
		{19, 19, 4, 2, 16, 9, 19},
	}
	var cost Expr
	rows := make([]Expr, len(cover))
	for j, c := range []float64{13, 20, 36, 8, 15, 57} {
		v := m.Binary(name("x", j))
		cost.Add(c, v)
		for i := range rows {
			rows[i].Add(cover[i][j], v)
		}
	}
	m.Minimize(cost)
	for i := range rows {
		m.Row(name("r", i), rows[i], AtLeast, cover[i][6])
	}
	if best, _ := brute(m); best != 77 {
		t.Fatalf("the best cover costs %v", best)
	}
	w, err := newWatch(context.Background(), 0)
	if err != nil {
		t.Fatal(err)
	}
	defer w.free()
	s := newSearch(m, Options{}, w)
	p, _ := m.flatten(false)
	for guess, want := range map[int]float64{anySolutions: 77, 1: 78} {
		set := usual
		set.solutions = guess
		out, err := s.once(p, &set, noEnd)
		if err != nil || out.code != codeOptimal {
			t.Fatalf("limit %d: code %d, %v", guess, out.code, err)
		}
		if trouble := s.round(out.values, noCeiling()); trouble != "" {
			t.Fatal(trouble)
		}
		if got := s.value(out.values); got != want {
			t.Errorf("limit %d: the engine calls %v best, was %v", guess, got, want)
		}
	}
	// Even so the proof would have found it.
	s.engine = func(p *program, set *setting, gap float64, pivots int64, w *watch) (outcome, error) {
		guessing := *set
		guessing.solutions = 1
		return p.run(&guessing, gap, pivots, w)
	}
	s.o.Prove = true
	if err := s.run(); err != nil || s.sol.Status != Proved || s.sol.Objective != 77 {
		t.Errorf("%v %v, %v", s.sol.Status, s.sol.Objective, err)
	}
}
