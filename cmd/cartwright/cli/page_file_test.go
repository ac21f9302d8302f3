package cli

import (
	"context"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cartwright/scenarios"
)

// A page is not written as one file where its name does not say HTML, where there is no folder for it, or where the
// scenario has mistakes; these are told as every command tells them.
func TestAPageThatIsNotWritten(t *testing.T) {
	t.Chdir(t.TempDir())
	dir := copyDemo(t, "star-party")
	file := filepath.Join(dir, scenarios.FileName)
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	wrong := strings.Replace(string(text), "autonomy:", "autonomie:", 1)
	if err := os.WriteFile(file, []byte(wrong), 0o666); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{"star-party", "--file", "cart.txt"}, "--file is cart.txt, which does not say HTML"},
		{[]string{"star-party", "--file", ""}, "--file has to name a file to write"},
		{[]string{"star-party", "--file", "none/cart.html"}, "there is no folder none"},
		{[]string{dir, "--file", "cart.html"}, "star-party/scenario.yaml:"},
	} {
		var told strings.Builder
		code := (Program{}).Run(context.Background(), append([]string{"page"}, c.args...), strings.NewReader(""), io.Discard, &told)
		if code != codeInput || !strings.Contains(filepath.ToSlash(told.String()), c.want) {
			t.Errorf("%q ended with %d: %s", c.args, code, told.String())
		}
	}
	if _, err := os.Stat("cart.html"); err == nil {
		t.Error("a file was written")
	}
}
