package cli

import (
	"bytes"
	"context"
	"strings"
	"testing"

	"github.com/spf13/cobra"
)

// inFolder runs a command line in the current folder.
func inFolder(t *testing.T, line string) (code int, stdout, stderr string) {
	t.Helper()
	var out, errs bytes.Buffer
	code = Program{Manual: "# What is printed\n"}.Run(context.Background(), strings.Fields(line), strings.NewReader(""), &out, &errs)
	return code, out.String(), errs.String()
}

// Every example of every help text does what it shows. An audit's example ends with 1: nobody owns a whole
// cart before buying one.
func TestHelpExamples(t *testing.T) {
	a := &app{stdout: &output{}}
	root := a.root(nil)
	for _, cmd := range append([]*cobra.Command{root}, root.Commands()...) {
		t.Run(cmd.Name(), func(t *testing.T) {
			if cmd.Example == "" {
				t.Fatalf("the help of %q has no example", cmd.CommandPath())
			}
			t.Chdir(t.TempDir())
			for line := range strings.Lines(cmd.Example) {
				line, ok := strings.CutPrefix(strings.TrimSpace(line), "cartwright ")
				if !ok {
					t.Fatalf("example %q does not begin with cartwright", line)
				}
				want := codeDone
				if strings.HasPrefix(line, "audit ") {
					want = codeNo
				}
				code, stdout, stderr := inFolder(t, line)
				if code != want {
					t.Errorf("cartwright %s: exit %d, want %d; stderr:\n%s", line, code, want, stderr)
				}
				if stdout == "" && !strings.Contains(line, "--out") && !strings.Contains(line, "--file") { // which write a file instead
					t.Errorf("cartwright %s: nothing on standard output", line)
				}
			}
		})
	}
}

// Help fits a screen of 80 columns.
func TestHelpFits(t *testing.T) {
	a := &app{stdout: &output{}}
	for _, cmd := range a.root(nil).Commands() {
		_, stdout, _ := inFolder(t, cmd.Name()+" --help")
		for line := range strings.Lines(stdout) {
			if n := len(strings.TrimRight(line, "\n")); n > 80 {
				t.Errorf("help %s: %d columns: %q", cmd.Name(), n, line)
			}
		}
	}
}
