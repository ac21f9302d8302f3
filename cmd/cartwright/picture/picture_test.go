package picture

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cartwright/catalog"
	"cartwright/cmd/cartwright/picture/scene"
	"cartwright/cmd/cartwright/picture/told"
	"cartwright/optimize"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

var update = flag.Bool("update", false, "rank the demos anew and rewrite their plans in testdata")

// demo returns a demo with two plans, as they were ranked for it once.
func demo(t testing.TB, name string) (*Subject, []plan.Plan) {
	t.Helper()
	s, err := scenarios.Demo(name)
	if err != nil {
		t.Fatal(err)
	}
	c, file := catalog.Embedded(), filepath.Join("testdata", name+".json")
	if *update {
		rewrite(t, s, c, file)
	}
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var plans []plan.Plan
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields() // a plan of another shape would be drawn without saying so
	if err := d.Decode(&plans); err != nil {
		t.Fatalf("%s: %v; rewrite it with -update", file, err)
	}
	return &Subject{Scenario: s, Catalog: c, Plan: &plans[0], Units: told.UnitsOf(s)}, plans
}

// rewrite ranks a demo and writes its plans into a file, a line each and without their audits.
func rewrite(t testing.TB, s *scenarios.Scenario, c *catalog.Catalog, file string) {
	t.Helper()
	r, err := optimize.Rank(t.Context(), question.Problem{Scenario: s, Catalog: c}, question.Options{Plans: 2})
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	b.WriteString("[\n")
	for i, p := range r.Plans {
		p.Audit = plan.Audit{}
		line, err := json.Marshal(p)
		if err != nil {
			t.Fatal(err)
		}
		if i > 0 {
			b.WriteString(",\n")
		}
		b.Write(line)
	}
	b.WriteString("\n]\n")
	if err := os.WriteFile(file, b.Bytes(), 0o666); err != nil {
		t.Fatal(err)
	}
}

// drawings returns all drawings of a subject by name.
func drawings(t testing.TB, q *Subject, plans []plan.Plan) map[string]*scene.Scene {
	t.Helper()
	day, err := Day(q)
	if err != nil {
		t.Fatal(err)
	}
	trade := &Tradeoff{Title: "trade-off", XName: "autonomy, h", YName: "cost"}
	for i := range plans {
		trade.Points = append(trade.Points, Point{At: float64(i), Cost: plans[i].Cost.Units(), Name: Names(&plans[i]), Knee: i == 1})
	}
	all := map[string]*scene.Scene{
		"cart": Cart(q), "wiring": Wiring(q), "day": day,
		"costs": Costs(q.Scenario.Name, q.Scenario.Currency, plans, trade),
	}
	for _, s := range Sheets(q) {
		all["sheet: "+s.Title] = s
	}
	return all
}

// judge is what a test and a property test have in common.
type judge interface {
	Errorf(format string, args ...any)
}

// legible fails where a text stands on another one or beyond the edge.
func legible(t judge, name string, s *scene.Scene) {
	sheet := scene.Box{W: s.W, H: s.H}
	boxes := make([]scene.Box, len(s.Texts))
	for i, text := range s.Texts {
		boxes[i] = text.Box()
		if !sheet.Holds(boxes[i]) {
			t.Errorf("%s: %q at %+v is beyond the sheet of %g x %g", name, text.Words, boxes[i], s.W, s.H)
		}
		for k, other := range boxes[:i] {
			if other.Overlaps(boxes[i]) {
				t.Errorf("%s: %q at %+v and %q at %+v overlap", name, s.Texts[k].Words, other, text.Words, boxes[i])
			}
		}
	}
}

func TestTextsOfTheDemosDoNotOverlap(t *testing.T) {
	for _, name := range scenarios.DemoNames() {
		q, plans := demo(t, name)
		for i := range plans {
			q.Plan = &plans[i]
			for what, s := range drawings(t, q, plans) {
				legible(t, name+", "+what, s)
			}
		}
	}
}

func TestTheSameSubjectIsDrawnInTheSameBytes(t *testing.T) {
	q, plans := demo(t, "cider-shed")
	first := drawings(t, q, plans)
	for name, again := range drawings(t, q, plans) {
		if string(again.SVG()) != string(first[name].SVG()) {
			t.Errorf("%s differs from one time to the next", name)
		}
	}
}

// No line of a diagram runs through what is written beside it.
func TestNoLineOfADiagramRunsThroughWords(t *testing.T) {
	for _, name := range scenarios.DemoNames() {
		q, plans := demo(t, name)
		for i := range plans {
			q.Plan = &plans[i]
			for what, s := range drawings(t, q, plans) {
				if what == "wiring" || strings.HasPrefix(what, "sheet: ") {
					unstruck(t, name+", "+what, s)
				}
			}
		}
	}
}

// unstruck fails where a line runs through words. A stroke that counts conductors is no longer than a letter.
func unstruck(t judge, name string, s *scene.Scene) {
	for _, text := range s.Texts {
		for _, m := range s.Paths {
			if line, ok := m.(scene.Path); ok && !line.Closed && line.Pen.Width > 0 && line.Passes(text.Box().Grow(-1)) {
				t.Errorf("%s: the line %v runs through %q at %+v", name, line.Points, text.Words, text.Box())
			}
		}
	}
}
