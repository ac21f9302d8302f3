package browser

import (
	"bytes"
	"flag"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

var update = flag.Bool("update", false, "write anew what pages look like")

// What a page looks like is kept as a coarse picture: the mean shade of each cell. It tells where blocks stand and how
// dark they are, and nothing of how a machine smooths its letters or draws a slider.
const (
	cell = 16 // pixels
	// A cell differs where its shade does by more than this, of 255; so many cells in a hundred may.
	shade  = 24
	differ = 3
)

// coarse returns the mean shades of an image's cells.
func coarse(m image.Image) *image.Gray {
	size := m.Bounds().Size()
	out := image.NewGray(image.Rect(0, 0, size.X/cell, size.Y/cell))
	for y := range out.Rect.Dy() {
		for x := range out.Rect.Dx() {
			sum := 0
			for dy := range cell {
				for dx := range cell {
					sum += int(color.GrayModel.Convert(m.At(m.Bounds().Min.X+x*cell+dx, m.Bounds().Min.Y+y*cell+dy)).(color.Gray).Y)
				}
			}
			out.SetGray(x, y, color.Gray{Y: uint8(sum / (cell * cell))})
		}
	}
	return out
}

// unlike returns how many cells in a hundred differ; all of them where the sizes do.
func unlike(a, b *image.Gray) float64 {
	if a.Rect != b.Rect {
		return 100
	}
	n := 0
	for i := range a.Pix {
		if d := int(a.Pix[i]) - int(b.Pix[i]); d > shade || d < -shade {
			n++
		}
	}
	return 100 * float64(n) / float64(len(a.Pix))
}

// seen returns what is in the window, coarsely.
func (b *tab) seen() *image.Gray {
	b.t.Helper()
	var shot []byte
	b.do(chromedp.CaptureScreenshot(&shot))
	m, err := png.Decode(bytes.NewReader(shot))
	if err != nil {
		b.t.Fatal(err)
	}
	return coarse(m)
}

// looks compares what is in the window with what it looked like.
func (b *tab) looks(name string) *image.Gray {
	b.t.Helper()
	got := b.seen()
	file := filepath.Join("testdata", name+".png")
	if *update {
		var text bytes.Buffer
		if err := png.Encode(&text, got); err != nil {
			b.t.Fatal(err)
		}
		if err := os.WriteFile(file, text.Bytes(), 0o666); err != nil {
			b.t.Fatal(err)
		}
		return got
	}
	text, err := os.ReadFile(file)
	if err != nil {
		b.t.Fatalf("%v; with -update it is written", err)
	}
	m, err := png.Decode(bytes.NewReader(text))
	if err != nil {
		b.t.Fatal(err)
	}
	want, ok := m.(*image.Gray)
	if !ok {
		b.t.Fatalf("%s is not a picture of shades", file)
	}
	percent := unlike(got, want)
	b.t.Logf("%s: %.1f %% of the cells differ", name, percent)
	if percent > differ {
		b.shot(name)
		b.t.Errorf("%s: %.1f %% of the cells differ, at most %d may; see it with SHOTS=folder, keep it with -update", name, percent, differ)
	}
	return got
}

// The page looks as it did, light, dark and on a phone; and had a block moved, it would be seen.
func TestThePageLooksAsItDid(t *testing.T) {
	b := browse(t, served(t, "star-party"), 1400, 1000)
	for _, c := range []struct {
		name, scheme string
		wide, high   int64
	}{{"page-light", "light", 1400, 1000}, {"page-dark", "dark", 1400, 1000}, {"page-phone", "light", 390, 844}} {
		b.do(emulation.SetDeviceMetricsOverride(c.wide, c.high, 1, c.wide < 500), emulated(c.scheme), chromedp.Reload())
		b.planned()
		b.until("what steps cost", "document.querySelector('.price').textContent")
		got := b.looks(c.name)
		for what, style := range map[string]string{
			"a gap": "#forms, #results { padding-top: 3rem }", "no frames": "fieldset { border: 0; margin: 0 }", "larger letters": "body { zoom: 1.1 }",
		} {
			b.do(chromedp.Evaluate(`document.styleSheets[1].insertRule('@media all { `+style+` }', document.styleSheets[1].cssRules.length)`, nil))
			if percent := unlike(got, b.seen()); percent <= differ {
				t.Errorf("%s: with %s only %.1f %% of the cells differ", c.name, what, percent)
			}
			b.do(chromedp.Evaluate("document.styleSheets[1].deleteRule(document.styleSheets[1].cssRules.length - 1)", nil))
		}
	}
}

// So does a report: its first page, the cart and the one-line diagram.
func TestAReportLooksAsItDid(t *testing.T) {
	b := browse(t, "file://"+reported(t, "star-party"), 1000, 1000)
	b.do(emulation.SetDeviceMetricsOverride(1000, 1000, 1, false))
	b.until("read", "document.readyState === 'complete'")
	for name, place := range map[string]string{"report-top": "main", "report-cart": ".sheet", "report-wiring": ".sheet + .sheet"} {
		b.do(chromedp.Evaluate(`document.querySelector('`+place+`').scrollIntoView({behavior: 'instant'})`, nil))
		b.looks(name)
	}
}
