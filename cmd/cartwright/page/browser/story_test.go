package browser

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"cartwright/scenarios"
)

// The story of README's first page, by clicks: a demo is planned, a limit moved, plans are compared, one is bought,
// a part is sold, and all of it is taken back.
func TestTheStoryOfAnEvening(t *testing.T) {
	b := browse(t, served(t, "cider-shed"), 1400, 1000)
	b.planned()
	first, second := b.cost(1), b.cost(2)
	if first == "" || first == second || !strings.Contains(b.text("#buy"), first) {
		t.Errorf("the first plan costs %q, the second %q; what to buy: %q", first, second, b.text("#buy"))
	}
	b.until("what a step of the mass costs", "document.getElementById('p-limits.mass').innerText.includes('lb')")
	b.shot("page-demo")

	// Two plans beside each other; the address says so, and back and reload keep to it.
	b.click(`input[name=a][value="1"]`)
	b.click(`input[name=b][value="2"]`)
	b.until("the comparison", "document.getElementById('comparing')")
	if got := b.text(".compare"); !strings.Contains(got, first) || !strings.Contains(got, second) || !strings.Contains(got, "+") {
		t.Errorf("compared: %q", got)
	}
	b.do(chromedp.Reload())
	b.planned()
	b.until("the comparison after a reload", "document.getElementById('comparing') && document.querySelector('input[name=b][value=\"2\"]').checked")
	b.click(`[data-show="2"]`)
	b.until("plan 2", "document.querySelector('#buy').innerText.includes('"+second+"')")
	b.do(chromedp.NavigateBack())
	b.until("plan 1 again", "document.querySelector('#buy').innerText.includes('"+first+"')")

	// The reserve's slider, by the keyboard alone: two steps to the right, and the plan costs more.
	b.do(chromedp.Focus(`document.getElementById("s-limits.reserve")`, chromedp.ByJSPath), chromedp.KeyEvent(kb.ArrowRight), chromedp.KeyEvent(kb.ArrowRight))
	b.until("12 % is planned", "document.getElementById('f-limits.reserve').value === '12 %' && !document.querySelector('#undo').disabled && "+
		"document.getElementById('progress').hidden")
	b.click("#undo")
	b.until("10 % again", "document.getElementById('f-limits.reserve').value === '10 %'")
	b.planned()

	// Bought, sold, and taken back.
	b.until("plan 1", "document.querySelector('#buy').innerText.includes('"+first+"')")
	owned := b.count("[data-sold]")
	b.click(`[data-bought="1"]`)
	b.until("what is bought is owned", "document.querySelectorAll('[data-sold]').length > "+owned)
	b.planned()
	b.until("a plan that buys less", "!document.querySelector('#buy').innerText.includes('"+first+"')")
	b.click("#undo")
	b.until("not bought", "document.querySelectorAll('[data-sold]').length == "+owned)
	b.do(chromedp.Evaluate("window.prompt = () => '30'", nil))
	b.click(`[data-sold="outlet-15"]`)
	b.until("what is sold is not owned", `!document.querySelector('[data-sold="outlet-15"]')`)
	b.click("#undo")
	b.until("owned again", `document.querySelector('[data-sold="outlet-15"]')`)
	b.quiet()
}

// A wrong value is told in the words that the file's mistake has, at its field; the last plan stays; what is right
// again is saved, and the file keeps its comments.
func TestTypedWrongThenRightThenSaved(t *testing.T) {
	folder := newCart(t)
	file := filepath.Join(folder, scenarios.FileName)
	before, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	b := browse(t, served(t, folder), 1400, 1000)
	b.planned()
	cost := b.text("#buy")
	b.set("f-limits.mass", "heavy")
	b.until("the mistake", "document.getElementById('f-limits.mass').getAttribute('aria-invalid') === 'true' && "+
		"document.getElementById('e-limits.mass').innerText.includes('heavy')")
	wrong := strings.Replace(string(before), "mass: 500 lb ", "mass: heavy ", 1)
	_, alone := scenarios.OpenText(file, []byte(wrong), nil)
	if told := b.text(`[id="e-limits.mass"]`); alone == nil || strings.TrimSpace(told) == "" || !strings.Contains(alone.Error(), told) {
		t.Errorf("the page says %q, the file %v", told, alone)
	}
	if now := b.text("#buy"); now != cost {
		t.Errorf("the last plan became %q", now)
	}
	b.shot("page-wrong")
	b.set("f-limits.mass", "480 lb")
	b.until("right again", "!document.getElementById('f-limits.mass').hasAttribute('aria-invalid')")
	b.planned()
	b.click("#save")
	b.until("saved", "document.querySelector('#notice').innerText.startsWith('Saved') && document.querySelector('#save').disabled")
	after, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if want := strings.Replace(string(before), "mass: 500 lb ", "mass: 480 lb ", 1); string(after) != want {
		t.Errorf("saved is\n%s", after)
	}
	b.quiet()
}

// What somebody else writes meanwhile is told of, and not overwritten.
func TestAFileThatChangesOutside(t *testing.T) {
	folder := newCart(t)
	file := filepath.Join(folder, scenarios.FileName)
	b := browse(t, served(t, folder), 1400, 1000)
	b.planned()
	b.set("f-limits.mass", "480 lb")
	b.until("something to save", "!document.querySelector('#save').disabled")
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	theirs := strings.Replace(string(text), "name: My cart", "name: Their cart", 1)
	if err := os.WriteFile(file, []byte(theirs), 0o666); err != nil {
		t.Fatal(err)
	}
	b.until("it is told", "document.querySelector('#notice').innerText.includes('changed outside')")
	b.click("#save")
	b.until("it is not overwritten", "document.querySelector('#notice').innerText.includes('nothing was written')")
	if now, _ := os.ReadFile(file); string(now) != theirs {
		t.Errorf("their file is\n%s", now)
	}
	b.click("#reload")
	b.until("their text is shown", "document.querySelector('#name').innerText === 'Their cart' && document.getElementById('f-limits.mass').value === '500 lb'")
	b.quiet()
}

// Two tabs show the same draft: what is changed in one is in the other.
func TestTwoTabs(t *testing.T) {
	address := served(t, "star-party")
	b := browse(t, address, 1400, 1000)
	b.planned()
	other := b.another(address)
	other.planned()
	b.set("f-autonomy", "30 h")
	b.until("planned", "!document.querySelector('#undo').disabled")
	other.until("the other tab follows", "document.getElementById('f-autonomy').value === '30 h'")
	other.click("#undo")
	b.until("and the first again", "document.getElementById('f-autonomy').value !== '30 h' && document.querySelector('#undo').disabled")
	b.quiet()
	other.quiet()
}

// A long search shows how far it is, and can be stopped; what was found stays.
func TestStoppedInMidSearch(t *testing.T) {
	folder := newCart(t)
	file := filepath.Join(folder, scenarios.FileName)
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	long := strings.Replace(string(text), "  plans: 10 ", "  plans: 1000 ", 1)
	if err := os.WriteFile(file, []byte(long), 0o666); err != nil {
		t.Fatal(err)
	}
	b := browse(t, served(t, folder), 1400, 1000)
	b.until("the first plan, while others are looked for", "document.querySelector('#buy') && !document.getElementById('progress').hidden")
	b.until("how far it is", "document.querySelector('#far').innerText.includes('looked into')")
	cost := b.text("#buy")
	b.click("#stop")
	b.until("stopped", "document.getElementById('progress').hidden && document.querySelector('#status').innerText.startsWith('Stopped')")
	if now := b.text("#buy"); now != cost {
		t.Errorf("the plan became %q, was %q", now, cost)
	}
	// A further change plans again.
	b.set("f-autonomy", "11 h")
	b.until("planning again", "!document.querySelector('#status').innerText.startsWith('Stopped')")
	b.quiet()
}

// A part's price is changed in the table, and the plan follows.
func TestAPriceIsChanged(t *testing.T) {
	folder := newCart(t)
	b := browse(t, served(t, folder), 1400, 1000)
	b.planned()
	b.do(chromedp.SetValue("#kind", "inverters", chromedp.ByQuery), chromedp.Evaluate("document.getElementById('kind').dispatchEvent(new Event('change', {bubbles: true}))", nil))
	b.until("the table", "document.querySelector('#parts table')")
	cost := b.text("#buy")
	b.do(chromedp.Evaluate(`(() => {
		const bought = document.querySelector('.buy').innerText;
		const row = [...document.querySelectorAll('#parts tbody tr')].find((r) => bought.includes(r.querySelector('input').value));
		const column = [...document.querySelectorAll('#parts th')].findIndex((h) => h.innerText === 'price');
		const cell = row.querySelectorAll('input')[column];
		cell.value = String(Number(cell.value) + 1);
		cell.dispatchEvent(new Event('input', {bubbles: true}));
	})()`, nil))
	b.until("the plan costs more", "!document.querySelector('#save').disabled && document.querySelector('#buy').innerText !== "+quoted(cost))
	// A part that is not known yet is added; what it lacks is told in the words of the file.
	b.do(chromedp.Evaluate("document.getElementById('new-id').value = 'inv-new'", nil))
	b.click("#add-row")
	b.until("what the part lacks is told", "document.getElementById('mistakes').innerText.includes('inverters.csv')")
	b.click("#undo")
	b.until("it is gone", "document.getElementById('mistakes').innerText === '' && ![...document.querySelectorAll('#parts input')].some((i) => i.value === 'inv-new')")
	b.quiet()
}

// The whole page is there for who has a phone, and nothing stands beyond its edge; dark and light.
func TestOnAPhone(t *testing.T) {
	b := browse(t, served(t, "lantern-market"), 390, 844)
	b.do(emulation.SetDeviceMetricsOverride(390, 844, 2, true), emulated("dark"), chromedp.Reload())
	b.planned()
	b.until("nothing is wider than the phone", "document.documentElement.scrollWidth <= 391")
	b.shot("page-phone")
	b.quiet()
}

// emulated is a person who prefers light or dark.
func emulated(scheme string) chromedp.Action {
	return emulation.SetEmulatedMedia().WithFeatures([]*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}})
}

// When the program ends, the page says so.
func TestTheProgramEnds(t *testing.T) {
	address, end := servedUntil(t, "star-party")
	b := browse(t, address, 1400, 1000)
	b.planned()
	end()
	b.until("the page says so", "document.body.classList.contains('gone') && document.querySelector('#save').disabled")
}
