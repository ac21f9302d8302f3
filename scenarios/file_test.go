package scenarios_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"cartwright/scenarios"
)

// write makes a file in a new folder and returns the folder.
func write(t *testing.T, name string, data []byte) string {
	t.Helper()
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, name), data, 0o666); err != nil {
		t.Fatal(err)
	}
	return dir
}

func TestOpen(t *testing.T) {
	dir := write(t, scenarios.FileName, []byte(plain))
	for _, name := range []string{dir, filepath.Join(dir, scenarios.FileName), dir + string(filepath.Separator)} {
		s, err := scenarios.Open(name)
		if err != nil {
			t.Fatal(err)
		}
		if s.Name != "Test cart" || s.Dir != dir || s.File != filepath.Join(dir, scenarios.FileName) {
			t.Errorf("Open(%q): name %q, folder %q, file %q", name, s.Name, s.Dir, s.File)
		}
	}
}

func TestOpenErrors(t *testing.T) {
	empty := t.TempDir()
	nested := t.TempDir()
	if err := os.Mkdir(filepath.Join(nested, scenarios.FileName), 0o777); err != nil {
		t.Fatal(err)
	}
	missingProfile := strings.Replace(plain, "loads:\n  - {name: lamp, watts: 60 W}", "measured: loads.csv", 1)
	folderProfile := write(t, scenarios.FileName, []byte(missingProfile))
	if err := os.Mkdir(filepath.Join(folderProfile, "loads.csv"), 0o777); err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		name, path, want string // DIR stands for the path
	}{
		{"nothing there", filepath.Join(empty, "cart"), `DIR: there is no such folder or file; give the folder of a scenario, or its scenario.yaml`},
		{"folder without a scenario", empty, `DIR: the folder has no scenario.yaml; give a folder that has one, or the file itself`},
		{"folder for the file", nested, `DIR/scenario.yaml: "DIR/scenario.yaml" is a folder; give the name of a file`},
		{"50 MB", write(t, scenarios.FileName, make([]byte, 50e6)),
			`DIR/scenario.yaml: the file "DIR/scenario.yaml" has 50000000 bytes; write at most 262144`},
		{"empty file", write(t, scenarios.FileName, nil), `DIR/scenario.yaml:1:1: the scenario is empty; write keys and values, beginning with name: and rules:`},
		{"comments alone", write(t, scenarios.FileName, []byte("# nothing yet\n")),
			`DIR/scenario.yaml:1:1: the scenario is empty; write keys and values, beginning with name: and rules:`},
		{"a list", write(t, scenarios.FileName, []byte("- name: a\n")),
			`DIR/scenario.yaml:1:1: the scenario is a list; write keys and values, beginning with name: and rules:`},
		{"a word", write(t, scenarios.FileName, []byte("\n cart\n")),
			`DIR/scenario.yaml:2:2: the scenario is text; write keys and values, beginning with name: and rules:`},
		{"not UTF-8", write(t, scenarios.FileName, []byte("name: Zo\xeb\n")),
			`DIR/scenario.yaml:1:9: the byte 0xeb is not UTF-8 text; save the file as UTF-8`},
		{"not text", write(t, scenarios.FileName, []byte("name: a\nrules: \x00\n")),
			`DIR/scenario.yaml:2:8: the control character 0x00 is not text; take it out`},
		{"profile missing", write(t, scenarios.FileName, []byte(missingProfile)),
			`DIR/scenario.yaml:4:11: there is no file "DIR/loads.csv"; give the name of one that exists`},
		{"profile is a folder", folderProfile, `DIR/scenario.yaml:4:11: "DIR/loads.csv" is a folder; give the name of a file`},
		{"no such catalogue", write(t, scenarios.FileName, []byte(plain+"catalog: parts\n")),
			`DIR/scenario.yaml:14:10: catalog: there is no folder "DIR/parts"; name the folder of the parts' CSV files, or leave catalog out`},
		{"no such workbook", write(t, scenarios.FileName, []byte(plain+"catalog: parts.xlsx\n")),
			`DIR/scenario.yaml:14:10: catalog: there is no workbook "DIR/parts.xlsx"; name the workbook of the parts, or leave catalog out`},
		{"catalogue is a file", write(t, scenarios.FileName, []byte(plain+"catalog: scenario.yaml\n")),
			`DIR/scenario.yaml:14:10: catalog: "DIR/scenario.yaml" is a file; name the folder of the parts' CSV files, or an .xlsx workbook`},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, err := scenarios.Open(tt.path)
			expect(t, err, strings.ReplaceAll(tt.want, "DIR", tt.path))
		})
	}
}

// What is made to exhaust a reader must be refused, and soon.
func TestHostileYAML(t *testing.T) {
	laughs := "a0: &a0 [lol, lol, lol]\n"
	for i := 1; i < 60; i++ {
		laughs += fmt.Sprintf("a%d: &a%d [*a%d, *a%d, *a%d]\n", i, i, i-1, i-1, i-1)
	}
	deep := ""
	for i := range 700 {
		deep += strings.Repeat(" ", i) + "a:\n"
	}
	for _, tt := range []struct{ name, text, want string }{
		{"aliases of aliases", laughs, "an anchor or alias is not read in a scenario"},
		{"open brackets", "a: " + strings.Repeat("[", 3000), "brackets more than 16 deep"},
		{"open brackets over lines", "a: " + strings.Repeat("[\n", 5000), "brackets more than 16 deep"},
		{"lists in one line", strings.Repeat("- ", 100000) + "a", "the line has 200001 bytes"},
		{"lists of lists", strings.Repeat("- ", 1900) + "a", "the scenario is a list"},
		{"one long line", "name: " + strings.Repeat("x", 200000), "the line has 200006 bytes"},
		{"deep indents", deep, "unknown key"},
		{"many keys", strings.Repeat("k: 1\n", 50000), "more than 20000 words and marks"},
		{"as many keys as are read", strings.Repeat("k: 1\n", 6600), `key "k" stands twice`},
		{"as many keys in braces", "a: {" + strings.Repeat("k: 1,\n", 4900) + "}", `unknown key "a"`},
	} {
		t.Run(tt.name, func(t *testing.T) {
			start := time.Now()
			_, err := openText(tt.text)
			if err == nil || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("got error %.300v, want one that says %q", err, tt.want)
			}
			// Far above what any takes (below a second without -race), far below a hang.
			if took := time.Since(start); took > 20*time.Second {
				t.Errorf("took %v", took)
			}
		})
	}
}

// Mistakes in the text leave the catalogue's folder known, so that those in the catalogue can be told with
// them; a folder that is not there is told once.
func TestOpenWithMistakesKnowsTheCatalogue(t *testing.T) {
	for _, tt := range []struct{ name, catalogue, want string }{
		{"there", "parts", "parts"},
		{"not there", "prats", ""},
	} {
		t.Run(tt.name, func(t *testing.T) {
			dir := t.TempDir()
			if err := os.Mkdir(filepath.Join(dir, "parts"), 0o777); err != nil {
				t.Fatal(err)
			}
			text := "name: Broken\ncatalog: " + tt.catalogue + "\nautonomy: 12 kg\n"
			if err := os.WriteFile(filepath.Join(dir, scenarios.FileName), []byte(text), 0o666); err != nil {
				t.Fatal(err)
			}
			s, err := scenarios.Open(dir)
			if err == nil {
				t.Fatal("no error")
			}
			if s == nil || s.CatalogDir != tt.want {
				t.Errorf("got %+v, want the catalogue in %q", s, tt.want)
			}
		})
	}
}
