package scenarios_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"cartwright/scenarios"
)

// plain is a scenario with nothing optional in it; tests change it line by line.
const plain = `name: Test cart
rules: nec
bus: {nominal: 48 V, low: 46 V, high: 58.4 V}
loads:
  - {name: lamp, watts: 60 W}
autonomy: 18 h
cart:
  wheelbase: 40 in
  track: 24 in
  frame: {mass: 80 lb, height: 14 in}
  shelves:
    - {name: lower, elevation: 6 in, length: 40 in, depth: 20 in, clear_height: 10 in}
  backboard: {elevation: 30 in}
`

// openText reads a scenario from text, as the file cart/scenario.yaml, with other files beside it given as
// name and text in turn.
func openText(text string, others ...string) (*scenarios.Scenario, error) {
	files := fstest.MapFS{"cart/scenario.yaml": {Data: []byte(text)}}
	for i := 0; i < len(others); i += 2 {
		files["cart/"+others[i]] = &fstest.MapFile{Data: []byte(others[i+1])}
	}
	return scenarios.OpenFS(files, "cart")
}

// changed returns plain with each old text replaced by the new one; old must be there. An empty old appends
// new at the end.
func changed(t *testing.T, oldNew ...string) string {
	t.Helper()
	text := plain
	for i := 0; i < len(oldNew); i += 2 {
		if oldNew[i] == "" {
			text += oldNew[i+1] + "\n"
			continue
		}
		if !strings.Contains(text, oldNew[i]) {
			t.Fatalf("the plain scenario has no %q", oldNew[i])
		}
		text = strings.Replace(text, oldNew[i], oldNew[i+1], 1)
	}
	return text
}

// expect fails the test unless err says exactly want.
func expect(t *testing.T, err error, want string) {
	t.Helper()
	switch {
	case err == nil:
		t.Errorf("no error, want\n%s", want)
	case err.Error() != want:
		t.Errorf("got error\n%s\nwant\n%s", err, want)
	}
}
