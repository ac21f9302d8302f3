package shop

import (
	"bytes"
	"encoding/base64"
	"regexp"
	"strings"
	"testing"
	"time"

	"cartwright/cmd/cartwright/page"
	"cartwright/cmd/cartwright/page/files"
	"cartwright/cmd/cartwright/page/planner"
	"cartwright/scenarios"
)

// written writes a demo, its name changed, with a planner that is none.
func written(t *testing.T, name string) string {
	t.Helper()
	kept, err := files.Demo("cider-shed")
	if err != nil {
		t.Fatal(err)
	}
	about := page.Files{Scenario: "cider-shed/" + scenarios.FileName, Store: kept}
	bundle, err := about.Bundle()
	if err != nil {
		t.Fatal(err)
	}
	text := bundle.Files[bundle.Scenario]
	bundle.Files[bundle.Scenario] = bytes.Replace(text, []byte("name: Cider shed"), []byte("name: "+name), 1)
	if bytes.Equal(text, bundle.Files[bundle.Scenario]) {
		t.Fatal("the demo is named otherwise")
	}
	engine := &Engine{Planner: []byte("code"), Script: []byte("// Go's licence\nclass Go {}")}
	html, err := Write(bundle, &planner.Planner{Today: time.Now}, engine)
	if err != nil {
		t.Fatal(err)
	}
	return string(html)
}

// The file holds all it needs, asks nothing elsewhere, and its policy names each script and style that is in it.
func TestWhatIsInTheFile(t *testing.T) {
	html := written(t, "A cart")
	for _, want := range []string{"Go's licence", base64.StdEncoding.EncodeToString([]byte("code")), `"scenario":"cider-shed/scenario.yaml"`, "<title>A cart: cartwright</title>"} {
		if !strings.Contains(html, want) {
			t.Errorf("%q is not in it", want)
		}
	}
	if found := regexp.MustCompile(`(src|href)="[^"#d][^"]*"|https?://[^"' ]*`).FindAllString(html, -1); len(found) > 0 {
		t.Errorf("it leads elsewhere: %q", found)
	}
	policy := regexp.MustCompile(`Content-Security-Policy" content="([^"]*)"`).FindStringSubmatch(html)
	if policy == nil || !strings.HasPrefix(policy[1], "default-src 'none';") || strings.Contains(policy[1], "connect-src") || strings.Contains(policy[1], "unsafe-inline") {
		t.Fatalf("the policy is %q", policy)
	}
	for _, kind := range []string{"script", "style"} {
		inside := regexp.MustCompile(`(?s)<`+kind+`>(.*?)</`+kind+`>`).FindAllStringSubmatch(html, -1)
		if len(inside) != 2 {
			t.Errorf("%d of %s", len(inside), kind)
		}
		for _, text := range inside {
			if !strings.Contains(policy[1], hash(text[1])) {
				t.Errorf("the policy does not name a %s: %.60s", kind, text[1])
			}
		}
	}
}

// Whatever the files say, none of it becomes a part of the page.
func TestNothingOfTheFilesBecomesAScript(t *testing.T) {
	const evil = `"</script><script>alert(1)</script><!--"`
	html := written(t, evil)
	if strings.Contains(html, "<script>alert") || strings.Contains(html, "<!--\"") {
		t.Error("it is in the page as it stands")
	}
	if !strings.Contains(html, "&lt;script&gt;alert(1)") {
		t.Error("the name is not shown")
	}
	var f foot
	f.script("a</SCRIPT >b")
	if f.err == nil {
		t.Error("a script that ends itself is taken")
	}
}

// The same is written the same.
func TestTheSameIsWrittenTheSame(t *testing.T) {
	first := written(t, "A cart")
	if again := written(t, "A cart"); again != first {
		t.Error("it differs")
	}
}
