package catalog_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"cartwright/catalog"
)

// tableUnder returns the cells of the tables below a heading of the manual, without their heads.
func tableUnder(t *testing.T, heading string) [][]string {
	t.Helper()
	_, text, found := strings.Cut(catalog.Manual(), "\n## "+heading+"\n")
	if !found {
		t.Fatalf("there is no heading %q", heading)
	}
	text, _, _ = strings.Cut(text, "\n## ")
	var rows [][]string
	for line := range strings.SplitSeq(text, "\n") {
		inner, ok := strings.CutPrefix(line, "| ")
		if !ok || strings.HasPrefix(line, "| -") || strings.HasPrefix(line, "| column |") {
			continue
		}
		var cells []string
		for cell := range strings.SplitSeq(strings.TrimSuffix(inner, " |"), " | ") {
			cells = append(cells, strings.TrimSpace(cell))
		}
		rows = append(rows, cells)
	}
	return rows
}

// The manual lists every column of every file as the reader has it: both names, whether it is required, what is to be
// written and what an empty cell stands for.
func TestManualListsEveryColumn(t *testing.T) {
	every, priced := tableUnder(t, "In every file"), tableUnder(t, "In every file but cables.csv, conduits.csv and sections.csv")
	for _, k := range catalog.Kinds() {
		told := slices.Concat(every, tableUnder(t, k.File()))
		if !k.ByLength() {
			told = slices.Concat(priced, told)
		}
		compareColumns(t, k.File(), told, catalog.Columns(k))
	}
	compareColumns(t, catalog.OffersFile, tableUnder(t, catalog.OffersFile), catalog.OfferColumns())
}

func compareColumns(t *testing.T, file string, told [][]string, columns []catalog.Column) {
	t.Helper()
	var want, got []string
	for _, c := range columns {
		name := "`" + c.Name + "`"
		if c.US != "" {
			name += " or `" + c.US + "`"
		}
		if c.Required {
			name += " *"
		}
		write, _, _ := strings.Cut(c.Expected, ", for example")
		want = append(want, fmt.Sprintf("%s: %s; if empty %s", name, write, c.Default))
	}
	for _, cells := range told {
		if len(cells) != 4 || cells[3] == "" {
			t.Errorf("%s: a row is not name, value, if empty, meaning: %q", file, cells)
			continue
		}
		got = append(got, fmt.Sprintf("%s: %s; if empty %s", cells[0], cells[1], cells[2]))
	}
	for _, x := range got {
		if !slices.Contains(want, x) {
			t.Errorf("%s: the manual tells of what there is not: %s", file, x)
		}
	}
	for _, x := range want {
		if !slices.Contains(got, x) {
			t.Errorf("%s: the manual lacks: %s", file, x)
		}
	}
}
