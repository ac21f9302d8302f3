package proof

import (
	"bytes"
	"math/rand/v2"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"cartwright/optimize/milp/lines"
)

var coverNames = Names{Columns: []string{"x", "y", "z"}, Rows: []string{"first", "second"}}

const coverText = `cartwright-proof 1
claim least 4.999999
point 2
x 1
y 1
split y 0
split x 1
impossible 1
first 1
leaf 2
first 0
second 0
split y 1
split x 0
impossible 1
first 1
leaf 2
first 0
second 0
leaf 2
first 0
second 1
end
`

func TestText(t *testing.T) {
	c := &Certificate{Bound: 4.999999, Point: []float64{1, 1, 0}, Tree: coverTree()}
	var b bytes.Buffer
	if err := Write(&b, coverNames, c); err != nil || b.String() != coverText {
		t.Errorf("%v\n%s", err, b.String())
	}
	again, _, err := Read(strings.NewReader("# a comment\n\n"+coverText+"\n# another\n"), "x", coverNames)
	if err != nil || !reflect.DeepEqual(c, again) {
		t.Errorf("%v\n%+v", err, again)
	}
	if err := Check(cover(), again.Tree, again.Bound); err != nil {
		t.Error(err)
	}
}

func TestTextOfRandomTrees(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 5))
	for range 300 {
		b := randomBag(r)
		p := b.program()
		names := Names{Columns: []string{"a", "b", "c", "d"}[:len(p.Cost)], Rows: []string{"weight"}}
		point, value := b.best(p.Lower, p.Upper)
		c := &Certificate{Bound: -value - 0.01, Point: point, Tree: b.prove(p.Lower, p.Upper, value+0.02)}
		if r.IntN(4) == 0 {
			c.Bound, c.Point = inf, nil
		}
		var text bytes.Buffer
		if err := Write(&text, names, c); err != nil {
			t.Fatal(err)
		}
		again, _, err := Read(&text, "x", names)
		if err != nil || !reflect.DeepEqual(c, again) {
			t.Fatalf("%v\n%+v\n%+v", err, c, again)
		}
	}
}

// mistake is what each looks like: where, what is wrong, what would be right.
var mistake = regexp.MustCompile(`^x:[1-9][0-9]*:[1-9][0-9]*: [^;]+; .+$`)

// A wrong line is told with its place.
func TestWrongText(t *testing.T) {
	whole := strings.SplitAfter(strings.TrimSuffix(coverText, "\n"), "\n")
	for _, c := range []struct {
		line int
		text string
		want string
	}{
		{1, "cartwright-proof 2", `x:1:1: the first line is "cartwright-proof 2"; write "cartwright-proof 1"`},
		{2, "claim most 3", `x:2:1: "claim most 3" is no claim; write "claim least" and a number, or "claim impossible"`},
		{2, "claim least NaN", `x:2:13: "NaN" is no finite number; write one, such as 0.25`},
		{2, "claim least", `x:2:1: "claim least" is no claim; write "claim least" and a number, or "claim impossible"`},
		{3, "point 3", `x:6:1: "split y 0" is no name with a number; write as many of them as were said to follow`},
		{3, "point -1", `x:3:7: "-1" is no number of lines; write how many lines with a name and a number follow`},
		{3, "point 1e3", `x:3:7: "1e3" is no number of lines; write how many lines with a name and a number follow`},
		{3, "point", `x:3:6: "point" does not say just how many lines follow; write how many lines with a name and a number follow`},
		{4, "w 1", `x:4:1: the program has no "w"; write a name that it has, of a row in a leaf, else of a variable`},
		{4, "x 1e999", `x:4:3: "1e999" is no finite number; write one, such as 0.25`},
		{6, "split y 0.5", `x:6:9: "0.5" is no whole number of 64 bits; write one, such as 3`},
		{6, "split first 0", `x:6:7: the program has no "first"; write a name that it has, of a row in a leaf, else of a variable`},
		{6, "splits y 0", `x:6:1: "splits y 0" is no split and no leaf; write "split" with a variable and a number, or "leaf" or "impossible" with how many lines follow`},
		{9, "x 1", `x:9:1: the program has no "x"; write a name that it has, of a row in a leaf, else of a variable`},
		{9, "first one", `x:9:7: "one" is no finite number; write one, such as 0.25`},
		{23, "leaf 0", `x:23:1: "leaf" after the last leaf; write "end"`},
		{23, "# end", "the certificate ends here"},
		{23, "end\nagain", `x:24:1: "again" after the end; take it out`},
	} {
		changed := append([]string(nil), whole...)
		changed[c.line-1] = c.text + "\n"
		_, _, err := Read(strings.NewReader(strings.Join(changed, "")), "x", coverNames)
		if err == nil || !strings.Contains(err.Error(), c.want) || !mistake.MatchString(err.Error()) {
			t.Errorf("%q: %v; want %s", c.text, err, c.want)
		}
	}
	for n := range whole {
		if _, _, err := Read(strings.NewReader(strings.Join(whole[:n], "")), "x", coverNames); err == nil {
			t.Errorf("the first %d lines were taken for a certificate", n)
		}
	}
	twice := Names{Columns: []string{"x", "y", "x"}, Rows: coverNames.Rows}
	if _, _, err := Read(strings.NewReader(coverText), "x", twice); err == nil || !strings.Contains(err.Error(), `several "x"`) {
		t.Error(err)
	}
	if _, _, err := Read(strings.NewReader(coverText[:30]+strings.Repeat("x", lines.LongestLine+1)), "x", coverNames); err == nil {
		t.Error("a line without end was taken")
	}
}

// FuzzRead: nothing panics; what is read is written and read back the same; and no certificate, whatever it says,
// is passed for less than the best point costs.
func FuzzRead(f *testing.F) {
	f.Add(coverText)
	f.Add("cartwright-proof 1\nclaim impossible\nimpossible 1\nfirst 1\nend\n")
	f.Add("cartwright-proof 1\nclaim least 5\nsplit z 1\nleaf 0\nleaf 0\nend\n")
	f.Add("cartwright-proof 1\nclaim least -1e300\npoint 0\nsplit x -9223372036854775808\nleaf 0\nleaf 1\nfirst 1e-300\nend\n")
	f.Fuzz(func(t *testing.T, text string) {
		c, _, err := Read(strings.NewReader(text), "x", coverNames)
		if err != nil {
			return
		}
		if Check(cover(), c.Tree, c.Bound) == nil && c.Bound > 5 {
			t.Fatalf("passed for %v", c.Bound)
		}
		var b bytes.Buffer
		if err := Write(&b, coverNames, c); err != nil {
			t.Fatal(err)
		}
		again, _, err := Read(&b, "x", coverNames)
		if err != nil {
			t.Fatal(err)
		}
		if !reflect.DeepEqual(c, again) {
			t.Fatalf("read back as something else\n%+v\n%+v", c, again)
		}
	})
}
