package page

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"cartwright/catalog"
	"cartwright/cmd/cartwright/page/files"
	"cartwright/scenarios"
)

// ownFiles copies the starter, with a catalogue, into a folder of its own.
func ownFiles(t *testing.T) (own Files, folder string) {
	t.Helper()
	folder = t.TempDir()
	if err := os.CopyFS(folder, scenarios.Starter(scenarios.NEC)); err != nil {
		t.Fatal(err)
	}
	if err := os.CopyFS(filepath.Join(folder, "parts"), catalog.EmbeddedFiles()); err != nil {
		t.Fatal(err)
	}
	return Files{Scenario: filepath.Join(folder, scenarios.FileName), Store: files.Disk{}}, folder
}

func do(t *testing.T, s *session, what func(request) error, q request) error {
	t.Helper()
	s.mu.Lock()
	defer s.mu.Unlock()
	if q.Number == 0 {
		q.Number = s.number
	}
	return what(q)
}

func TestAChangeIsMadeUndoneAndSaved(t *testing.T) {
	own, folder := ownFiles(t)
	s := begun(t, newFake(t), own)
	before, err := os.ReadFile(own.Scenario)
	if err != nil {
		t.Fatal(err)
	}
	if err := do(t, s, s.edit, request{Path: "limits.mass", Value: "400 lb"}); err != nil {
		t.Fatal(err)
	}
	settled(t, s)
	if got := s.opened.scenario.Limits.MassKg; got < 181 || got > 182 {
		t.Errorf("the mass is %v kg, want 400 lb", got)
	}
	if now, _ := os.ReadFile(own.Scenario); string(now) != string(before) {
		t.Error("it was written before it was saved")
	}
	if err := do(t, s, s.undoLast, request{}); err != nil {
		t.Fatal(err)
	}
	if s.dirty() || string(s.now.scenario) != string(before) {
		t.Error("undone, it differs")
	}
	for _, value := range []string{"4", "41", "410", "410 lb"} { // as one types
		if err := do(t, s, s.edit, request{Path: "limits.mass", Value: value}); err != nil {
			t.Fatal(err)
		}
	}
	if len(s.undo) != 1 {
		t.Errorf("%d steps back for one field", len(s.undo))
	}
	if err := do(t, s, s.editPart, request{File: "batteries.csv", Row: 0, Column: 2, Value: "1234.50"}); err != nil {
		t.Fatal(err)
	}
	if err := do(t, s, s.save, request{}); err != nil {
		t.Fatal(err)
	}
	after, err := os.ReadFile(own.Scenario)
	if err != nil {
		t.Fatal(err)
	}
	if want := strings.Replace(string(before), "mass: 500 lb ", "mass: 410 lb ", 1); string(after) != want {
		t.Errorf("saved is\n%s", after)
	}
	if parts, _ := os.ReadFile(filepath.Join(folder, "parts", "batteries.csv")); !strings.Contains(string(parts), "1234.50") {
		t.Error("the part's price was not saved")
	}
	if s.dirty() {
		t.Error("saved, and there is something to save")
	}
}

func TestMistakesAreToldInTheFilesWordsAtTheirField(t *testing.T) {
	own, _ := ownFiles(t)
	s := begun(t, newFake(t), own)
	settled(t, s)
	good := s.answer
	if err := do(t, s, s.edit, request{Path: "limits.mass", Value: "heavy"}); err != nil {
		t.Fatal(err)
	}
	if len(s.opened.mistakes) != 1 || s.answer != good {
		t.Fatalf("mistakes %v; the last good answer is kept: %v", s.opened.mistakes, s.answer == good)
	}
	_, alone := scenarios.OpenText(own.Scenario, s.now.scenario, nil)
	if alone == nil || !strings.Contains(alone.Error(), s.opened.mistakes[0].Error()) {
		t.Errorf("%q, but the file says %v", s.opened.mistakes[0].Error(), alone)
	}
	values, err := scenarios.ValuesOf(s.now.scenario, own.Scenario)
	if err != nil {
		t.Fatal(err)
	}
	if path := s.pathAt(s.opened.mistakes[0].Pos, values); path != "limits.mass" {
		t.Errorf("it is told at %q", path)
	}
}

func TestWhatChangedOutsideIsNotOverwritten(t *testing.T) {
	own, folder := ownFiles(t)
	s := begun(t, newFake(t), own)
	if err := do(t, s, s.edit, request{Path: "limits.mass", Value: "400 lb"}); err != nil {
		t.Fatal(err)
	}
	if err := do(t, s, s.editPart, request{File: "batteries.csv", Row: 0, Column: 2, Value: "1"}); err != nil {
		t.Fatal(err)
	}
	theirs := filepath.Join(folder, "parts", "batteries.csv")
	text, err := os.ReadFile(theirs)
	if err != nil {
		t.Fatal(err)
	}
	text = append(text, "# somebody else's\n"...)
	if err := os.WriteFile(theirs, text, 0o666); err != nil {
		t.Fatal(err)
	}
	scenario, err := os.ReadFile(own.Scenario)
	if err != nil {
		t.Fatal(err)
	}
	if err := do(t, s, s.save, request{}); !errors.Is(err, files.ErrChanged) {
		t.Errorf("saved over it: %v", err)
	}
	if now, _ := os.ReadFile(theirs); string(now) != string(text) {
		t.Error("their text is gone")
	}
	if now, _ := os.ReadFile(own.Scenario); string(now) != string(scenario) {
		t.Error("half of it was written")
	}
	if err := do(t, s, s.reload, request{}); err != nil || s.dirty() {
		t.Errorf("read anew: %v, dirty %v", err, s.dirty())
	}
	if err := do(t, s, s.editPart, request{File: "batteries.csv", Row: 0, Column: 2, Value: "2"}); err != nil {
		t.Fatal(err)
	}
	if err := do(t, s, s.save, request{}); err != nil {
		t.Errorf("read anew, it can't be saved: %v", err)
	}
	if now, _ := os.ReadFile(theirs); !strings.Contains(string(now), "# somebody else's") {
		t.Error("their comment is gone")
	}
}

// A catalogue that somebody changes in a spreadsheet meanwhile is read anew by itself.
func TestACatalogueThatChangesOutsideIsReadAnew(t *testing.T) {
	own, folder := ownFiles(t)
	s := begun(t, newFake(t), own)
	settled(t, s)
	theirs := filepath.Join(folder, "parts", "batteries.csv")
	text, err := os.ReadFile(theirs)
	if err != nil {
		t.Fatal(err)
	}
	s.mu.Lock()
	before, was := s.number, s.opened.catalog.Batteries[0].ID
	s.mu.Unlock()
	if err := os.WriteFile(theirs, []byte(strings.ReplaceAll(string(text), "\n"+was+",", "\nrenamed,")), 0o666); err != nil {
		t.Fatal(err)
	}
	for range 1000 {
		s.mu.Lock()
		after, catalogue := s.number, s.opened.catalog
		s.mu.Unlock()
		if after > before && catalogue != nil && catalogue.Batteries[0].ID == "renamed" {
			return
		}
		time.Sleep(10 * time.Millisecond)
	}
	t.Error("the catalogue is still the old one")
}

// So are measured loads.
func TestLoadsThatChangeOutsideAreReadAnew(t *testing.T) {
	folder := t.TempDir()
	for _, name := range []string{scenarios.FileName, "loads.csv"} {
		text, err := fs.ReadFile(scenarios.DemoFS(), "star-party/"+name)
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(folder, name), text, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	s := begun(t, newFake(t), Files{Scenario: filepath.Join(folder, scenarios.FileName), Store: files.Disk{}})
	settled(t, s)
	s.mu.Lock()
	before, mistakes := s.number, s.opened.mistakes
	s.mu.Unlock()
	if len(mistakes) > 0 {
		t.Fatalf("%+v", mistakes)
	}
	if err := os.WriteFile(filepath.Join(folder, "loads.csv"), []byte("time,watts\n00:00,much\n"), 0o666); err != nil {
		t.Fatal(err)
	}
	for range 1000 {
		s.mu.Lock()
		after, wrong := s.number, len(s.opened.mistakes)
		s.mu.Unlock()
		if after > before && wrong > 0 {
			return
		}
		time.Sleep(10 * time.Millisecond)
	}
	t.Error("the loads are still the old ones")
}

func TestAReadOnlyFileIsNotReplaced(t *testing.T) {
	own, _ := ownFiles(t)
	s := begun(t, newFake(t), own)
	if err := os.Chmod(own.Scenario, 0o444); err != nil {
		t.Fatal(err)
	}
	if err := do(t, s, s.edit, request{Path: "limits.mass", Value: "400 lb"}); err != nil {
		t.Fatal(err)
	}
	if err := do(t, s, s.save, request{}); err == nil || !strings.Contains(err.Error(), "read-only") {
		t.Errorf("saved: %v", err)
	}
}

func TestADemoIsTriedOutAndNotSaved(t *testing.T) {
	s := begun(t, newFake(t), demoFiles())
	settled(t, s)
	if err := do(t, s, s.bought, request{Show: 0}); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(s.now.scenario), "lfp-floor-16") || !s.dirty() {
		t.Error("what is bought is not owned")
	}
	if err := do(t, s, s.sold, request{Part: "panel-4", Count: "1", Price: "1"}); err != nil {
		t.Fatal(err)
	}
	if strings.Contains(string(s.now.scenario), "panel-4") {
		t.Error("what is sold is still owned")
	}
	if err := do(t, s, s.save, request{}); err == nil {
		t.Error("a demo was saved")
	}
	for range 2 {
		if err := do(t, s, s.undoLast, request{}); err != nil {
			t.Fatal(err)
		}
	}
	demo, err := fs.ReadFile(scenarios.DemoFS(), "cider-shed/scenario.yaml")
	if err != nil || string(demo) != string(s.now.scenario) {
		t.Error("undone twice, it is not the demo's text")
	}
	if err := do(t, s, s.undoLast, request{}); err == nil {
		t.Error("something was undone once more")
	}
}

func TestStoppedTheLastAnswerStays(t *testing.T) {
	f := newFake(t)
	s := begun(t, f, demoFiles())
	settled(t, s)
	good := s.answer
	s.mu.Lock()
	f.slow = make(chan struct{})
	s.mu.Unlock()
	if err := do(t, s, s.edit, request{Path: "limits.mass", Value: "500 lb"}); err != nil {
		t.Fatal(err)
	}
	if err := do(t, s, s.halt, request{}); err != nil {
		t.Fatal(err)
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.planning || s.answer != good || !strings.Contains(s.status(), "Stopped") {
		t.Errorf("planning %v, kept %v, %q", s.planning, s.answer == good, s.status())
	}
}

func TestAnOlderTabIsTold(t *testing.T) {
	s := begun(t, newFake(t), demoFiles())
	old := s.number
	if err := do(t, s, s.edit, request{Path: "limits.mass", Value: "500 lb"}); err != nil {
		t.Fatal(err)
	}
	if err := do(t, s, s.edit, request{Number: old, Path: "limits.tilt", Value: "12 deg"}); !errors.Is(err, errStale) {
		t.Errorf("an older tab made a change: %v", err)
	}
}

// Files beside the catalogue's, though they are there and could be edited, are none of the page's business.
func TestPathTricksChangeNoOtherFile(t *testing.T) {
	own, folder := ownFiles(t)
	for _, path := range []string{"accounts.csv", "parts/notes.csv"} {
		if err := os.WriteFile(filepath.Join(folder, path), []byte("id,sum\na,1\n"), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	s := begun(t, newFake(t), own)
	for _, name := range []string{"../scenario.yaml", "scenario.yaml", "/etc/passwd", "batteries.csv/../notes.csv", "..\\x.csv", "",
		"../accounts.csv", "notes.csv", "./batteries.csv", "../parts/batteries.csv", filepath.Join(folder, "accounts.csv")} {
		if err := do(t, s, s.editPart, request{File: name, Row: 0, Column: 0, Value: "x"}); err == nil {
			t.Errorf("%q was changed", name)
		}
	}
	if s.dirty() {
		t.Error("there is something to save")
	}
}
