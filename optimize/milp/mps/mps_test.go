package mps

import (
	"bytes"
	"math"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"cartwright/optimize/milp/lines"
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
	f, err := Read(strings.NewReader(everyText), "x.mps")
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

// mistake is what each looks like: where, what is wrong, what would be right.
var mistake = regexp.MustCompile(`^x\.mps:[1-9][0-9]*:[1-9][0-9]*: [^;]+; .+$`)

// A wrong line is told with its place.
func TestWrongLines(t *testing.T) {
	whole := strings.SplitAfter(everyText, "\n")
	for _, c := range []struct {
		line int
		text string
		want string
	}{
		{3, "ROWS", `x.mps:3:1: "ROWS" where the section NAME has to begin; write NAME, ROWS, COLUMNS, RHS, BOUNDS, ENDATA in this order`},
		{4, "COLUMNS", `x.mps:4:1: "COLUMNS" where the section ROWS has to begin; write NAME,`},
		{4, " x", `x.mps:4:2: "x" outside of a section; begin a section first`},
		{5, " X OBJ", `x.mps:5:2: "X OBJ" is no row; write N, L, G or E and a name`},
		{6, " N more", `x.mps:6:4: the objective is named "more"; write OBJ, once`},
		{7, " G most", `x.mps:7:4: a second row "most"; give each a name of its own`},
		{11, " a", `x.mps:11:3: 1 words; write a column, a row and a number`},
		{11, " a nowhere 1", `x.mps:11:4: there is no row "nowhere"; name one of the section ROWS`},
		{11, " a most 1\n a most 2", `x.mps:12:4: a second coefficient of "a" in "most"; take one out`},
		{11, " a OBJ 1\n a OBJ 2", `x.mps:12:2: a second cost of "a"; take one out`},
		{11, " a OBJ x", `x.mps:11:8: "x" is no finite number; write one, such as 0.25`},
		{14, " c most 1", `x.mps:17:2: column "c" goes on after another; put its lines together`},
		{16, " M0 'MARKER' 'INTEND'", `x.mps:16:14: marker 'INTEND' out of turn; 'INTORG' begins integers, 'INTEND' ends them`},
		{16, " M0 'MARKER' 'OTHER'", "out of turn"},
		{26, " RHS most", `x.mps:26:10: 2 words; write a name, a row and a number`},
		{26, " RHS OBJ 3", `x.mps:26:6: "OBJ" is no row with a right-hand side; name a row of kind L, G or E`},
		{27, " RHS most 6", `x.mps:27:6: a second right-hand side of "most"; take one out`},
		{26, " RHS most Inf", "no finite number"},
		{30, " FR BND", `x.mps:30:8: 2 words; write a kind of bound, a name and a column`},
		{30, " FR BND z", `x.mps:30:9: there is no column "z"; name one of the section COLUMNS`},
		{30, " FR BND b 1", `x.mps:30:11: 4 words for a bound of kind FR; LO, UP and FX have a number, the others have none`},
		{30, " BV BND b", `x.mps:30:2: a bound of kind "BV"; write LO, UP, FX, MI, PL or FR`},
		{30, " UP BND b -1", `x.mps:30:11: an upper bound of -1 for "b", of which readers make different lower bounds; write a lower bound first`},
		{31, " UP BND c 8", `x.mps:32:9: a second bound of "c"; take one out`},
		{34, " PL BND e", "a second bound"},
		{35, "* nothing", `the integer "e" lacks a bound`},
		{5, " N COST", `x.mps:5:4: the objective is named "COST"; write OBJ, once`},
		{6, " L 1st", `x.mps:6:4: the name "1st"; write such as "_1st"`},
		{11, " a/b most 1", `x.mps:11:2: the name "a/b"; write such as "a_b"`},
		{37, "* no end", `x.mps:37:9: the program ends here; its last line is ENDATA`},
		{37, " UP BND a NaN\nENDATA", "no finite number"},
	} {
		changed := append([]string(nil), whole...)
		changed[c.line-1] = c.text + "\n"
		_, err := Read(strings.NewReader(strings.Join(changed, "")), "x.mps")
		if err == nil || !strings.Contains(err.Error(), c.want) || !mistake.MatchString(err.Error()) {
			t.Errorf("%q: %v; want %s", c.text, err, c.want)
		}
	}
	if _, err := Read(strings.NewReader(strings.Repeat("x", lines.LongestLine+1)), "x.mps"); err == nil {
		t.Error("a line without end was taken")
	}
}

// FuzzRead: nothing panics, and what is read is written and read back the same.
func FuzzRead(f *testing.F) {
	f.Add(everyText)
	f.Add("NAME\nROWS\n N c\n E r\nCOLUMNS\n x r 1\nRHS\nBOUNDS\nENDATA\n")
	f.Fuzz(func(t *testing.T, text string) {
		file, err := Read(strings.NewReader(text), "x.mps")
		if err != nil {
			return
		}
		var b bytes.Buffer
		if err := Write(&b, file); err != nil {
			t.Fatalf("%v\n%+v", err, file)
		}
		again, err := Read(&b, "x.mps")
		if err != nil {
			t.Fatalf("%v\n%s", err, b.String())
		}
		if !reflect.DeepEqual(file.Program, again.Program) || !reflect.DeepEqual(file.Names.Columns, again.Names.Columns) {
			t.Fatalf("read back as something else\n%+v\n%+v", file, again)
		}
	})
}
