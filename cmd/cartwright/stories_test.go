package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"cartwright/scenarios"
)

// The runs in the demos' stories print what the stories show, like those of the README (TestReadme). With
// -update they are rewritten likewise.
func TestStories(t *testing.T) {
	shown := 0
	for _, name := range scenarios.DemoNames() {
		file, err := filepath.Abs(filepath.Join("..", "..", "scenarios", "demos", name, "README.md"))
		if err != nil {
			t.Fatal(err)
		}
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		lines := strings.Split(string(data), "\n")
		var rewritten []string
		for at := 0; at < len(lines); at++ {
			rewritten = append(rewritten, lines[at])
			if lines[at] != "```console" {
				continue
			}
			end := at + 1 + slices.Index(lines[at+1:], "```")
			command, ok := strings.CutPrefix(lines[at+1], "$ cartwright ")
			if !ok {
				t.Fatalf("%s:%d: a console block that does not begin with a command of ours: %s", name, at+2, lines[at+1])
			}
			shown++
			got, want := printed(t, command), lines[at+2:end]
			if err := differs(got, want); err != nil && !*update {
				t.Errorf("%s:%d: cartwright %s: %v\nprinted:\n%s", name, at+2, command, err, strings.Join(got, "\n"))
			}
			next, err := excerpt(got, want)
			if err != nil {
				t.Errorf("%s:%d: %s: %v", name, at+2, command, err)
			}
			rewritten = append(append(rewritten, lines[at+1]), next...)
			at = end - 1
		}
		if *update && !t.Failed() {
			if err := os.WriteFile(file, []byte(strings.Join(rewritten, "\n")), 0o666); err != nil {
				t.Fatal(err)
			}
		}
	}
	if shown == 0 {
		t.Error("no story shows a run")
	}
}
