// Package browser holds the tests that drive the page, as the program serves it, with a real browser. They wait for
// what they want to see, never for a time, so that a slow machine only makes them slower.
package browser

import (
	"bufio"
	"context"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"

	"cartwright/cmd/cartwright/cli"
)

// patience is how long a test waits for what it wants to see.
const patience = 90 * time.Second

// served runs "cartwright page" on a scenario and returns its address. The page ends with the test.
func served(t *testing.T, scenario string) string {
	t.Helper()
	address, _ := servedUntil(t, scenario)
	return address
}

// servedUntil runs "cartwright page" on a scenario until end is called, at the latest with the test.
func servedUntil(t *testing.T, scenario string) (address string, end func()) {
	t.Helper()
	input, terminal := io.Pipe()
	output, written := io.Pipe()
	ended := make(chan int, 1)
	go func() {
		ended <- (cli.Program{}).Run(context.Background(), []string{"page", scenario}, input, written, io.Discard)
	}()
	end = sync.OnceFunc(func() {
		_ = terminal.Close()
		if code := <-ended; code != 0 {
			t.Errorf("the page ended with %d", code)
		}
	})
	t.Cleanup(end)
	line, err := bufio.NewReader(output).ReadString('\n')
	if err != nil {
		t.Fatal(err)
	}
	return strings.TrimSpace(line), end
}

// awaited has a script's promise waited for.
func awaited(p *runtime.EvaluateParams) *runtime.EvaluateParams { return p.WithAwaitPromise(true) }

// newCart makes a scenario with files of its own and returns its folder.
func newCart(t *testing.T) string {
	t.Helper()
	folder := filepath.Join(t.TempDir(), "my-cart")
	if code := (cli.Program{}).Run(context.Background(), []string{"new", folder}, strings.NewReader(""), io.Discard, io.Discard); code != 0 {
		t.Fatalf("new ended with %d", code)
	}
	return folder
}

// tab is an open tab and what went wrong in it.
type tab struct {
	context.Context
	t  *testing.T
	mu sync.Mutex
	// wrong holds errors of scripts and of the console.
	wrong []string
}

// browse opens an address in a new browser.
func browse(t *testing.T, address string, wide, high int) *tab {
	t.Helper()
	chromium, err := exec.LookPath("chromium")
	if err != nil {
		t.Fatal("there is no chromium; .ci/setup installs it")
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(chromium), chromedp.NoSandbox, chromedp.WindowSize(wide, high))
	all, stop := chromedp.NewExecAllocator(context.Background(), options...)
	t.Cleanup(stop)
	ctx, done := chromedp.NewContext(all)
	t.Cleanup(done)
	late, cancel := context.WithTimeout(ctx, 4*patience)
	t.Cleanup(cancel)
	return (&tab{Context: late, t: t}).open(address)
}

// another opens an address in another tab of the same browser.
func (b *tab) another(address string) *tab {
	b.t.Helper()
	ctx, done := chromedp.NewContext(b.Context)
	b.t.Cleanup(done)
	return (&tab{Context: ctx, t: b.t}).open(address)
}

// open goes to an address, and listens for errors from then on.
func (b *tab) open(address string) *tab {
	b.t.Helper()
	chromedp.ListenTarget(b.Context, func(e any) {
		b.mu.Lock()
		defer b.mu.Unlock()
		switch e := e.(type) {
		case *runtime.EventExceptionThrown:
			b.wrong = append(b.wrong, e.ExceptionDetails.Error())
		case *log.EventEntryAdded:
			if e.Entry.Level == log.LevelError {
				b.wrong = append(b.wrong, e.Entry.Text+" "+e.Entry.URL)
			}
		}
	})
	b.do(chromedp.Navigate(address))
	return b
}

// do runs actions.
func (b *tab) do(actions ...chromedp.Action) {
	b.t.Helper()
	if err := chromedp.Run(b.Context, actions...); err != nil {
		b.t.Fatalf("%v; the page says %q", err, b.text("body"))
	}
}

// text returns the text of an element, "" where there is none.
func (b *tab) text(selector string) string {
	var text string
	script := "(document.querySelector(" + quoted(selector) + ") || {innerText: ''}).innerText"
	if err := chromedp.Run(b.Context, chromedp.Evaluate(script, &text)); err != nil {
		return err.Error()
	}
	return text
}

func quoted(s string) string { return "'" + strings.ReplaceAll(s, "'", "\\'") + "'" }

// until waits for a condition, written in the page's own language.
func (b *tab) until(what, condition string) {
	b.t.Helper()
	if err := chromedp.Run(b.Context, chromedp.Poll("!!("+condition+")", nil, chromedp.WithPollingInterval(50*time.Millisecond), chromedp.WithPollingTimeout(patience))); err != nil {
		b.t.Fatalf("%s: %v; the page says %.1500q", what, err, b.text("body"))
	}
}

// planned waits until nothing is being planned and no field waits to be sent.
func (b *tab) planned() {
	b.t.Helper()
	b.until("planned", "document.readyState === 'complete' && document.getElementById('progress').hidden && "+
		"document.querySelector('.ranking')")
}

// cost returns what a plan of the ranking costs, as the page says.
func (b *tab) cost(rank int) string {
	return b.text(fmt.Sprintf("#results .ranking tbody tr:nth-child(%d) td:nth-child(3)", rank))
}

// count returns how many elements there are, as text.
func (b *tab) count(selector string) string {
	var n int
	b.do(chromedp.Evaluate("document.querySelectorAll("+quoted(selector)+").length", &n))
	return strconv.Itoa(n)
}

// click presses a button once it is there. What is made anew in between is found anew.
func (b *tab) click(selector string) {
	b.t.Helper()
	b.until("there is "+selector, "document.querySelector("+quoted(selector)+") && !document.querySelector("+quoted(selector)+").disabled")
	b.do(chromedp.Evaluate("document.querySelector("+quoted(selector)+").click()", nil))
}

// set types into a field, as a person does, and leaves it.
func (b *tab) set(id, value string) {
	b.t.Helper()
	selector := `document.getElementById("` + id + `")`
	b.do(chromedp.Evaluate(selector+".select(), "+selector+".focus()", nil), chromedp.SendKeys(selector, value, chromedp.ByJSPath))
}

// quiet fails where something went wrong in the tab.
func (b *tab) quiet() {
	b.t.Helper()
	b.mu.Lock()
	defer b.mu.Unlock()
	for _, w := range b.wrong {
		b.t.Errorf("in the browser: %s", w)
	}
}

// shot writes what the tab shows into the folder that SHOTS names, to be looked at.
func (b *tab) shot(name string) {
	folder := os.Getenv("SHOTS")
	if folder == "" {
		return
	}
	var image []byte
	b.do(chromedp.CaptureScreenshot(&image))
	if err := os.WriteFile(filepath.Join(folder, name+".png"), image, 0o666); err != nil {
		b.t.Error(err)
	}
}
