package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// A newcomer comes from a clone to a first plan of a cart of their own, with a battery, a load and hours of their own, in
// at most ten typed lines.
func TestNewcomer(t *testing.T) {
	_, readme := read(t, "../../README.md")
	start := slices.Index(readme, "```sh")
	end := start + slices.Index(readme[start:], "```")
	typed := append([]string{"git clone <this repository>", "cd cartwright"}, readme[start+1:end]...)

	t.Chdir(t.TempDir())
	run := func(command string) string {
		typed = append(typed, "cartwright "+command)
		stdout, stderr, code := execute(command)
		if code != 0 {
			t.Fatalf("cartwright %s: %s", command, stderr)
		}
		return stdout
	}
	line := func(file, after, text string) {
		typed = append(typed, text)
		name := filepath.Join("my-cart", file)
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		lines := strings.Split(string(data), "\n")
		at := slices.IndexFunc(lines, func(l string) bool { return strings.HasPrefix(l, after) })
		if at < 0 {
			t.Fatalf("%s has no line that begins with %q", file, after)
		}
		if key, _, _ := strings.Cut(text, " "); key != "" && strings.HasPrefix(lines[at], key) { // written over
			lines[at] = text
		} else {
			lines = slices.Insert(lines, at+1, text)
		}
		if err := os.WriteFile(name, []byte(strings.Join(lines, "\n")), 0o666); err != nil {
			t.Fatal(err)
		}
	}

	run("new my-cart")
	line("parts/batteries.csv", "id,", "brick-4,Brick of mine,0,,,40,,,LFP,,51.2,44.8,58.4,4.1,0.9,,100,,50,25,,,,,,,,,,450,420,130,")
	line("scenario.yaml", "have:", "  - {part: brick-4, count: 2}")
	line("scenario.yaml", "loads:", "  - {name: pottery wheel, watts: 370 W, from: \"09:00\", to: \"12:00\", start: 3}")
	line("scenario.yaml", "autonomy:", "autonomy: 14 h")
	plan := run("plan my-cart")

	for _, want := range []string{"Buy ", "brick-4"} {
		if !strings.Contains(plan, want) {
			t.Errorf("the plan does not have %q:\n%s", want, plan)
		}
	}
	if len(typed) > 10 {
		t.Errorf("%d lines are typed, at most 10:\n%s", len(typed), strings.Join(typed, "\n"))
	}
}
