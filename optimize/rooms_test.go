package optimize_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// rooms lists the rooms below optimize in the order in which they may know each other: one imports only those
// above it, and catalog and scenarios. DEVELOPERS.md says what each knows.
var rooms = []string{
	"plan",
	"energy", "energy/sun", "energy/year", "energy/array", "chassis/frame", "chassis", "wiring/conductor", "wiring/nec", "wiring/iec", "wiring/raceway", "wiring",
	"audit",
	"milp/lines", "milp/proof", "milp/mps", "milp/proofs", "milp/engine", "milp/branch", "milp/lpsolve", "milp",
	"question", "market", "bench", "choice", "bound", "model", "search", "relax", "rank",
	"why", "frontier", "next", "value", "compare", "doubt",
	"", // the front door
}

// Every import points up the list; the trade's rooms, the solver's and the audit know nothing of each other
// beyond what is listed here.
func TestImportsPointOneWay(t *testing.T) {
	may := func(room, imported string) bool {
		from, to := slices.Index(rooms, room), slices.Index(rooms, imported)
		switch {
		case to < 0 || to >= from:
			return false
		case strings.HasPrefix(room, "milp"):
			return strings.HasPrefix(imported, "milp") // a solver knows nothing of carts
		case room == "audit":
			return to < slices.Index(rooms, "audit") // nor the audit of what it audits
		}
		return true
	}
	err := filepath.WalkDir(".", func(path string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		room := filepath.ToSlash(filepath.Dir(path))
		if room == "." {
			room = ""
		}
		if !slices.Contains(rooms, room) {
			t.Errorf("%s: the room %q is not in the list", path, room)
			return nil
		}
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, i := range f.Imports {
			imported, _ := strconv.Unquote(i.Path.Value)
			below, ours := strings.CutPrefix(imported, "cartwright/optimize/")
			switch {
			case ours && !may(room, below):
				t.Errorf("%s: %q may not import %q", path, room, below)
			case !ours && strings.HasPrefix(imported, "cartwright/cmd"):
				t.Errorf("%s: %q imports a command", path, room)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}
