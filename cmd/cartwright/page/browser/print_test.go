package browser

import (
	"context"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/cdp"
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

// A report prints on A4 and on Letter: each section on the page where it begins, nothing cut off at the side, as
// many pages as it has sections and no empty ones among them.
func TestAReportPrints(t *testing.T) {
	b := browse(t, "file://"+reported(t, "star-party"), 1000, 1000)
	b.until("read", "document.readyState === 'complete'")
	b.quiet()
	for name, size := range papers {
		var printed []byte
		b.do(chromedp.ActionFunc(func(ctx context.Context) error {
			var err error
			printed, _, err = cdppage.PrintToPDF().WithPaperWidth(size[0]).WithPaperHeight(size[1]).WithPreferCSSPageSize(false).
				Do(cdp.WithExecutor(ctx, chromedp.FromContext(ctx).Target))
			return err
		}))
		pages := len(regexp.MustCompile(`/Type\s*/Page[^s]`).FindAll(printed, -1))
		// What to buy, the cart, the wiring, the shopping, what to cut, labels, limits and
		// alternatives, day, costs, cautions and sources.
		if pages < 9 || pages > 15 {
			t.Errorf("%s: %d pages", name, pages)
		}
		if folder := os.Getenv("SHOTS"); folder != "" {
			if err := os.WriteFile(filepath.Join(folder, "report-"+name+".pdf"), printed, 0o666); err != nil {
				t.Error(err)
			}
		}
	}
}

// On the screen a report is within the width of a phone; what is wider is scrolled in its own place.
func TestAReportOnAPhone(t *testing.T) {
	b := browse(t, "file://"+reported(t, "star-party"), 500, 900)
	b.do(chromedp.EmulateViewport(390, 844))
	b.until("nothing is wider than the phone", "document.readyState === 'complete' && document.documentElement.scrollWidth <= 391")
	b.quiet()
}
