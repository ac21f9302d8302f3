package browser

import (
	"bytes"
	"context"
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"

	"cartwright/cmd/cartwright/cli"
)

// inOneFile writes the page of a scenario as one file and returns its address. The planner is built by the first.
func inOneFile(t *testing.T, scenario string) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "cart.html")
	var told strings.Builder
	if code := (cli.Program{}).Run(context.Background(), []string{"page", scenario, "--file", file}, strings.NewReader(""), io.Discard, &told); code != 0 {
		t.Fatalf("page --file ended with %d: %s", code, told.String())
	}
	info, err := os.Stat(file)
	if err != nil {
		t.Fatal(err)
	}
	const most = 12_000_000 // bytes
	t.Logf("%s: %d bytes", scenario, info.Size())
	if info.Size() >= most {
		t.Errorf("the file of %s has %d bytes", scenario, info.Size())
	}
	return "file://" + file
}

// alone fails where a tab asks a network for anything, from now on. What a page makes of its own (blob:, data:) is none.
func (b *tab) alone() {
	chromedp.ListenTarget(b.Context, func(e any) {
		if e, ok := e.(*network.EventRequestWillBeSent); ok {
			if u := e.Request.URL; !strings.HasPrefix(u, "file:") && !strings.HasPrefix(u, "blob:") && !strings.HasPrefix(u, "data:") {
				b.mu.Lock()
				b.wrong = append(b.wrong, "asked for "+u)
				b.mu.Unlock()
			}
		}
	})
	b.do(network.Enable())
}

// seconds removes from JSON how long it took, which differs from run to run.
func seconds(text []byte) []byte {
	return regexp.MustCompile(`"seconds": [0-9.e-]+`).ReplaceAll(text, []byte(`"seconds": 0`))
}

// plansJSON returns what the page gives as JSON.
func (b *tab) plansJSON() []byte {
	b.t.Helper()
	var text string
	b.do(chromedp.Evaluate(`door.ask('plans.json').then((a) => a.text())`, &text, awaited))
	return []byte(text)
}

// A demo in one file plans by itself, soon, asks no network, and comes to the same plans as the program, to the byte.
func TestOneFilePlansAsTheProgramDoes(t *testing.T) {
	const bound = 20 * time.Second // on a busy machine; DEVELOPERS.md has what it takes on a quiet one
	for _, demo := range []string{"cider-shed", "lantern-market", "star-party", "goat-dairy"} {
		b := browse(t, "about:blank", 1400, 1000)
		b.alone()
		b.do(chromedp.Navigate(inOneFile(t, demo)))
		b.until("a plan", "document.querySelector('.ranking tbody tr')")
		var took float64
		b.do(chromedp.Evaluate("performance.now()", &took))
		t.Logf("%s: the first plan %.0f ms after opening", demo, took)
		if took > float64(bound.Milliseconds()) {
			t.Errorf("%s: the first plan came after %.0f ms", demo, took)
		}
		b.planned()
		var want bytes.Buffer
		if code := (cli.Program{}).Run(context.Background(), []string{"plan", demo, "--format", "json"}, strings.NewReader(""), &want, io.Discard); code != 0 {
			t.Fatalf("plan ended with %d", code)
		}
		got := b.plansJSON()
		if !json.Valid(got) || !bytes.Equal(seconds(got), seconds(want.Bytes())) {
			t.Errorf("%s: other plans than the program's%s", demo, firstDifference(seconds(got), seconds(want.Bytes())))
		}
		b.quiet()
	}
}

// firstDifference shows where two texts part.
func firstDifference(a, b []byte) string {
	n := 0
	for n < min(len(a), len(b)) && a[n] == b[n] {
		n++
	}
	from := max(0, n-80)
	return ": …" + string(a[from:min(len(a), n+80)]) + "… against …" + string(b[from:min(len(b), n+80)]) + "…"
}

var _ = sync.OnceFunc
var _ = browser.SetDownloadBehavior
