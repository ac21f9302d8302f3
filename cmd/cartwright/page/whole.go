package page

import (
	"context"
	"html/template"
	"net/http"

	"cartwright/cmd/cartwright/report"
)

// servedHead is what leads to styles and script where the page is served.
const servedHead template.HTML = `<link rel="stylesheet" href="report.css">
<link rel="stylesheet" href="page.css">
<script src="page.js" defer></script>`

// page serves the page itself.
func (s *session) page(w http.ResponseWriter, r *http.Request) {
	text, err := s.whole(r, servedHead, "")
	if err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	send(w, []byte(text))
}

// whole returns the page as its address asks for it. Head leads to styles and script; foot stands last.
func (s *session) whole(r *http.Request, head, foot template.HTML) (string, error) {
	r.URL.RawQuery += "&forms=1"
	data, err := s.shown(r)
	if err != nil {
		return "", err
	}
	q := r.URL.Query()
	buy := append(q["buy"], "", "")[:2]
	return render("page.html", struct {
		*shown
		Head, Foot             template.HTML
		FormsHTML, ResultsHTML template.HTML // both made by our own templates
		Buy                    []string
		Choosing               bool
		Example                string
	}{data, head, foot, template.HTML(data.Forms), template.HTML(data.Results), buy, buy[0] != "" || buy[1] != "", s.exampleBattery()})
}

// Still returns the page before anything is planned, with what a page that is one file has in its head and at its foot.
func (p *Page) Still(head, foot template.HTML) (string, error) {
	s := &session{planner: p.Planner, files: p.Files, ctx: context.Background()}
	if err := s.read(); err != nil {
		return "", err
	}
	s.opened = s.files.open(s.now, s.planner.Check)
	s.planning = true
	r, err := http.NewRequest(http.MethodGet, "/", nil)
	if err != nil {
		return "", err
	}
	return s.whole(r, head, foot)
}

// Parts returns the texts that the page is made of beside its HTML.
func Parts() (styles []string, script string, err error) {
	drawn, err := report.Style()
	if err != nil {
		return nil, "", err
	}
	style, err := assets.ReadFile("html/page.css")
	if err != nil {
		return nil, "", err
	}
	text, err := assets.ReadFile("html/page.js")
	return []string{drawn, string(style)}, string(text), err
}

// exampleBattery names a battery, as an example of what may be bought.
func (s *session) exampleBattery() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.opened.catalog == nil || len(s.opened.catalog.Batteries) == 0 {
		return "of a battery"
	}
	return s.opened.catalog.Batteries[0].ID
}

// reportStyle serves the style sheet that a report has within it.
func reportStyle(w http.ResponseWriter, _ *http.Request) {
	text, err := report.Style()
	if err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "text/css; charset=utf-8")
	send(w, []byte(text))
}
