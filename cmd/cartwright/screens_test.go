package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"cartwright/scenarios"
)

// screenWidths are a narrow terminal, the usual one and a wide one.
var screenWidths = []int{60, 80, 160}

// oneScreen is a command whose screen is kept. Package view keeps those of the answers.
type oneScreen struct{ name, command string }

// keptScreens returns what is told beside the answers, in the order in which it is asked: later commands read the
// files of those before them.
func keptScreens(t *testing.T) []oneScreen {
	list := []oneScreen{{"cartwright", ""}, {"version", "--version"}, {"help-help", "help help"}, {"help-completion", "help completion"}}
	for _, name := range append(commands(t), "catalog", "scenario", "json") {
		list = append(list, oneScreen{"help-" + name, "help " + name})
	}
	for _, name := range scenarios.DemoNames() {
		list = append(list, oneScreen{"demo-" + name, "demo " + name})
	}
	return append(list,
		oneScreen{"new", "new my-cart"},
		oneScreen{"new-xlsx", "new our-cart --rules iec --xlsx"},
		oneScreen{"bought", "bought my-cart --part lfp-rack-2 --count 1 --paid 1380 --write"},
		oneScreen{"draw-cart", "draw star-party --what cart --out cart.svg"},
		oneScreen{"draw-again", "draw star-party --what wiring --out cart.svg"},
		oneScreen{"report", "report star-party --out star-party.html --as-of " + readmeDay},
		oneScreen{"model", "model star-party --out star-party.mps"},
		oneScreen{"model-proofs", "model star-party --proofs proofs"},
		oneScreen{"model-check", "model --check proofs"},
	)
}

// What differs from one machine or one build to the next, and what stands for it.
var machines = []struct {
	differs *regexp.Regexp
	instead string
}{
	{regexp.MustCompile(`(?m)^cartwright version .*`), "cartwright version ..."},
	{regexp.MustCompile(`(?ms)^engine: lp_solve .*`), "engine: lp_solve ...\n"},
	{regexp.MustCompile(`within\s+\S+`), "within ..."},
}

// TestScreens compares what commands tell beside their answers, standard output and then standard error, with
// testdata/screens, a folder for each width. With -update it is rewritten.
func TestScreens(t *testing.T) {
	t.Setenv("CARTWRIGHT_ENGINE", "")
	list := keptScreens(t)
	for _, width := range screenWidths {
		t.Chdir(t.TempDir())
		for _, s := range list {
			stdout, stderr, code := execute(s.command + " --width " + strconv.Itoa(width))
			if code != 0 {
				t.Fatalf("%s: exit status %d: %s", s.command, code, stderr)
			}
			for i, line := range strings.Split(stdout, "\n") {
				if n := utf8.RuneCountInString(line); n > width {
					t.Errorf("%s at %d: line %d has %d columns: %q", s.name, width, i+1, n, line)
				}
				if strings.TrimRight(line, " ") != line {
					t.Errorf("%s at %d: line %d ends in spaces: %q", s.name, width, i+1, line)
				}
			}
			got := stdout + stderr
			for _, m := range machines {
				got = m.differs.ReplaceAllString(got, m.instead)
			}
			sameScreen(t, filepath.Join(here, "testdata", "screens", strconv.Itoa(width), s.name+".txt"), got)
		}
	}
}

// sameScreen compares a screen with a file, or rewrites the file.
func sameScreen(t *testing.T, file, got string) {
	t.Helper()
	if *update {
		if err := os.MkdirAll(filepath.Dir(file), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(got), 0o666); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s differs; run with -update and read the change. Got:\n%s", file, got)
	}
}

// A manual on a screen has every word of its source, whatever the width, and no line of it is wider.
func TestManualsLoseNothing(t *testing.T) {
	for topic, file := range map[string]string{
		"catalog": "../../catalog/README.md", "scenario": "../../scenarios/README.md",
		"json": "README.md", "model": "../../optimize/README.md",
	} {
		source, err := os.ReadFile(filepath.Join(here, filepath.FromSlash(file)))
		if err != nil {
			t.Fatal(err)
		}
		want := letters(unshown.ReplaceAllString(string(source), ""))
		for width := 40; width <= 200; width += 20 {
			stdout, stderr, code := execute("help " + topic + " --width " + strconv.Itoa(width))
			if code != 0 {
				t.Fatal(stderr)
			}
			got := letters(stdout)
			for r, n := range want {
				if got[r] < n {
					t.Errorf("help %s at %d has %q %d times, its source %d times", topic, width, r, got[r], n)
				}
			}
			for line := range strings.Lines(stdout) {
				if n := utf8.RuneCountInString(strings.TrimSuffix(line, "\n")); n > width {
					t.Errorf("help %s at %d: a line of %d columns: %q", topic, width, n, line)
				}
			}
		}
	}
}

// unshown is what a screen leaves out of a manual: where a link leads, and the heading of names that stand above what is
// said of them where a table finds no room.
var unshown = regexp.MustCompile(`\]\([^)\s]+\)|(?m:^\| (column|key) )`)

// letters counts the characters of a text, without those that lay it out: spaces and the marks of Markdown.
func letters(text string) map[rune]int {
	count := map[rune]int{}
	for _, r := range text {
		if !strings.ContainsRune(" \n`|-[]", r) {
			count[r]++
		}
	}
	return count
}
