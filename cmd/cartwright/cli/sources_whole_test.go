package cli

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/audit"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// said is what a comment says of something that has a source, or that has none and is used all the same.
var said = regexp.MustCompile(`(?i)common\s+practice|no\s+source|from\s+memory|independent\s+texts?|confirmed\s+in|source:`)

// clause is the number of a clause or table after the name of a code or standard.
var clause = regexp.MustCompile(`\b(?:NEC|NFPA 70|IEC|ISO|ASTM|ANSI)\s+(?:tables?\s+|article\s+)?([A-Z]?\d[\d.-]*\d)`)

// number is the number of a clause or table anywhere in a rule's source.
var number = regexp.MustCompile(`[A-Z]?\.?\d[\d.-]*\d`)

// declaration is something at the top level of a file: a function, or the first name of a group.
type declaration struct {
	comments string
	texts    string // string literals
	numbers  int    // written out in the value of a variable
}

// declared reads the code that data flows through, but for the wording of mistakes, and returns its
// declarations by folder and name, those of methods with their receiver's type: "optimize/energy.Demand.SurgeW".
func declared(t *testing.T) map[string]*declaration {
	t.Helper()
	root := os.DirFS("../../..")
	all := map[string]*declaration{}
	for _, top := range []string{"catalog", "scenarios", "optimize"} {
		err := fs.WalkDir(root, top, func(name string, entry fs.DirEntry, err error) error {
			if err != nil || entry.IsDir() || !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") ||
				path.Dir(name) == "catalog/problem" {
				return err
			}
			text, err := fs.ReadFile(root, name)
			if err != nil {
				return err
			}
			return declare(all, path.Dir(name), name, text)
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	return all
}

// declare adds the declarations of one file. Comments belong to the declaration they stand before, in or
// behind on its last line; the package's own are left out, as they say what its declarations say.
func declare(all map[string]*declaration, dir, file string, text []byte) error {
	files := token.NewFileSet()
	f, err := parser.ParseFile(files, file, text, parser.ParseComments)
	if err != nil {
		return err
	}
	line := func(p token.Pos) int { return files.Position(p).Line }
	for _, d := range f.Decls {
		key, doc := nameOf(d)
		if key == "" {
			continue
		}
		one := all[dir+"."+key]
		if one == nil {
			one = &declaration{}
			all[dir+"."+key] = one
		}
		from := d.Pos()
		if doc != nil {
			from = doc.Pos()
		}
		for _, c := range f.Comments {
			if c.Pos() >= from && line(c.Pos()) <= line(d.End()) {
				one.comments += c.Text()
			}
		}
		g, general := d.(*ast.GenDecl)
		ast.Inspect(d, func(n ast.Node) bool {
			switch l, ok := n.(*ast.BasicLit); {
			case ok && l.Kind == token.STRING:
				one.texts += " " + l.Value
			case ok && l.Kind != token.CHAR && general && g.Tok == token.VAR:
				one.numbers++
			}
			return true
		})
	}
	return nil
}

// nameOf returns the name of a declaration, that of the first of a group, and its comment; "" for imports
// and for variables named _.
func nameOf(d ast.Decl) (name string, doc *ast.CommentGroup) {
	switch d := d.(type) {
	case *ast.FuncDecl:
		name = d.Name.Name
		if d.Recv != nil {
			of := d.Recv.List[0].Type
			if star, ok := of.(*ast.StarExpr); ok {
				of = star.X
			}
			if generic, ok := of.(*ast.IndexExpr); ok {
				of = generic.X
			}
			name = fmt.Sprint(of) + "." + name
		}
		return name, d.Doc
	case *ast.GenDecl:
		if len(d.Specs) == 0 {
			return "", nil
		}
		switch s := d.Specs[0].(type) {
		case *ast.ValueSpec:
			name = s.Names[0].Name
		case *ast.TypeSpec:
			name = s.Name.Name
		}
		return strings.Trim(name, "_"), d.Doc
	}
	return "", nil
}

// ruleTables reports whether a declaration is of a room that holds values copied from codes and standards.
func ruleTables(place string) bool {
	return strings.HasPrefix(place, "optimize/wiring") || strings.HasPrefix(place, "scenarios/ratings")
}

// tableSize is how many numbers make a variable a table of values.
const tableSize = 8

// TestSourcesAreWhole: whatever the code says a source of, every table of values, and every source that is
// listed, stand in the table of uses; what that table names is there; and each table copied from a code says
// in its comment how far it is confirmed.
func TestSourcesAreWhole(t *testing.T) {
	all := declared(t)
	used, listed := map[string]bool{}, map[string]bool{}
	for _, room := range allSources() {
		for _, s := range room.Sources {
			key := room.Room + ": " + s.Name
			if listed[key] {
				t.Errorf("%q is listed twice", key)
			}
			listed[key] = true
			if len(uses[key]) == 0 {
				t.Errorf("%q is listed, but the table of uses does not say where it is used", key)
			}
		}
	}
	for key, places := range uses {
		if !listed[key] {
			t.Errorf("%q stands in the table of uses and is not listed by sources", key)
		}
		for _, place := range places {
			used[place] = true
			if all[place] == nil && !strings.HasPrefix(place, "cmd/") { // the screens are not walked
				t.Errorf("%q is used by %s, which is not there", key, place)
			}
		}
	}
	for place, d := range all {
		if ruleTables(place) && used[place] && d.numbers >= tableSize && !said.MatchString(d.comments) {
			t.Errorf("%s is a table of %d numbers, and its comment does not say how far it is confirmed", place, d.numbers)
		}
		if used[place] || strings.HasSuffix(place, ".Sources") || slices.Contains(noUse, place) {
			continue
		}
		if s := said.FindString(d.comments); s != "" {
			t.Errorf("%s says %q of itself: list its source and put it into the table of uses", place, s)
		} else if d.numbers >= tableSize {
			t.Errorf("%s is a table of %d numbers: list its source and put it into the table of uses", place, d.numbers)
		}
	}
	for _, place := range noUse {
		if all[place] == nil || used[place] {
			t.Errorf("%s is said to have no source to list; it is not there, or has a use", place)
		}
	}
}

// TestSourcesNameEveryClause: each clause and table of a code or standard that code, rules and checks name
// is in the listing.
func TestSourcesNameEveryClause(t *testing.T) {
	var text strings.Builder
	for _, room := range allSources() {
		for _, s := range room.Sources {
			fmt.Fprintln(&text, s.Name, s.Source, s.Confidence)
		}
	}
	listing := text.String()
	named := func(where, numeral string) {
		if !strings.Contains(listing, strings.TrimRight(numeral, ".-")) {
			t.Errorf("%s names %s, which sources does not list", where, numeral)
		}
	}
	for place, d := range declared(t) {
		if slices.Contains(noUse, place) {
			continue
		}
		for _, m := range clause.FindAllStringSubmatch(strings.Join(strings.Fields(d.comments+d.texts), " "), -1) {
			named(place, m[1])
		}
	}
	for _, r := range audit.Rules() {
		for _, n := range number.FindAllString(r.Source, -1) {
			named("the audit's "+r.Name, n)
		}
	}
	for _, rules := range []scenarios.Rules{scenarios.NEC, scenarios.IEC} {
		d := wiring.Duty{Kind: scenarios.RunFeeder, AC: true, DesignA: 20, NominalV: 240, DeviceV: 240, Poles: 2, Conductors: 3,
			Ground: true, LengthM: 1, AmbientC: 30, Bundled: 3, Drop: 0.03}
		for _, size := range []catalog.Size{"10 AWG", "4 mm2"} {
			wire := &catalog.Cable{Size: size, Material: "copper", InsulationC: 90}
			fuse := &catalog.Device{Type: "fuse", RatingA: 25, Poles: 2, MaxACV: 240, InterruptingACA: 5000, TerminalC: 75}
			o := wiring.Option{Cable: wire, Sets: 1, Device: fuse, Ground: wire}
			for _, c := range wiring.For(rules).Check(d, o, 5000).Checks {
				for _, n := range number.FindAllString(c.Source, -1) {
					named(string(rules)+" "+c.Name, n)
				}
			}
		}
	}
}

// TestSourcesNameEveryDefault: every column of the catalogue whose empty cell stands for something other
// than nothing is named.
func TestSourcesNameEveryDefault(t *testing.T) {
	var listing strings.Builder
	for _, s := range catalog.Sources() {
		fmt.Fprintln(&listing, s.Name)
	}
	for _, kind := range catalog.Kinds() {
		for _, c := range catalog.Columns(kind) {
			if c.Default == "" || c.Default == "0" || c.Name == "use" {
				continue
			}
			if !strings.Contains(listing.String(), c.Name) {
				t.Errorf("%s: an empty %s stands for %q, which sources does not tell", kind.File(), c.Name, c.Default)
			}
		}
	}
}
