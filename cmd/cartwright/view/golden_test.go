package view

import (
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"strconv"
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

// shownAs compares an answer in a format with a golden file, and checks what holds for every answer in it. A screen is
// kept at the usual width, on a narrow and on a wide terminal.
func shownAs(t *testing.T, file string, answer Document, format Format) {
	t.Helper()
	at := func(width int) []byte {
		got, err := Render(answer, format, width)
		if err != nil {
			t.Fatal(err)
		}
		return got
	}
	got := at(Width)
	golden(t, file, got)
	switch format {
	case Table:
		for _, width := range []int{60, 160} {
			golden(t, filepath.Join(strconv.Itoa(width), file), at(width))
		}
		fitsEveryWidth(t, answer)
	case JSON:
		if !json.Valid(got) || strings.Contains(string(got), "null") {
			t.Errorf("no JSON, or null in it:\n%s", got)
		}
	}
}

// fitsEveryWidth checks that no line of a screen is wider than it, whatever its width, but for the lines of a file.
func fitsEveryWidth(t *testing.T, d Document) {
	t.Helper()
	_, ofFile := d.(Bought)
	for width := leastWidth; width <= mostWidth; width += 3 {
		got, err := Render(d, Table, width)
		if err != nil {
			t.Fatal(err)
		}
		for line := range strings.SplitSeq(string(got), "\n") {
			if n := utf8.RuneCountInString(line); n > width && !ofFile {
				t.Errorf("at %d: a line of %d columns: %q", width, n, line)
			}
			if strings.TrimRight(line, " ") != line {
				t.Errorf("at %d: a line ends in spaces: %q", width, line)
			}
		}
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
