package browser

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// Two purchases are put side by side by the keyboard alone, with the figures of the command; the address holds them,
// so that reload keeps them; a part there is not is told with the nearest name.
func TestTwoPurchasesSideBySide(t *testing.T) {
	b := browse(t, served(t, "cider-shed"), 1400, 1000)
	b.planned()
	b.do(chromedp.Focus("#choices summary", chromedp.ByQuery), chromedp.KeyEvent(kb.Enter))
	b.until("it is open", "document.getElementById('choices').open")
	b.set("buy-1", "2 lfp-rack-5")
	b.set("buy-2", "1 lfp-floor-16"+kb.Enter)
	b.until("side by side", "document.querySelectorAll('#chosen .compare thead th').length === 3")
	told := b.text("#chosen")
	for _, want := range []string{"2 x lfp-rack-5", "1 x lfp-floor-16", "12.13", "16.74", "4207.71", "520.47", "nothing bought", "cannot be"} {
		if !strings.Contains(told, want) {
			t.Errorf("it does not say %q: %s", want, told)
		}
	}
	b.shot("page-choices")
	b.do(chromedp.Reload())
	b.planned()
	b.until("as before", "document.querySelectorAll('#chosen .compare thead th').length === 3 && document.getElementById('buy-2').value === '1 lfp-floor-16'")
	b.set("buy-1", "2 lfp-rack-55"+kb.Enter)
	b.until("the nearest name", "document.querySelector('#chosen .error') && document.querySelector('#chosen').innerText.includes('did you mean')")
	b.do(chromedp.NavigateBack())
	b.until("back", "document.querySelectorAll('#chosen .compare thead th').length === 3")
	b.quiet()
}
