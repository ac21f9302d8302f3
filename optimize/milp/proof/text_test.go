package proof

import (
	"bytes"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"
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
	again, err := Read(strings.NewReader("# a comment\n\n"+coverText+"\n# another\n"), coverNames)
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
		again, err := Read(&text, names)
		if err != nil || !reflect.DeepEqual(c, again) {
			t.Fatalf("%v\n%+v\n%+v", err, c, again)
		}
	}
}

// A wrong line is told with its number.
func TestWrongText(t *testing.T) {
	lines := strings.SplitAfter(strings.TrimSuffix(coverText, "\n"), "\n")
	for _, c := range []struct {
		line int
		text string
		want string
	}{
		{1, "cartwright-proof 2", "line 1: the first line"},
		{2, "claim most 3", `line 2: "claim most 3"; want "claim least"`},
		{2, "claim least NaN", `line 2: "NaN" is no finite number`},
		{2, "claim least", "line 2"},
		{3, "point 3", `line 6: "split y 0"; want a name and a number`},
		{3, "point -1", `line 3: "-1" is no number of lines`},
		{3, "point 1e3", `line 3: "1e3" is no number of lines`},
		{3, "point", "line 3"},
		{4, "w 1", `line 4: the program has no "w"`},
		{4, "x 1e999", `line 4: "1e999" is no finite number`},
		{6, "split y 0.5", `line 6: "0.5" is no whole number`},
		{6, "split first 0", `line 6: the program has no "first"`},
		{6, "splits y 0", `line 6: "splits y 0"; want "split"`},
		{9, "x 1", `line 9: the program has no "x"`},
		{9, "first one", `line 9: "one" is no finite number`},
		{23, "leaf 0", `line 23: "leaf" after the last leaf; want "end"`},
		{23, "# end", "the certificate ends here"},
		{23, "end\nagain", `line 24: "again" after the end`},
	} {
		changed := append([]string(nil), lines...)
		changed[c.line-1] = c.text + "\n"
		_, err := Read(strings.NewReader(strings.Join(changed, "")), coverNames)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: %v; want %s", c.text, err, c.want)
		}
	}
	for n := range lines {
		if _, err := Read(strings.NewReader(strings.Join(lines[:n], "")), coverNames); err == nil {
			t.Errorf("the first %d lines were taken for a certificate", n)
		}
	}
	twice := Names{Columns: []string{"x", "y", "x"}, Rows: coverNames.Rows}
	if _, err := Read(strings.NewReader(coverText), twice); err == nil || !strings.Contains(err.Error(), `several "x"`) {
		t.Error(err)
	}
	if _, err := Read(strings.NewReader(coverText[:30]+strings.Repeat("x", longestLine+1)), coverNames); err == nil {
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
		c, err := Read(strings.NewReader(text), coverNames)
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
		again, err := Read(&b, coverNames)
		if err != nil {
			t.Fatal(err)
		}
		if !reflect.DeepEqual(c, again) {
			t.Fatalf("read back as something else\n%+v\n%+v", c, again)
		}
	})
}
