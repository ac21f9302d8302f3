package cli

import (
	"encoding/json"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cartwright/cmd/cartwright/deal"
	"cartwright/cmd/cartwright/view"
	"cartwright/optimize/next"
	"cartwright/scenarios"
)

// copyDemo writes a demo to a folder of the same name below the current one, to be opened as ./name.
func copyDemo(t *testing.T, name string) string {
	t.Helper()
	err := fs.WalkDir(scenarios.DemoFS(), name, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		data, err := fs.ReadFile(scenarios.DemoFS(), path)
		if err != nil {
			return err
		}
		if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
			return err
		}
		return os.WriteFile(path, data, 0o666)
	})
	if err != nil {
		t.Fatal(err)
	}
	return "." + string(filepath.Separator) + name
}

// answered runs a command line and reads its JSON.
func answered(t *testing.T, line string, into any) {
	t.Helper()
	code, stdout, stderr := inFolder(t, line+" --format json")
	if code != codeDone {
		t.Fatalf("%s: exit %d: %s", line, code, stderr)
	}
	if err := json.Unmarshal([]byte(stdout), into); err != nil {
		t.Fatal(err)
	}
}

// What is bought is owned: the same plan again costs nothing, buys nothing, and what is owned passes the
// audit. Comments stay.
func TestBoughtIsOwned(t *testing.T) {
	for _, name := range scenarios.DemoNames() {
		t.Run(name, func(t *testing.T) {
			t.Chdir(t.TempDir())
			dir := copyDemo(t, name)
			var before, after struct {
				Plans []struct {
					Cost float64
					Core any
					Bill []struct{ Buy, Sell float64 }
				}
			}
			answered(t, "plan "+dir+" --plans 2", &before)
			was, err := os.ReadFile(filepath.Join(dir, scenarios.FileName))
			if err != nil {
				t.Fatal(err)
			}
			if code, _, stderr := inFolder(t, "bought "+dir+" --write"); code != codeDone || !strings.Contains(stderr, "is rewritten") {
				t.Fatalf("exit %d: %s", code, stderr)
			}
			answered(t, "plan "+dir+" --plans 2", &after)
			first, _ := json.Marshal(before.Plans[0].Core)
			again, _ := json.Marshal(after.Plans[0].Core)
			if string(first) != string(again) || after.Plans[0].Cost > 0 {
				t.Errorf("bought %s; then the first plan is %s and costs %g", first, again, after.Plans[0].Cost)
			}
			for _, l := range after.Plans[0].Bill {
				if l.Buy != 0 {
					t.Errorf("%g are bought again", l.Buy)
				}
			}
			if code, stdout, _ := inFolder(t, "audit "+dir); code != codeDone {
				t.Errorf("what is owned fails its audit:\n%s", stdout)
			}
			is, err := os.ReadFile(filepath.Join(dir, scenarios.FileName))
			if err != nil {
				t.Fatal(err)
			}
			// All comments but those behind lines of parts that are sold.
			if lost := strings.Count(string(was), "#") - strings.Count(string(is), "#"); lost > 2 {
				t.Errorf("%d comments are lost", lost)
			}
			if code, stdout, _ := inFolder(t, "bought "+dir+" --write"); code != codeDone || !strings.Contains(stdout, "stays as it is") {
				t.Errorf("bought once more: exit %d:\n%s", code, stdout)
			}
		})
	}
}

// What was bought up to a month is what the sequence has then: from there it goes on as it was planned, and
// ends in the same month with the same money left.
func TestBoughtUpToMonth(t *testing.T) {
	type sequence struct {
		Reached int
		Months  []struct {
			Month int
			Left  float64 `json:"cash_left"`
		}
	}
	for _, name := range scenarios.DemoNames() {
		t.Run(name, func(t *testing.T) {
			t.Chdir(t.TempDir())
			dir := copyDemo(t, name)
			var planned, after sequence
			answered(t, "next "+dir, &planned)
			if planned.Reached < 2 {
				t.Fatalf("reached in month %d: nothing to see here", planned.Reached)
			}
			const month = "1"
			if code, _, stderr := inFolder(t, "bought "+dir+" --month "+month+" --write"); code != codeDone {
				t.Fatalf("exit %d: %s", code, stderr)
			}
			answered(t, "next "+dir, &after)
			if after.Reached != planned.Reached-1 {
				t.Errorf("planned to be there in month %d, from month 1 on it takes %d more", planned.Reached, after.Reached)
			}
			// To the cent, but for lengths and taxes that were rounded once more on the way.
			end, same := planned.Months[planned.Reached].Left, after.Months[after.Reached].Left
			if math.Abs(end-same) > 0.05 {
				t.Errorf("planned to have %g left, from month 1 on %g", end, same)
			}
		})
	}
}

// touching adds a line to a file whenever something is written to it.
type touching struct {
	t    *testing.T
	file string
}

func (w touching) Write(p []byte) (int, error) {
	f, err := os.OpenFile(w.file, os.O_APPEND|os.O_WRONLY, 0)
	if err == nil {
		_, err = f.WriteString("# mine\n")
	}
	if err != nil || f.Close() != nil {
		w.t.Errorf("cannot touch %s: %v", w.file, err)
	}
	return len(p), nil
}

// A file that somebody changes while the answer is shown is not overwritten.
func TestBoughtMeanwhile(t *testing.T) {
	t.Chdir(t.TempDir())
	dir := copyDemo(t, "star-party")
	file := filepath.Join(dir, scenarios.FileName)
	a := &app{stdout: &output{w: touching{t, file}}, stderr: &strings.Builder{}}
	p, err := a.open([]string{dir})
	if err != nil {
		t.Fatal(err)
	}
	d := deal.Deal{Plan: 1, Buy: []next.Purchase{{Part: "lfp-24-50", Kind: "battery", Quantity: 1, Unit: "each"}}}
	before, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	err = a.bought(p, d, before, true, &choice{value: string(view.Table)})
	if err == nil || !strings.Contains(err.Error(), "has changed in the meantime") {
		t.Errorf("error %v, want one that says that the file has changed", err)
	}
	if text, _ := os.ReadFile(file); !strings.HasSuffix(string(text), "# mine\n") {
		t.Error("the change was overwritten")
	}
}
