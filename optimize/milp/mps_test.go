package milp

import (
	"bytes"
	"context"
	"math"
	"reflect"
	"strings"
	"testing"

	"cartwright/optimize/milp/mps"
)

// text returns a model as MPS.
func text(t *testing.T, m *Model) string {
	t.Helper()
	var b bytes.Buffer
	if err := m.WriteMPS(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// TestMPSNames cleans names that a reader would trip over and keeps them apart, the same way each time.
func TestMPSNames(t *testing.T) {
	long := strings.Repeat("long", mps.LongestName/4)
	tests := []struct{ name, want string }{
		{"4/0 AWG, red", "_4_0_AWG__red"},
		{"4/0 AWG: red", "_4_0_AWG__red_2"},
		{"x", "x"},
		{"x[1].y", "x[1].y"},
		{"größe", "gr__e"},
		{"CONSTANT", "CONSTANT_2"},
		{"'MARKER'", "__MARKER_"},
		{" ", "__"},
		{".5", "_.5"},
		{long + "long", long},
		{long + "longer", long + "_2"},
	}
	m := New("")
	var e Expr
	for _, test := range tests {
		e.Add(1, m.Binary(test.name))
	}
	m.Row("OBJ", e, AtMost, 3)
	got := text(t, m)
	for _, test := range tests {
		if !strings.Contains(got, "\n "+test.want+" OBJ_2 1\n") {
			t.Errorf("%q is not %q in\n%s", test.name, test.want, got)
		}
	}
	if !strings.HasPrefix(got, "NAME _ FREE\nROWS\n N OBJ\n L OBJ_2\nCOLUMNS\n") {
		t.Errorf("wrong head of\n%s", got)
	}
	for range 5 {
		if text(t, m) != got {
			t.Fatal("the same model gives another file")
		}
	}
}

// conventions are models on whose reading programs have been seen to differ: the sign of the objective's
// constant, maximising, integers without an upper bound, negative and missing lower bounds, variables in
// no row, an objective without terms.
func conventions() []*Model {
	inf := math.Inf(1)
	constant := New("constant")
	x := constant.Integer("x", 0, 9)
	constant.Row("r", Sum(T(2, x)), AtLeast, 7)
	e := Sum(T(3, x))
	e.Const(25)
	constant.Minimize(e) // 37

	greatest := New("greatest")
	x = greatest.Integer("x", 0, inf)
	y := greatest.Continuous("y", 0, inf)
	greatest.Row("r", Sum(T(2, x), T(3, y)), AtMost, 13)
	e = Sum(T(5, x), T(3, y))
	e.Const(-4)
	greatest.Maximize(e) // 27

	below := New("below zero")
	x = below.Integer("x", math.Inf(-1), -1)
	y = below.Continuous("y", math.Inf(-1), 4)
	z := below.Continuous("z", math.Inf(-1), inf)
	w := below.Integer("w", -7, -7)
	below.Row("r", Sum(T(1, x), T(1, y), T(1, z)), Equal, -3)
	below.Row("s", Sum(T(2, x), T(-1, y)), AtLeast, -11.5)
	below.Row("t", Sum(T(1, z)), AtMost, 2)
	below.Minimize(Sum(T(1, x), T(0.5, y), T(0.25, z), T(1, w)))

	idle := New("idle")
	idle.Minimize(Sum(T(1, idle.Integer("x", 3, 8)), T(-1, idle.Continuous("in no row", 0, 2.5))))
	v := idle.Binary("nowhere at all")
	idle.Row("r", Sum(T(1, v)), AtMost, 1)

	feasible := New("no objective")
	x = feasible.Integer("x", 2, 30)
	feasible.Row("r", Sum(T(7, x)), Equal, 91)

	return []*Model{constant, greatest, below, idle, feasible}
}

// TestMPSConventions asks both rivals for the optimum of files on whose reading programs differ.
func TestMPSConventions(t *testing.T) {
	models := conventions()
	dir := t.TempDir()
	if err := writeModels(dir, models); err != nil {
		t.Fatal(err)
	}
	for program, ask := range map[string]func(context.Context, string, []*Model) ([]rivalAnswer, error){"glpsol": glpsol, "cbc": cbc} {
		if err := have(program); err != nil {
			t.Fatal(err)
		}
		answers, err := ask(t.Context(), dir, models)
		if err != nil {
			t.Fatal(err)
		}
		for i, m := range models {
			s := solved(t, m)
			if want := m.sign() * s.Objective; answers[i].status != Proved || math.Abs(answers[i].objective-want) > 1e-6 {
				t.Errorf("%s, %s: %v %v, we have %v\n%s", program, m.Name(), answers[i].status, answers[i].objective, want, text(t, m))
			}
		}
	}
	if s := solved(t, models[0]); s.Objective != 37 { // 3 * 4 + 25
		t.Errorf("the constant: %v, want 37", s.Objective)
	}
	if s := solved(t, models[1]); s.Objective != 27 { // x 6, y 1/3
		t.Errorf("the greatest: %v, want 27", s.Objective)
	}
}

// shortWriter is a writer that takes only so many bytes.
type shortWriter int

func (f *shortWriter) Write(b []byte) (int, error) {
	if *f -= shortWriter(len(b)); *f < 0 {
		return 0, context.DeadlineExceeded
	}
	return len(b), nil
}

// TestMPSWriteError hands on what the writer says.
func TestMPSWriteError(t *testing.T) {
	f := shortWriter(5000)
	if err := cart(seeded(1), 3).WriteMPS(&f); err != context.DeadlineExceeded {
		t.Errorf("got %v, want the writer's error", err)
	}
}

// TestMPSReadBack: what is written is read back as the same program, to the last bit.
func TestMPSReadBack(t *testing.T) {
	models := conventions()
	for i, sh := range shapes {
		models = append(models, sh.build(seeded(uint64(i)), 2))
	}
	for _, m := range models {
		f, err := mps.Read(strings.NewReader(text(t, m)), "m.mps")
		if want := m.file().Program; err != nil || !reflect.DeepEqual(f.Program, want) {
			t.Errorf("%s: %v\n%+v\n%+v", m.Name(), err, f, want)
		}
	}
}
