package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"cartwright/scenarios"
)

// under returns a text's lines below a heading, down to the next one of any depth.
func under(t *testing.T, text, heading string) []string {
	t.Helper()
	_, lines := read(t, text)
	at := slices.Index(lines, heading)
	if at < 0 {
		t.Fatalf("%s has no heading %q", text, heading)
	}
	lines = lines[at+1:]
	if end := slices.IndexFunc(lines, func(line string) bool { return strings.HasPrefix(line, "#") }); end >= 0 {
		lines = lines[:end]
	}
	return lines
}

// jsonRuns are command lines whose JSON has, all together, every key there is but the rare ones. The folder
// poor is made by the test: a scenario without a plan.
var jsonRuns = []string{
	"plan lantern-market --plans 2", "plan cider-shed --plans 1", "plan poor",
	"audit star-party", "audit cider-shed", "next star-party", "compare star-party --buy 1xlfp-24-50",
	"compare poor --buy 1xlfp-rack-2", "compare star-party cider-shed", "why star-party", "why star-party --part lfp-24-100", "why poor",
	"frontier star-party", "value star-party", "doubt cider-shed --plans 3 --draws 100", "doubt poor",
	"bought cider-shed", "bought star-party --month 0", "bought star-party --part lfp-24-50 --paid 300", "parts", "demo", "sources",
}

// rare are keys that only trouble makes: a search cut short, a solver that fails, a catalogue with holes.
var rare = []string{"plan.solver.gap", "plan.solver.retries", "plan.reasons", "value.reasons", "doubt.reasons",
	"plan.changes_unknown", "doubt.changes_unknown",
	"a run.failed[].unit", "audit.notes", "why --part.reasons"}

// The shapes of JSON in the README are those of the real thing: no key is missing, and none is there that no
// run has. In a shape "a plan", "a brief
// plan", "a core" and "a run" stand for the shapes of that name.
func TestReadmeJSON(t *testing.T) {
	shapes, answers := map[string]any{}, map[string][]byte{}
	var current []string
	for _, line := range under(t, "README.md", "## JSON") {
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
	goldens, err := filepath.Glob(filepath.Join("view", "testdata", "*.json"))
	if err != nil || len(goldens) == 0 {
		t.Fatalf("no answers of view: %v", err)
	}
	for _, name := range goldens {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		answers[name] = data
	}
	t.Chdir(t.TempDir())
	makePoor(t)
	for _, line := range jsonRuns {
		stdout, _, _ := execute(line + " --format json")
		answers[line] = []byte(stdout)
	}
	for line, text := range answers {
		var answer map[string]any
		if err := json.Unmarshal(text, &answer); err != nil {
			t.Errorf("%s: %v", line, err)
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
	_, core := object["inverter"]
	_, run := object["run"]
	switch {
	case ofPart:
		return command + " --part"
	case isCommand:
		return command
	case whole:
		return "a plan"
	case core:
		return "a core"
	case run:
		return "a run"
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
