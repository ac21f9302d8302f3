// Package report writes a plan as one HTML file to print and take to the shop: what to buy, the drawings,
// the shopping list, what to cut, labels for the cables, limits, alternatives, cautions and sources. The
// file needs no network and no script. All text of the user's goes through html/template.
package report

import (
	"bytes"
	"embed"
	"fmt"
	"html/template"
	"sync"
	"time"

	"cartwright/catalog"
	"cartwright/catalog/source"
	"cartwright/cmd/cartwright/picture"
	"cartwright/cmd/cartwright/picture/harness"
	"cartwright/cmd/cartwright/picture/scene"
	"cartwright/cmd/cartwright/picture/told"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// Report is what is written.
type Report struct {
	Scenario *scenarios.Scenario
	Catalog  *catalog.Catalog
	Plans    []plan.Plan // ranked, each audited
	Show     int         // place in Plans of the plan that is written in full
	Proof    []string    // how far the ranking is proved, in sentences
	Cautions []string
	Notices  []string // what keeps batteries apart that could stand together
	Sources  []source.Source
	Tradeoff *picture.Tradeoff // nil: none
	AsOf     time.Time         // the day that prices are judged by
}

//go:embed html
var files embed.FS

// contents is what the templates are given.
type contents struct {
	Title, Language string
	Style           template.CSS
	Headline        headline
	Drawings        []drawing // of the cart and its wiring
	Shops           []shop
	Totals          []total
	Owned           []owned
	Cuts            []cutList
	Conduits        []conduitPieces
	Routes          []route
	Colours         string
	Frame           []framePiece
	Labels          []label
	Limits          []limit
	Alternatives    []alternative
	Charts          []drawing // of the day, the year and the costs
	Months          []month
	Proof, Cautions []string
	Sources         []source.Source
	Habits          int // sources that name no text
	Currency        string
	AsOf            string
}

// drawing is a picture in the report.
type drawing struct {
	Name string
	SVG  template.HTML
}

// HTML returns the report as a whole file.
func (r *Report) HTML() ([]byte, error) { return r.write("report.html") }

// Body returns what stands in the report, to be put into a page that has the rules of Style.
func (r *Report) Body() ([]byte, error) { return r.write("body.html") }

// Style returns the rules of a report.
func Style() (string, error) {
	style, err := files.ReadFile("html/style.css")
	if err != nil {
		return "", fmt.Errorf("report: %w", err)
	}
	return string(style) + scene.CSS(), nil
}

// templates are parsed once.
var templates = sync.OnceValues(func() (*template.Template, error) { return template.ParseFS(files, "html/*.html") })

// write fills one of the templates.
func (r *Report) write(name string) ([]byte, error) {
	if r.Show < 0 || r.Show >= len(r.Plans) {
		return nil, fmt.Errorf("report: there is no plan %d of %d", r.Show+1, len(r.Plans))
	}
	c, err := r.contents()
	if err != nil {
		return nil, err
	}
	t, err := templates()
	if err != nil {
		return nil, fmt.Errorf("report: %w", err)
	}
	var b bytes.Buffer
	if err := t.ExecuteTemplate(&b, name, c); err != nil {
		return nil, fmt.Errorf("report: %w", err)
	}
	return b.Bytes(), nil
}

// contents gathers all that is written.
func (r *Report) contents() (*contents, error) {
	p, u := &r.Plans[r.Show], told.UnitsOf(r.Scenario)
	q := &picture.Subject{Scenario: r.Scenario, Catalog: r.Catalog, Plan: p, Units: u}
	year, err := picture.Year(q)
	if err != nil {
		return nil, err
	}
	style, err := Style()
	if err != nil {
		return nil, err
	}
	cables := harness.Of(r.Scenario, p)
	c := &contents{
		Title: r.Scenario.Name, Currency: r.Scenario.Currency, AsOf: r.AsOf.Format(time.DateOnly),
		Style:    template.CSS(style), // our own file, and our own palette
		Headline: r.headline(p, u), Shops: r.shops(p, u), Totals: totals(p), Owned: r.owned(p, u),
		Cuts: r.cuts(cables, u), Conduits: conduits(cables, u), Routes: routes(cables), Colours: r.colours(), Frame: r.frame(u), Labels: r.labels(cables, u), Limits: limits(p, u),
		Alternatives: r.alternatives(u), Months: months(p), Proof: r.Proof, Cautions: r.Cautions,
	}
	for _, s := range r.Sources {
		if s.Source == "none" {
			c.Habits++
			continue
		}
		c.Sources = append(c.Sources, s)
	}
	c.Drawings = append(c.Drawings, inline("The cart", picture.Cart(q)))
	for _, s := range picture.Sheets(q) {
		c.Drawings = append(c.Drawings, inline("Wiring", s))
	}
	c.Charts = append(c.Charts, inline("The day and the year", year),
		inline("Costs", picture.Costs(r.Scenario.Name, r.Scenario.Currency, r.Plans, r.Tradeoff)))
	return c, nil
}

// inline returns a drawing as part of the page. Its texts were escaped where it was drawn.
func inline(name string, s *scene.Scene) drawing {
	return drawing{Name: name, SVG: template.HTML(s.Inline())}
}
