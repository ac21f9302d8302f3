package browser

import (
	"context"
	"flag"
	"fmt"
	"os"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

var axe = flag.String("axe", "", "`file` axe.min.js of axe-core, to have the page looked through by it as well")

// Whatever can be pressed or typed into has a name that a screen reader reads, as the browser works it out.
func TestEveryControlHasAName(t *testing.T) {
	b := browse(t, served(t, "cider-shed"), 1400, 1000)
	b.planned()
	controls, unnamed := b.controls()
	if len(unnamed) > 0 {
		t.Errorf("without a name: %q", unnamed)
	}
	if controls < 100 {
		t.Errorf("only %d controls were seen", controls)
	}
	var doubles []string
	b.do(chromedp.Evaluate(`(() => {
		const all = [...document.querySelectorAll('[id]')].map((e) => e.id);
		return all.filter((id, i) => all.indexOf(id) !== i);
	})()`, &doubles))
	if len(doubles) > 0 {
		t.Errorf("ids that stand twice: %q", doubles)
	}
	b.quiet()
}

// controls returns how many controls and regions the browser tells a screen reader of, and the roles of those that have
// no name.
func (b *tab) controls() (all int, unnamed []string) {
	// Read as plain JSON: the library's own types do not know every word of newer browsers.
	var tree struct {
		Nodes []struct {
			Ignored bool  `json:"ignored"`
			Role    value `json:"role"`
			Name    value `json:"name"`
		} `json:"nodes"`
	}
	b.do(chromedp.ActionFunc(func(ctx context.Context) error {
		return cdp.Execute(cdp.WithExecutor(ctx, chromedp.FromContext(ctx).Target), "Accessibility.getFullAXTree", nil, &tree)
	}))
	for _, n := range tree.Nodes {
		if n.Ignored {
			continue
		}
		switch role := fmt.Sprint(n.Role.Value); role {
		case "button", "textbox", "slider", "radio", "checkbox", "combobox", "link", "image", "region":
			all++
			if name, _ := n.Name.Value.(string); name == "" {
				unnamed = append(unnamed, role)
			}
		}
	}
	return all, unnamed
}

// value is what the browser says of a property.
type value struct {
	Value any `json:"value"`
}

// The keyboard alone reaches every limit, and what is focused is seen to be.
func TestTheKeyboardIsEnough(t *testing.T) {
	b := browse(t, served(t, "star-party"), 1400, 1000)
	b.planned()
	reached := map[string]bool{}
	for range 40 {
		b.do(chromedp.KeyEvent(kb.Tab))
		var at struct {
			ID      string
			Outline string
		}
		b.do(chromedp.Evaluate(`({ID: document.activeElement.id, Outline: getComputedStyle(document.activeElement).outlineStyle})`, &at))
		reached[at.ID] = true
		if at.ID != "" && at.Outline == "none" {
			t.Errorf("%s has the focus, and it is not seen", at.ID)
		}
	}
	for _, id := range []string{"reload", "f-limits.mass", "s-limits.mass", "f-autonomy", "f-limits.budget"} {
		if !reached[id] {
			t.Errorf("%s was not reached", id)
		}
	}
}

// With axe-core at hand (npm pack axe-core), it finds nothing serious in the page as it comes, in the page with
// everything open and a mistake in it, on a phone, nor in a report.
func TestAxe(t *testing.T) {
	if *axe == "" {
		return // run by hand; DEVELOPERS.md says how
	}
	script, err := os.ReadFile(*axe)
	if err != nil {
		t.Fatal(err)
	}
	b := browse(t, served(t, newCart(t)), 1400, 1000)
	b.planned()
	for _, scheme := range []string{"light", "dark"} {
		b.do(emulated(scheme))
		b.axed(string(script), "the page, "+scheme)
	}
	b.click("#choices summary")
	b.set("buy-1", "1 lfp-rack-5"+kb.Enter)
	b.until("side by side", "document.querySelector('#chosen .compare')")
	b.click(`input[name=a][value="1"]`)
	b.click(`input[name=b][value="2"]`)
	b.until("the comparison", "document.getElementById('comparing')")
	b.do(chromedp.SetValue("#kind", "batteries", chromedp.ByQuery), chromedp.Evaluate("document.getElementById('kind').dispatchEvent(new Event('change', {bubbles: true}))", nil))
	b.until("the table", "document.querySelector('#parts table')")
	b.set("f-limits.mass", "heavy")
	b.until("the mistake", "document.getElementById('f-limits.mass').getAttribute('aria-invalid') === 'true'")
	b.axed(string(script), "everything open")
	b.do(chromedp.EmulateViewport(390, 844))
	b.axed(string(script), "a phone")
	b = browse(t, "file://"+reported(t, "goat-dairy"), 1000, 1000)
	b.axed(string(script), "a report")
}

// axed has axe look through what the tab shows.
func (b *tab) axed(script, where string) {
	b.t.Helper()
	var found struct {
		Passed int
		Wrong  []struct {
			ID, Impact, Help string
			Nodes            []string
		}
	}
	b.do(chromedp.Evaluate(script+`; axe.run().then((r) => ({Passed: r.passes.length, Wrong: r.violations.map((v) => (
		{ID: v.id, Impact: v.impact, Help: v.help, Nodes: v.nodes.slice(0, 3).map((n) => n.html)}))}))`, &found, awaited))
	b.t.Logf("%s: %d rules passed", where, found.Passed)
	if found.Passed < 20 {
		b.t.Errorf("%s: axe looked at next to nothing", where)
	}
	for _, f := range found.Wrong {
		b.t.Logf("%s: %s, %s: %s %.300v", where, f.Impact, f.ID, f.Help, f.Nodes)
		if f.Impact == "serious" || f.Impact == "critical" {
			b.t.Errorf("%s: %s", where, f.ID)
		}
	}
}
