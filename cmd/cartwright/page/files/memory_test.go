package files

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"testing/fstest"

	"cartwright/catalog"
	"cartwright/scenarios"
)

// The texts are a file system by its rules, also where a name leads out of it.
func TestTextsAreAFileSystem(t *testing.T) {
	files := texts{"cart/scenario.yaml": []byte("name: x\n"), "cart/parts/batteries.csv": []byte("id\n"), "loads.csv": {}}
	if err := fstest.TestFS(files, "cart/scenario.yaml", "cart/parts/batteries.csv", "loads.csv"); err != nil {
		t.Error(err)
	}
	m := InMemory(files)
	for called, want := range map[string]string{"parts": "cart/parts", "../loads.csv": "loads.csv", "../../../loads.csv": "loads.csv", "/x/y.csv": "cart/x/y.csv", ".": "cart"} {
		if got := m.Beside("cart/scenario.yaml", called); got != want {
			t.Errorf("%q is %q, want %q", called, got, want)
		}
	}
	if text, err := m.Read("../../loads.csv"); err != nil || len(text) != 0 {
		t.Errorf("read %q, %v", text, err)
	}
}

// What is saved is there at once, and stays loose until it is again what came.
func TestWhatIsSavedInMemoryIsLoose(t *testing.T) {
	m := InMemory(map[string][]byte{"a": []byte("1"), "b": []byte("2")})
	if loose := m.Loose(); len(loose) > 0 || m.Shared() {
		t.Errorf("loose from the start: %q", loose)
	}
	written, err := m.Save([]Change{{Name: "b", Was: []byte("2"), Text: []byte("3")}})
	if err != nil || !reflect.DeepEqual(written, []string{"b"}) || !reflect.DeepEqual(m.Loose(), []string{"b"}) {
		t.Errorf("written %q, loose %q, %v", written, m.Loose(), err)
	}
	if text, err := m.Read("b"); err != nil || string(text) != "3" {
		t.Errorf("read %q, %v", text, err)
	}
	if _, err := m.Save([]Change{{Name: "b", Was: []byte("3"), Text: []byte("2")}}); err != nil || len(m.Loose()) > 0 {
		t.Errorf("loose %q, %v", m.Loose(), err)
	}
}

// A demo is not saved.
func TestADemoIsFixed(t *testing.T) {
	m, err := Demo("star-party")
	if err != nil {
		t.Fatal(err)
	}
	if _, err := m.Read("star-party/loads.csv"); err != nil {
		t.Error(err)
	}
	if written, err := m.Save([]Change{{Name: "star-party/scenario.yaml"}}); err == nil || len(written) > 0 || len(m.Loose()) > 0 {
		t.Errorf("written %q, loose %q, %v", written, m.Loose(), err)
	}
}

// own makes a scenario with a catalogue outside its folder, as a folder or as a workbook, and measured loads.
func own(t *testing.T, parts string) (file string) {
	t.Helper()
	top := t.TempDir()
	dir := filepath.Join(top, "yard", "my-cart")
	if err := os.CopyFS(dir, scenarios.Starter(scenarios.NEC)); err != nil {
		t.Fatal(err)
	}
	file = filepath.Join(dir, scenarios.FileName)
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	named := strings.Replace(string(text), "\ncatalog: parts", "\ncatalog: ../../"+parts, 1)
	if named == string(text) {
		t.Fatal("the starter names its parts otherwise")
	}
	if err := os.WriteFile(file, []byte(named), 0o666); err != nil {
		t.Fatal(err)
	}
	if !catalog.IsWorkbook(parts) {
		if err := os.CopyFS(filepath.Join(top, parts), catalog.EmbeddedFiles()); err != nil {
			t.Fatal(err)
		}
		private := []byte("nobody else's")
		if err := os.WriteFile(filepath.Join(top, parts, "accounts.csv"), private, 0o666); err != nil {
			t.Fatal(err)
		}
		return file
	}
	var book bytes.Buffer
	if err := catalog.Embedded().WriteWorkbook(&book); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(top, parts), book.Bytes(), 0o666); err != nil {
		t.Fatal(err)
	}
	return file
}

// A bundle has what the scenario is read from and nothing else, by names that do not tell whose disk it was; read from it,
// scenario and parts are the same.
func TestGather(t *testing.T) {
	for _, parts := range []string{"shared-parts", "shared.xlsx"} {
		file := own(t, parts)
		b, err := Gather(Disk{}, file, nil, "../../"+parts)
		if err != nil {
			t.Fatal(err)
		}
		if b.Scenario != "my-cart/scenario.yaml" {
			t.Errorf("the scenario is %q", b.Scenario)
		}
		for name := range b.Files {
			if name != b.Scenario && filepath.Dir(name) != parts || strings.Contains(name, "accounts") {
				t.Errorf("%s: %s is in it", parts, name)
			}
		}
		m := InMemory(b.Files)
		s, err := m.Scenario(b.Scenario, b.Files[b.Scenario])
		if err != nil {
			t.Fatal(err)
		}
		where := m.Beside(b.Scenario, s.CatalogDir)
		var got *catalog.Catalog
		if catalog.IsWorkbook(where) {
			got, err = m.Workbook(where)
		} else {
			got, err = catalog.Read(m.Folder(where), ".", where)
		}
		if err != nil {
			t.Fatal(err)
		}
		for _, k := range catalog.Kinds() {
			var was, is bytes.Buffer
			if err := catalog.Embedded().Write(k, &was); err != nil {
				t.Fatal(err)
			}
			if err := got.Write(k, &is); err != nil {
				t.Fatal(err)
			}
			if was.String() != is.String() {
				t.Errorf("%s: the parts of kind %s are others", parts, k)
			}
		}
	}
}

// A catalogue that is not there is told in memory as on disk.
func TestAMissingCatalogueIsToldAlike(t *testing.T) {
	file := own(t, "shared-parts")
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	for _, parts := range []string{"none-such", "none-such.xlsx", "scenario.yaml"} {
		text := []byte(strings.Replace(string(text), "catalog: ../../shared-parts", "catalog: "+parts, 1))
		_, disk := Disk{}.Scenario(file, text)
		_, memory := InMemory(map[string][]byte{"my-cart/scenario.yaml": text}).Scenario("my-cart/scenario.yaml", text)
		if disk == nil || memory == nil || strings.ReplaceAll(disk.Error(), filepath.Dir(file), "my-cart") != memory.Error() {
			t.Errorf("on disk %v\nin memory %v", disk, memory)
		}
	}
}

// Two files that would have one name are not mixed up.
func TestGatherMixesNothingUp(t *testing.T) {
	from := InMemory(map[string][]byte{"a/scenario.yaml": nil, "x.csv": []byte("1"), "a/x.csv": []byte("2")})
	if _, err := Gather(from, "a/scenario.yaml", []string{"../x.csv", "x.csv"}, ""); err != nil {
		t.Error(err)
	}
	if _, err := Gather(from, "a/scenario.yaml", []string{"../x.csv", "../../x.csv"}, ""); err == nil || !strings.Contains(err.Error(), "x.csv") {
		t.Errorf("error %v", err)
	}
	if _, err := Gather(from, "a/scenario.yaml", []string{"y.csv"}, ""); !isNotExist(err) {
		t.Errorf("error %v", err)
	}
}

func isNotExist(err error) bool {
	return err != nil && strings.Contains(err.Error(), fs.ErrNotExist.Error())
}
