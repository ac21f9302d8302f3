package browser

import (
	"context"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"cartwright/cmd/cartwright/cli"
)

// inches of the papers that reports are printed on.
var papers = map[string][2]float64{"A4": {8.27, 11.69}, "Letter": {8.5, 11}}

// reported writes the report of a scenario and returns its file.
func reported(t *testing.T, scenario string) string {
	t.Helper()
	out := filepath.Join(t.TempDir(), "cart.html")
	if code := (cli.Program{}).Run(context.Background(), []string{"report", scenario, "--out", out}, strings.NewReader(""), io.Discard, io.Discard); code != 0 {
		t.Fatalf("report ended with %d", code)
	}
	return out
}

// printed prints what a tab shows on a paper, all pages or one ("3").
func (b *tab) printed(size [2]float64, pages string) []byte {
	b.t.Helper()
	var out []byte
	b.do(chromedp.ActionFunc(func(ctx context.Context) error {
		var err error
		out, _, err = cdppage.PrintToPDF().WithPaperWidth(size[0]).WithPaperHeight(size[1]).WithPreferCSSPageSize(false).WithPageRanges(pages).
			Do(cdp.WithExecutor(ctx, chromedp.FromContext(ctx).Target))
		return err
	}))
	return out
}

// pagesOf counts the pages of a PDF.
func pagesOf(pdf []byte) int { return len(regexp.MustCompile(`/Type\s*/Page[^s]`).FindAll(pdf, -1)) }

// A report prints on A4 and on Letter: each section that says so on a page of its own, a few pages more for what is
// longer than one, none of them empty.
func TestAReportPrints(t *testing.T) {
	for _, demo := range []string{"star-party", "goat-dairy"} {
		b := browse(t, "file://"+reported(t, demo), 1000, 1000)
		b.until("read", "document.readyState === 'complete'")
		var breaks int
		b.do(emulation.SetEmulatedMedia().WithMedia("print"),
			chromedp.Evaluate(`[...document.querySelectorAll('section')].filter((s) => getComputedStyle(s).breakBefore === 'page').length`, &breaks))
		if breaks < 6 { // cart, wiring, shopping, what to cut, labels, limits and more
			t.Errorf("%s: only %d sections begin a page", demo, breaks)
		}
		b.do(chromedp.Evaluate(`document.body.insertAdjacentHTML('afterbegin', '<div id="blank" style="break-after: page; height: 1px"></div>')`, nil))
		empty := len(b.printed(papers["A4"], "1"))
		b.do(chromedp.Evaluate(`document.getElementById('blank').remove()`, nil))
		for name, size := range papers {
			whole := b.printed(size, "")
			pages := pagesOf(whole)
			t.Logf("%s on %s: %d pages, %d sections begin one", demo, name, pages, breaks)
			if pages < breaks+1 || pages > breaks+10 {
				t.Errorf("%s on %s: %d pages for %d sections", demo, name, pages, breaks+1)
			}
			for n := 1; n <= pages; n++ {
				if one := b.printed(size, strconv.Itoa(n)); pagesOf(one) != 1 || len(one) < 2*empty {
					t.Errorf("%s on %s: page %d of %d is empty: %d bytes, an empty one has %d", demo, name, n, pages, len(one), empty)
				}
			}
			if folder := os.Getenv("SHOTS"); folder != "" {
				if err := os.WriteFile(filepath.Join(folder, demo+"-"+name+".pdf"), whole, 0o666); err != nil {
					t.Error(err)
				}
			}
		}
		b.quiet()
	}
}

// On the screen a report is within the width of a phone; what is wider is scrolled in its own place.
func TestAReportOnAPhone(t *testing.T) {
	b := browse(t, "file://"+reported(t, "star-party"), 500, 900)
	b.do(chromedp.EmulateViewport(390, 844))
	b.until("nothing is wider than the phone", "document.readyState === 'complete' && document.documentElement.scrollWidth <= 391")
	b.quiet()
}
