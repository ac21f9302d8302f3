package page

import (
	"bytes"
	"fmt"
	"html/template"
	"net/http"
	"strconv"
	"sync"

	"cartwright/catalog/problem"
	"cartwright/scenarios"
)

// templates are parsed once.
var templates = sync.OnceValues(func() (*template.Template, error) { return template.ParseFS(assets, "html/*.html") })

// render fills a template.
func render(name string, data any) (string, error) {
	t, err := templates()
	if err != nil {
		return "", err
	}
	var b bytes.Buffer
	if err := t.ExecuteTemplate(&b, name, data); err != nil {
		return "", err
	}
	return b.String(), nil
}

// shown is what a tab shows: everything else about it is the same in all.
type shown struct {
	Number   int                 `json:"number"`
	Name     string              `json:"name"`
	Dirty    bool                `json:"dirty"`
	CanUndo  bool                `json:"canUndo"`
	Planning bool                `json:"planning"`
	Status   string              `json:"status"`
	Notice   string              `json:"notice"`
	Mistakes []mistake           `json:"mistakes"`
	Loose    []string            `json:"loose"`
	Prices   map[string][]string `json:"prices"`
	Forms    string              `json:"forms,omitempty"` // HTML
	// Results is the answer as HTML, left out where the tab has it already: it says which by Key.
	Results string `json:"results,omitempty"`
	Key     string `json:"key"`
}

// mistake is one mistake in the draft, in the words of the commands, and the field that it is about.
type mistake struct {
	Path string `json:"path"`
	Text string `json:"text"`
}

// state tells a tab what there is.
func (s *session) state(w http.ResponseWriter, r *http.Request) {
	out, err := s.shown(r)
	if err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	writeJSON(w, out)
}

// shown gathers what a tab shows, as its address asks for it.
func (s *session) shown(r *http.Request) (*shown, error) {
	rank := func(key string, least int) int {
		n, err := strconv.Atoi(r.URL.Query().Get(key))
		if err != nil {
			return least
		}
		return max(least, min(n, 1<<20))
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	out := &shown{
		Number: s.number, Dirty: s.dirty(), CanUndo: len(s.undo) > 0, Planning: s.planning, Notice: s.notice,
		Mistakes: []mistake{}, Loose: append([]string{}, s.files.Store.Loose()...), Prices: map[string][]string{},
	}
	if s.opened.scenario != nil {
		out.Name = s.opened.scenario.Name
	}
	values, err := scenarios.ValuesOf(s.now.scenario, s.files.Scenario)
	if err != nil {
		values = map[string]string{}
	}
	for _, p := range s.opened.mistakes {
		out.Mistakes = append(out.Mistakes, mistake{Path: s.pathAt(p.Pos, values), Text: p.Error()})
	}
	for _, p := range s.prices {
		path := pathOfLimit(p.Limit)
		out.Prices[path] = append(out.Prices[path], p.Step+": "+p.Cost)
	}
	out.Status = s.status()
	if r.URL.Query().Get("forms") != "" {
		if out.Forms, err = render("forms.html", s.forms(values)); err != nil {
			return nil, err
		}
	}
	show, a, b := rank("show", 1)-1, rank("a", 0)-1, rank("b", 0)-1
	out.Key = fmt.Sprint(s.answers, show, a, b)
	if r.URL.Query().Get("have") == out.Key {
		return out, nil
	}
	if s.shownKey != out.Key {
		html, err := s.results(show, a, b)
		if err != nil {
			return nil, err
		}
		s.shownKey, s.shownHTML = out.Key, html
	}
	out.Results = s.shownHTML
	return out, nil
}

// status says how far planning is, in a sentence. The lock is held.
func (s *session) status() string {
	switch n := len(s.opened.mistakes); {
	case n == 1:
		return "1 mistake; the plan below is from before it."
	case n > 1:
		return fmt.Sprintf("%d mistakes; the plan below is from before them.", n)
	case s.stopped:
		return "Stopped. The plan below may be from before the last change."
	case s.planning:
		return "Planning…"
	case s.answer == nil:
		return "No plan yet."
	case len(s.answer.Plans) == 0:
		return "No plan meets all limits."
	}
	return fmt.Sprintf("%d plans ranked; the first costs %s %s.", len(s.answer.Plans), s.answer.Plans[0].Cost, s.of.scenario.Currency)
}

// pathAt returns the path of the value that stands at a place, "" where none does.
func (s *session) pathAt(pos problem.Pos, values map[string]string) string {
	if s.opened.scenario == nil || pos.File != s.files.Scenario {
		return ""
	}
	for path := range values {
		if s.opened.scenario.Pos(path) == pos {
			return path
		}
	}
	return ""
}

// results is the HTML of the answer: ranking, comparison and the plan that is looked at. The lock is held.
func (s *session) results(show, a, b int) (string, error) {
	data := struct {
		None    []string
		Plans   []row
		Show    int
		Compare []compared
		A, B    int
		Report  template.HTML
	}{Show: show + 1, A: a + 1, B: b + 1}
	if s.answer == nil {
		return render("results.html", data)
	}
	data.None = s.answer.None
	data.Plans = rows(s.answer.Plans, s.of.scenario)
	if n := len(data.Plans); n > 0 {
		show = min(show, n-1)
		data.Show = show + 1
		body, err := s.planner.Report(s.of.scenario, s.of.catalog, s.answer, show).Body()
		if err != nil {
			return "", err
		}
		data.Report = template.HTML(body) // made by the report's own templates
		if a >= 0 && a < n && b >= 0 && b < n && a != b {
			data.Compare = compare(&s.answer.Plans[a], &s.answer.Plans[b], s.of.scenario)
		}
	}
	return render("results.html", data)
}
