package view

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"
)

var update = flag.Bool("update", false, "rewrite the golden files of testdata")

// golden compares got with a file of testdata, or rewrites the file.
func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(path, got, 0o666); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if string(got) != string(want) {
		t.Errorf("%s differs; run with -update and read the change. Got:\n%s", path, got)
	}
}

// fits checks what holds for every screen: no line wider than Width, no spaces at a line's end.
func fits(t *testing.T, screen string) {
	t.Helper()
	for i, line := range strings.Split(screen, "\n") {
		if w := utf8.RuneCountInString(line); w > Width {
			t.Errorf("line %d is %d columns wide, at most %d: %q", i+1, w, Width, line)
		}
		if strings.TrimRight(line, " ") != line {
			t.Errorf("line %d ends in spaces: %q", i+1, line)
		}
	}
}
