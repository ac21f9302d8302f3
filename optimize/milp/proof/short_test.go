package proof

import (
	"os"
	"strings"
	"testing"
)

// The checker can be read in one sitting: 250 lines without comments and blank lines.
func TestCheckerIsShort(t *testing.T) {
	lines := 0
	for _, name := range []string{"check.go", "box.go"} {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(string(text)) {
			if line = strings.TrimSpace(line); line != "" && !strings.HasPrefix(line, "//") {
				lines++
			}
		}
	}
	if lines > 250 {
		t.Errorf("%d lines", lines)
	}
}
