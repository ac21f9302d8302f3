package view

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestTableScreen(t *testing.T) {
	tb := table{columns: []column{number("#"), text("part"), number("cost\nUSD")}}
	tb.row("1", "slate|48", "2345.00")
	tb.row("10", "2 x slate\n1 x gust", "45.00\n+1.50")
	for _, c := range []struct {
		name   string
		render func() (string, error)
		want   string
	}{
		{"screen", func() (string, error) { return tb.screen(Width) }, "" +
			" #  part          cost\n" +
			"                   USD\n" +
			"----------------------\n" +
			" 1  slate|48   2345.00\n" +
			"10  2 x slate    45.00\n" +
			"    1 x gust     +1.50\n"},
		{"markdown", tb.markdown, "" +
			`| \# | part                  |       cost USD |` + "\n" +
			"|---:|:----------------------|---------------:|\n" +
			`|  1 | slate\|48             |        2345.00 |` + "\n" +
			"| 10 | 2 x slate<br>1 x gust | 45.00<br>+1.50 |\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := c.render()
			if err != nil {
				t.Fatal(err)
			}
			if got != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
			}
		})
	}
}

// A table that is a little too wide draws its columns together before it breaks a part's name in two; a
// table of prose keeps its columns apart.
func TestTableTooWideDrawsTogether(t *testing.T) {
	for _, c := range []struct {
		name   string
		second column
		want   int
	}{
		{"with numbers", number("A"), narrowGap},
		{"prose", text("A"), wideGap},
	} {
		t.Run(c.name, func(t *testing.T) {
			tb := table{columns: []column{text("part"), c.second}}
			tb.row(strings.Repeat("x", Width), "1")
			if _, _, gap, _ := tb.fitted(Width); gap != c.want {
				t.Errorf("%d spaces between columns, want %d", gap, c.want)
			}
		})
	}
}

func TestWrap(t *testing.T) {
	for _, c := range []struct {
		name, line string
		width      int
		want       string
	}{
		{"fits", "a b", 3, "a b"},
		{"keeps spaces where it fits", "  a", 3, "  a"},
		{"at a space", "one two three", 8, "one two/three"},
		{"after a hyphen", "alpha-beta-gamma", 12, "alpha-beta-/gamma"},
		{"anywhere", "abcdefgh", 3, "abc/def/gh"},
		{"wide letters count two", "電池電池", 4, "電池/電池"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := strings.Join(wrap(c.line, c.width), "/"); got != c.want {
				t.Errorf("wrap(%q, %d) = %q, want %q", c.line, c.width, got, c.want)
			}
		})
	}
}

// Wrapping loses no letter and keeps to the width, however the text is made.
func TestWrapKeepsEveryLetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line := rapid.StringMatching(`[a-z -]{0,60}`).Draw(t, "line")
		width := rapid.IntRange(1, 20).Draw(t, "width")
		lines := wrap(line, width)
		if got, want := strings.Join(lines, ""), line; strings.ReplaceAll(got, " ", "") != strings.ReplaceAll(want, " ", "") {
			t.Fatalf("wrap(%q, %d) = %q", line, width, lines)
		}
		for _, l := range lines {
			if len(l) > width {
				t.Fatalf("wrap(%q, %d) has %q", line, width, l)
			}
		}
	})
}
