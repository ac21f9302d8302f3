package main

import (
	"encoding/json"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"

	"cartwright/catalog"
	"cartwright/scenarios"
)

// under returns the README's lines below a heading, down to the next one of any depth.
func under(t *testing.T, heading string) []string {
	t.Helper()
	_, lines := readme(t)
	at := slices.Index(lines, heading)
	if at < 0 {
		t.Fatalf("README.md has no heading %q", heading)
	}
	lines = lines[at+1:]
	if end := slices.IndexFunc(lines, func(line string) bool { return strings.HasPrefix(line, "#") }); end >= 0 {
		lines = lines[:end]
	}
	return lines
}

// rows returns the cells of the tables below a heading, without their heads.
func rows(t *testing.T, heading string) [][]string {
	t.Helper()
	var list [][]string
	lines := under(t, heading)
	for i, line := range lines {
		inner, ok := strings.CutPrefix(line, "| ")
		if !ok || strings.HasPrefix(line, "| -") || i+1 < len(lines) && strings.HasPrefix(lines[i+1], "| -") {
			continue
		}
		var cells []string
		for cell := range strings.SplitSeq(strings.TrimSuffix(inner, " |"), " | ") {
			cells = append(cells, strings.TrimSpace(cell))
		}
		list = append(list, cells)
	}
	return list
}

// The README lists every column of every file as the reader has it: both names, whether it is required,
// what is to be written and what an empty cell stands for.
func TestReadmeColumns(t *testing.T) {
	every, priced := rows(t, "#### In every file"), rows(t, "#### In every file but cables.csv")
	for _, k := range catalog.Kinds() {
		shared := every
		if k != catalog.KindCable {
			shared = slices.Concat(every, priced)
		}
		compareColumns(t, k.File(), slices.Concat(shared, rows(t, "#### "+k.File())), catalog.Columns(k))
	}
	compareColumns(t, catalog.OffersFile, rows(t, "### "+catalog.OffersFile), catalog.OfferColumns())
}

// compareColumns compares rows of the README with the columns of a file.
func compareColumns(t *testing.T, file string, told [][]string, columns []catalog.Column) {
	t.Helper()
	var want, got []string
	for _, c := range columns {
		name := "`" + c.Name + "`"
		if c.US != "" {
			name += " or `" + c.US + "`"
		}
		if c.Required {
			name += " *"
		}
		write, _, _ := strings.Cut(c.Expected, ", for example")
		want = append(want, fmt.Sprintf("%s: %s; if empty %s", name, write, c.Default))
	}
	for _, cells := range told {
		if len(cells) != 4 || cells[3] == "" {
			t.Errorf("%s: a row of the README is not name, value, if empty, meaning: %q", file, cells)
			continue
		}
		got = append(got, fmt.Sprintf("%s: %s; if empty %s", cells[0], cells[1], cells[2]))
	}
	compareSets(t, file, got, want)
}

// compareSets says what only the README has, and what it lacks.
func compareSets(t *testing.T, what string, told, real []string) {
	t.Helper()
	for _, x := range told {
		if !slices.Contains(real, x) {
			t.Errorf("%s: the README tells of what there is not: %s", what, x)
		}
	}
	for _, x := range real {
		if !slices.Contains(told, x) {
			t.Errorf("%s: the README lacks: %s", what, x)
		}
	}
}

// The README lists every key of a scenario: those of the starter, which shows them all, and measured, which
// stands there as a comment, because loads are listed or measured.
func TestReadmeKeys(t *testing.T) {
	data, err := fs.ReadFile(scenarios.Starter(), scenarios.FileName)
	if err != nil {
		t.Fatal(err)
	}
	var starter any
	if err := yaml.Unmarshal(data, &starter); err != nil {
		t.Fatal(err)
	}
	keys := map[string]bool{"measured": true}
	leaves("", starter, keys)
	told := map[string]bool{}
	for _, cells := range rows(t, "### scenario.yaml") {
		key, _, _ := strings.Cut(cells[0], " *")
		told[strings.Trim(key, "`")] = true
	}
	compareSets(t, scenarios.FileName, slices.Sorted(maps.Keys(told)), slices.Sorted(maps.Keys(keys)))
}

// leaves notes the paths of all single values, those in lists without their number.
func leaves(path string, v any, keys map[string]bool) {
	switch v := v.(type) {
	case map[string]any:
		for key, value := range v {
			leaves(strings.TrimPrefix(path+"."+key, "."), value, keys)
		}
	case []any:
		for _, value := range v {
			leaves(path+"[]", value, keys)
		}
	default:
		keys[path] = true
	}
}

// jsonRuns are command lines whose JSON has, all together, every key there is but the rare ones. The folder
// poor is made by the test: a scenario without a plan.
var jsonRuns = []string{
	"plan lantern-market --plans 2", "plan cider-shed --plans 1", "plan poor",
	"audit star-party", "audit cider-shed", "next star-party", "why star-party", "why star-party --part lfp-24-100", "why poor",
	"frontier star-party", "value star-party", "doubt cider-shed --plans 3 --draws 100", "doubt poor",
	"bought cider-shed", "bought star-party --month 0", "parts", "demo", "sources",
}

// rare are keys that only trouble makes: a search cut short, a solver that fails, a catalogue with holes.
var rare = []string{"plan.solver.gap", "plan.solver.retries", "plan.reasons", "value.reasons", "doubt.reasons",
	"plan.changes_unknown", "doubt.changes_unknown",
	"audit.runs[].failed[].unit"}

// The shapes of JSON in the README are those of the real thing: no key is missing, and none is there that no
// run has. In a shape "a plan" and "a brief plan" stand for the shapes of that name.
func TestReadmeJSON(t *testing.T) {
	shapes := map[string]any{}
	var current []string
	for _, line := range under(t, "## JSON") {
		switch {
		case line == "```json":
			current = []string{}
		case line == "```" && current != nil:
			var shape map[string]any
			if err := json.Unmarshal([]byte(strings.Join(current, "\n")), &shape); err != nil {
				t.Fatalf("a shape of the README is no JSON: %v\n%s", err, strings.Join(current, "\n"))
			}
			shapes[shapeName(shape)] = shape
			current = nil
		case current != nil:
			current = append(current, line)
		}
	}
	seen := map[string]bool{}
	t.Chdir(t.TempDir())
	makePoor(t)
	for _, line := range jsonRuns {
		stdout, stderr, _ := execute(line + " --format json")
		var answer map[string]any
		if err := json.Unmarshal([]byte(stdout), &answer); err != nil {
			t.Errorf("%s: %v, %s", line, err, stderr)
			continue
		}
		name := shapeName(answer)
		inShape(t, name, answer, shapes[name], shapes, seen)
	}
	for name, shape := range shapes {
		told := map[string]bool{}
		shapeKeys(name, shape, told)
		for key := range told {
			if !seen[key] && !slices.Contains(rare, key) {
				t.Errorf("no run has the key %s of the README", key)
			}
		}
	}
}

// makePoor makes the folder poor: what cartwright new makes, with a budget that buys nothing.
func makePoor(t *testing.T) {
	t.Helper()
	if _, stderr, code := execute("new poor"); code != 0 {
		t.Fatal(stderr)
	}
	name := filepath.Join("poor", scenarios.FileName)
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	budget := regexp.MustCompile(`(?m)^  budget: \d+`)
	if !budget.Match(data) {
		t.Fatal("the starter has no budget")
	}
	if err := os.WriteFile(name, budget.ReplaceAll(data, []byte("  budget: 1")), 0o666); err != nil {
		t.Fatal(err)
	}
}

// shapeName returns what a JSON object of the README or of an answer is called.
func shapeName(object map[string]any) string {
	command, isCommand := object["command"].(string)
	_, ofPart := object["in_best"]
	_, whole := object["bill"]
	switch {
	case ofPart:
		return command + " --part"
	case isCommand:
		return command
	case whole:
		return "a plan"
	}
	return "a brief plan"
}

// inShape checks that everything in an answer is in its shape, and notes what was there.
func inShape(t *testing.T, path string, answer, shape any, shapes map[string]any, seen map[string]bool) {
	t.Helper()
	if name, ok := shape.(string); ok && shapes[name] != nil {
		path, shape = name, shapes[name]
	}
	switch answer := answer.(type) {
	case map[string]any:
		known, ok := shape.(map[string]any)
		if !ok {
			t.Errorf("%s: the README has no keys there", path)
			return
		}
		for key, value := range answer {
			at := path + "." + key
			if _, ok := known[key]; !ok {
				t.Errorf("the README lacks the key %s", at)
				continue
			}
			seen[at] = true
			inShape(t, at, value, known[key], shapes, seen)
		}
	case []any:
		list, ok := shape.([]any)
		if ok && len(list)+len(answer) == 0 {
			return
		}
		if !ok || len(list) != 1 {
			t.Errorf("%s: the README has no list of one there", path)
			return
		}
		for _, value := range answer {
			inShape(t, path+"[]", value, list[0], shapes, seen)
		}
	}
}

// shapeKeys notes the keys of a shape.
func shapeKeys(path string, shape any, keys map[string]bool) {
	switch shape := shape.(type) {
	case map[string]any:
		for key, value := range shape {
			keys[path+"."+key] = true
			shapeKeys(path+"."+key, value, keys)
		}
	case []any:
		for _, value := range shape {
			shapeKeys(path+"[]", value, keys)
		}
	}
}
