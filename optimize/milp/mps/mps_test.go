package mps

import (
	"bytes"
	"math"
	"reflect"
	"strings"
	"testing"

	"cartwright/optimize/milp/proof"
)

var inf = math.Inf(1)

// every has one of each kind of row and bound.
func every() *File {
	return &File{Name: "every", Comments: []string{"maximise: negated", "more"},
		Names: proof.Names{Columns: []string{"a", "b", "c", "d", "e", Constant}, Rows: []string{"most", "least", "same", "empty"}},
		Program: proof.Program{
			Cost:    []float64{1.5, 0, -2e-7, 0, 0.1, 25},
			Lower:   []float64{0, -inf, -inf, 3, -2, 1},
			Upper:   []float64{inf, inf, 7, 3, inf, 1},
			Integer: []bool{false, false, true, true, true, false},
			Rows: []proof.Row{
				{Cols: []int{0, 2}, Coefs: []float64{1, -1.0 / 3}, Lower: -inf, Upper: 5},
				{Cols: []int{1, 4}, Coefs: []float64{1e15, 2}, Lower: -4, Upper: inf},
				{Cols: []int{0, 1, 4}, Coefs: []float64{1, 1, 1}, Lower: 0, Upper: 0},
				{Lower: -inf, Upper: 1},
			},
		}}
}

const everyText = `* maximise: negated
* more
NAME every FREE
ROWS
 N OBJ
 L most
 G least
 E same
 L empty
COLUMNS
 a OBJ 1.5
 a most 1
 a same 1
 b least 1e+15
 b same 1
 M0 'MARKER' 'INTORG'
 c OBJ -2e-07
 c most -0.3333333333333333
 d OBJ 0
 e OBJ 0.1
 e least 2
 e same 1
 M1 'MARKER' 'INTEND'
 CONSTANT OBJ 25
RHS
 RHS most 5
 RHS least -4
 RHS empty 1
BOUNDS
 FR BND b
 MI BND c
 UP BND c 7
 FX BND d 3
 LO BND e -2
 PL BND e
 FX BND CONSTANT 1
ENDATA
`

func TestWriteAndRead(t *testing.T) {
	var b bytes.Buffer
	if err := Write(&b, every()); err != nil || b.String() != everyText {
		t.Errorf("%v\n%s", err, b.String())
	}
	f, err := Read(strings.NewReader(everyText))
	if err != nil || !reflect.DeepEqual(f, every()) {
		t.Errorf("%v\n%+v\n%+v", err, f, every())
	}
}

func TestTwoSidesAreRefused(t *testing.T) {
	f := every()
	f.Program.Rows[0].Lower = 1
	if err := Write(new(bytes.Buffer), f); err == nil || !strings.Contains(err.Error(), `row "most"`) {
		t.Error(err)
	}
}

// A wrong line is told with its number.
func TestWrongLines(t *testing.T) {
	lines := strings.SplitAfter(everyText, "\n")
	for _, c := range []struct {
		line int
		text string
		want string
	}{
		{3, "ROWS", "line 3: section ROWS after section "},
		{4, "COLUMNS", "line 4: section COLUMNS after section NAME"},
		{4, " x", `line 4: "x" outside of a section`},
		{5, " X OBJ", "line 5: \"X OBJ\"; want N, L, G or E"},
		{6, " N more", "line 6: the objective is named"},
		{7, " G most", `line 7: a second row "most"`},
		{11, " a", "line 11: 1 words"},
		{11, " a nowhere 1", `line 11: there is no row "nowhere"`},
		{11, " a most 1\n a most 2", "line 12: a second coefficient"},
		{11, " a OBJ 1\n a OBJ 2", "line 12: a second cost"},
		{11, " a OBJ x", `line 11: "x" is no finite number`},
		{14, " c most 1", `line 17: column "c" goes on after another`},
		{16, " M0 'MARKER' 'INTEND'", "line 16: marker 'INTEND' out of turn"},
		{16, " M0 'MARKER' 'OTHER'", "out of turn"},
		{26, " RHS most", "line 26: 2 words"},
		{26, " RHS OBJ 3", `line 26: "OBJ" is no row with a right-hand side`},
		{27, " RHS most 6", `line 27: a second right-hand side`},
		{26, " RHS most Inf", "no finite number"},
		{30, " FR BND", "line 30: 2 words"},
		{30, " FR BND z", `line 30: there is no column "z"`},
		{30, " FR BND b 1", "line 30: 4 words for a bound of kind FR"},
		{30, " BV BND b", `line 30: a bound of kind "BV"`},
		{30, " UP BND b -1", "line 30: an upper bound of -1"},
		{31, " UP BND c 8", "line 32: a second bound"},
		{34, " PL BND e", "a second bound"},
		{35, "* nothing", `the integer "e" lacks a bound`},
		{5, " N COST", `line 5: the objective is named "COST"; want OBJ`},
		{6, " L 1st", `line 6: the name "1st"`},
		{11, " a/b most 1", `line 11: the name "a/b"`},
		{37, "* no end", "want ENDATA"},
		{37, " UP BND a NaN\nENDATA", "no finite number"},
	} {
		changed := append([]string(nil), lines...)
		changed[c.line-1] = c.text + "\n"
		_, err := Read(strings.NewReader(strings.Join(changed, "")))
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: %v; want %s", c.text, err, c.want)
		}
	}
	if _, err := Read(strings.NewReader(strings.Repeat("x", longestLine+1))); err == nil {
		t.Error("a line without end was taken")
	}
}

// FuzzRead: nothing panics, and what is read is written and read back the same.
func FuzzRead(f *testing.F) {
	f.Add(everyText)
	f.Add("NAME\nROWS\n N c\n E r\nCOLUMNS\n x r 1\nRHS\nBOUNDS\nENDATA\n")
	f.Fuzz(func(t *testing.T, text string) {
		file, err := Read(strings.NewReader(text))
		if err != nil {
			return
		}
		var b bytes.Buffer
		if err := Write(&b, file); err != nil {
			t.Fatalf("%v\n%+v", err, file)
		}
		again, err := Read(&b)
		if err != nil {
			t.Fatalf("%v\n%s", err, b.String())
		}
		if !reflect.DeepEqual(file.Program, again.Program) || !reflect.DeepEqual(file.Names.Columns, again.Names.Columns) {
			t.Fatalf("read back as something else\n%+v\n%+v", file, again)
		}
	})
}
