package scenarios

import (
	"strings"
	"testing"

	"cartwright/catalog/problem"
)

// spans calls f with every single value of a tree.
func spans(n *node, f func(*node)) {
	switch n.kind {
	case isMapping:
		for _, e := range n.keys {
			spans(e.value, f)
		}
	case isList:
		for _, item := range n.items {
			spans(item, f)
		}
	case isText, isNumber, isTruth:
		if n.source != "" { // block text has none
			f(n)
		}
	}
}

// A value can be found again in the file by its place and source: that is what an edit in place needs.
func TestSourceStandsAtItsPlace(t *testing.T) {
	texts := map[string]string{
		"mixed": "name: \"Zoë’s \\\"cart\\\"\" # why\nl: ['it''s', é: 1, {ü: true,  b:   -2.5e3 }]\nz: 5   \ny: yes \t\nd:\n  - part: 2-x # c\n    count: 3 ft\n  -   count: .5\n",
	}
	for _, name := range DemoNames() {
		data, err := demoFiles.ReadFile("demos/" + name + "/" + FileName)
		if err != nil {
			t.Fatal(err)
		}
		texts[name] = string(data)
	}
	for name, text := range texts {
		t.Run(name, func(t *testing.T) {
			var list problem.List
			root := parseTree([]byte(text), "f", &list)
			if root == nil {
				t.Fatal(list.Err())
			}
			lines, count := strings.Split(text, "\n"), 0
			spans(root, func(n *node) {
				count++
				line := lines[n.pos.Line-1]
				if !strings.HasPrefix(line[n.pos.Column-1:], n.source) {
					t.Errorf("%v: %q does not begin with %q", n.pos, line[n.pos.Column-1:], n.source)
				}
			})
			if count < 8 {
				t.Errorf("only %d values", count)
			}
		})
	}
}

func TestKinds(t *testing.T) {
	for _, tt := range []struct {
		yaml  string
		kind  kind
		value string
	}{
		{"a: 1", isNumber, "1"},
		{"a: -1.5e3", isNumber, "-1.5e3"},
		{"a: .inf", isNumber, ".inf"},
		{"a: true", isTruth, "true"},
		{"a: yes", isText, "yes"},
		{"a: '1'", isText, "1"},
		{"a: 22:00", isText, "22:00"},
		{"a: 2026-08-14", isText, "2026-08-14"},
		{"a: 450 lb", isText, "450 lb"},
		{"a: 2 %", isText, "2 %"},
		{"a: |\n  b\n  c\n", isText, "b\nc\n"},
		{"a: b\n  c", isText, "b c"},
		{"a:", isEmpty, ""},
		{"a: ~", isEmpty, ""},
		{"a: null # none", isEmpty, ""},
		{"a: []", isList, ""},
		{"a: {}", isMapping, ""},
		{"a:\n  b: 1", isMapping, ""},
		{"a:\n  # why\n  - 1", isList, ""},
	} {
		var list problem.List
		root := parseTree([]byte(tt.yaml), "f", &list)
		if root == nil || root.kind != isMapping || len(root.keys) != 1 {
			t.Errorf("%q: %v, %v", tt.yaml, root, list.Err())
			continue
		}
		if got := root.keys[0].value; got.kind != tt.kind || got.value != tt.value {
			t.Errorf("%q: %v %q, want %v %q", tt.yaml, got.kind, got.value, tt.kind, tt.value)
		}
	}
}

func FuzzTree(f *testing.F) {
	for _, seed := range []string{"a: 1\nb: [x, {c: d}]\n", "? a\n: b", "a: &x 1\nb: *x", "a: |\n x\n", "- - a\n- b:\n", "'a\"", "a: \"\\x", "%YAML 1.2\n---\na", "a: !!b\n...", "\u00e9: \u00e9"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		var list problem.List
		if !checkText([]byte(text), "f", &list) {
			return
		}
		root := parseTree([]byte(text), "f", &list)
		if root == nil && list.Len() == 0 {
			t.Fatalf("%q gives neither a tree nor a mistake", text)
		}
		if root == nil {
			return
		}
		lines := strings.Split(strings.ReplaceAll(text, "\r\n", "\n"), "\n")
		spans(root, func(n *node) {
			if n.pos.Line == 0 || n.pos.Line > len(lines) || n.pos.Column < 1 || n.pos.Column > len(lines[n.pos.Line-1])+1 {
				t.Fatalf("%q has a value at %v, outside the text", text, n.pos)
			}
		})
	})
}
