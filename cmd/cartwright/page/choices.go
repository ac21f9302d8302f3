package page

import (
	"net/http"
	"strings"
)

// maxChoices is how many purchases are put side by side.
const maxChoices = 4

// compareChoices serves purchases somebody is thinking of, side by side.
func (s *session) compareChoices(w http.ResponseWriter, r *http.Request) {
	s.mu.Lock()
	of := s.opened
	s.mu.Unlock()
	var data struct {
		*Compared
		Error string
	}
	var buy []string
	for _, text := range r.URL.Query()["buy"] {
		if text = strings.TrimSpace(text); text != "" && len(buy) < maxChoices {
			buy = append(buy, text)
		}
	}
	var err error
	switch {
	case len(of.mistakes) > 0:
		err = errMistakes
	case len(buy) > 0:
		data.Compared, err = s.planner.Compare(r.Context(), of.scenario, of.catalog, buy)
	}
	if err != nil {
		data.Error = err.Error()
	}
	html, err := render("choices.html", data)
	if err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	send(w, []byte(html))
}
