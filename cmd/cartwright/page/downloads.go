package page

import (
	"net/http"
	"slices"
)

// file serves a file that was saved and is kept nowhere else, to be downloaded.
func (s *session) file(w http.ResponseWriter, r *http.Request) {
	name := r.URL.Query().Get("name")
	if !slices.Contains(s.files.Store.Loose(), name) {
		http.NotFound(w, r)
		return
	}
	text, err := s.files.Store.Read(name)
	if err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "application/octet-stream")
	send(w, text)
}

// plansJSON serves the answer as "cartwright plan --format json" prints it.
func (s *session) plansJSON(w http.ResponseWriter, r *http.Request) {
	s.mu.Lock()
	answer, of := s.answer, s.of
	s.mu.Unlock()
	if answer == nil {
		http.NotFound(w, r)
		return
	}
	text, err := s.planner.JSON(of.scenario, of.catalog, answer)
	if err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "application/json")
	send(w, text)
}
