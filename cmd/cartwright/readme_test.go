package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"cartwright/cmd/cartwright/cli"
)

const (
	// readmeDay is the day that prices are counted to in the runs of the README.
	readmeDay = "2026-11-20"
	// omitted stands in the README for any number of lines of output.
	omitted = "[...]"
)

// manuals are the texts whose runs are replayed, each in an empty folder of its own.
var manuals = []string{"../../README.md", "README.md", "../../scenarios/demos/goat-dairy/README.md"}

// TestReadme replays the README and the list of commands. With -update they are rewritten.
func TestReadme(t *testing.T) {
	shown := map[string]bool{}
	for _, manual := range manuals {
		name, lines := read(t, manual)
		t.Chdir(t.TempDir())
		rewritten, has := replay(t, name, lines)
		for command := range has {
			shown[command] = true
		}
		if *update && !t.Failed() {
			if err := os.WriteFile(name, []byte(strings.Join(rewritten, "\n")), 0o666); err != nil {
				t.Fatal(err)
			}
		}
	}
	for _, command := range commands(t) {
		if !shown[command] {
			t.Errorf("no text shows a run of %s", command)
		}
	}
}

// The front page stays short: what it is, how to begin, which command answers which question.
func TestReadmeIsShort(t *testing.T) {
	_, lines := read(t, "../../README.md")
	if n := len(strings.Join(lines, "\n")); n > 14_000 {
		t.Errorf("README.md has %d bytes, at most 14000", n)
	}
}

// replay runs every command in the console blocks of a Markdown text, in their order and in the current
// folder, and compares what it prints with what the text shows. A line of [...] stands for any lines; what
// stands between two such lines is printed without a gap, what stands first or last is printed first or last.
// A run that ends well shows standard output alone, any other also standard error and its exit status.
//
// It returns the lines with what is printed now, and which commands were shown. With -update nothing is
// compared. A run shown whole is shown whole again, and of an excerpt as many lines as there were, from the
// line on that it began with.
func replay(t *testing.T, file string, lines []string) (rewritten []string, shown map[string]bool) {
	t.Helper()
	shown = map[string]bool{}
	for at := 0; at < len(lines); {
		rewritten = append(rewritten, lines[at])
		at++
		if lines[at-1] != "```console" {
			continue
		}
		end := at + slices.Index(lines[at:], "```")
		for at < end {
			command, ok := strings.CutPrefix(lines[at], "$ cartwright ")
			if !ok {
				t.Fatalf("%s:%d: a console block that does not begin with a command of ours: %s", file, at+1, lines[at])
			}
			rewritten = append(rewritten, lines[at])
			at++
			first := at
			for at < end && !strings.HasPrefix(lines[at], "$ ") {
				at++
			}
			shown[strings.Fields(command)[0]] = true
			got, want := printed(t, command), lines[first:at]
			next, err := excerpt(got, want)
			if !*update {
				next, err = want, differs(got, want)
			}
			if err != nil {
				t.Errorf("%s:%d: cartwright %s: %v\nprinted:\n%s", file, first, command, err, strings.Join(got, "\n"))
			}
			rewritten = append(rewritten, next...)
		}
	}
	return rewritten, shown
}

// here is the folder of this package, wherever a test goes.
var here, _ = os.Getwd()

// read returns a text's full name and its lines; the name is relative to this package.
func read(t *testing.T, manual string) (name string, lines []string) {
	t.Helper()
	name = filepath.Join(here, filepath.FromSlash(manual))
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return name, strings.Split(string(data), "\n")
}

// execute runs a command line of cartwright.
func execute(command string) (stdout, stderr string, code int) {
	var out, errs bytes.Buffer
	code = cli.Program{Manual: manual}.Run(context.Background(), strings.Fields(command), strings.NewReader(""), &out, &errs)
	return out.String(), errs.String(), code
}

// printed returns what the README should show of a run.
func printed(t *testing.T, command string) []string {
	t.Helper()
	help, _, _ := execute("help " + strings.Fields(command)[0])
	if strings.Contains(help, "--as-of") {
		command += " --as-of " + readmeDay
	}
	text, errs, code := execute(command)
	if code != 0 {
		text += errs + fmt.Sprintf("[exit status %d]\n", code)
	}
	if text == "" {
		return nil
	}
	return strings.Split(strings.TrimSuffix(text, "\n"), "\n")
}

// commands returns the names of the commands, but for those that the library adds.
func commands(t *testing.T) []string {
	t.Helper()
	help, _, _ := execute("help")
	_, list, _ := strings.Cut(help, "Available Commands:\n")
	list, _, _ = strings.Cut(list, "\n\n")
	var names []string
	for line := range strings.Lines(list) {
		if name := strings.Fields(line)[0]; name != "help" && name != "completion" {
			names = append(names, name)
		}
	}
	if len(names) == 0 {
		t.Fatal("help lists no commands")
	}
	return names
}

// pieces returns what stands between the lines that stand for others.
func pieces(want []string) [][]string {
	list := [][]string{nil}
	for _, line := range want {
		if line == omitted {
			list = append(list, nil)
		} else {
			list[len(list)-1] = append(list[len(list)-1], line)
		}
	}
	return list
}

// differs says where what is printed is not what is shown.
func differs(got, want []string) error {
	list := pieces(want)
	last := len(list) - 1
	if last == 0 && !slices.Equal(got, want) {
		return fmt.Errorf("is not printed as shown")
	}
	at := 0
	for i, p := range list {
		from := at
		switch i {
		case 0:
		case last:
			from = max(at, len(got)-len(p))
		default:
			for from < len(got) && !startsWith(got[from:], p) {
				from++
			}
		}
		if !startsWith(got[from:], p) {
			return fmt.Errorf("is not printed as shown where it begins with %q", p[0])
		}
		at = from + len(p)
	}
	return nil
}

func startsWith(lines, p []string) bool {
	return len(lines) >= len(p) && slices.Equal(lines[:len(p)], p)
}

// excerpt returns what the README should show of what is printed, cut as it was cut before.
func excerpt(got, want []string) ([]string, error) {
	list := pieces(want)
	last := len(list) - 1
	if last == 0 {
		return got, nil
	}
	var out []string
	at := 0
	for i, p := range list {
		from := at
		if i > 0 {
			out = append(out, omitted)
		}
		if len(p) == 0 {
			continue
		}
		switch i {
		case 0:
		case last:
			from = max(at, len(got)-len(p))
		default:
			found := slices.Index(got[at:], p[0])
			if found < 0 {
				return want, fmt.Errorf("%q is not printed any more", p[0])
			}
			from = at + found
		}
		at = min(from+len(p), len(got))
		out = append(out, got[from:at]...)
	}
	return out, nil
}

// The comparison notices a line that is missing, another or out of place.
func TestDiffers(t *testing.T) {
	got := strings.Fields("a b c d e f")
	for want, same := range map[string]bool{
		"a b c d e f":               true,
		"a b c d e":                 false,
		"a b [...]":                 true,
		"b [...]":                   false,
		"[...] f":                   true,
		"[...] e":                   false,
		"a [...] c d [...] f":       true,
		"a [...] c e [...]":         false,
		"a [...] d [...] c [...]":   false,
		"a [...] c d [...] d e f":   false,
		"[...] b c [...]":           true,
		"a b c d e f [...]":         true,
		"a b c d e f [...] f":       false,
		"a b c [...] d [...] e f":   true,
		"a b c d e f g":             false,
		"[...] a b c d e f g [...]": false,
	} {
		if err := differs(got, strings.Fields(want)); (err == nil) != same {
			t.Errorf("%s: %v, want same %t", want, err, same)
		}
	}
	for want, next := range map[string]string{
		"x":                   "a b c d e f",
		"x [...]":             "a [...]",
		"[...] c x [...] y z": "[...] c d [...] e f",
	} {
		if out, err := excerpt(got, strings.Fields(want)); err != nil || strings.Join(out, " ") != next {
			t.Errorf("%s: %v, %v, want %s", want, out, err, next)
		}
	}
	if _, err := excerpt(got, strings.Fields("[...] x [...]")); err == nil {
		t.Error("an excerpt that is printed no more is not told")
	}
}
