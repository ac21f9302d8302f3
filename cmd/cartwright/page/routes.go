package page

import (
	"embed"
	"encoding/json"
	"errors"
	"mime"
	"net/http"
	"path/filepath"

	"cartwright/scenarios"
)

//go:embed html
var assets embed.FS

// routes returns what is served behind the guard: these paths, and nothing else.
func (s *session) routes() http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("GET /{$}", s.page)
	for _, name := range []string{"page.css", "page.js"} {
		mux.HandleFunc("GET /"+name, asset(name))
	}
	mux.HandleFunc("GET /report.css", reportStyle)
	mux.HandleFunc("GET /state", s.state)
	mux.HandleFunc("GET /parts", s.partsTable)
	mux.HandleFunc("GET /compare", s.compareChoices)
	mux.HandleFunc("GET /events", s.events)
	mux.HandleFunc("GET /file", s.file)
	mux.HandleFunc("GET /plans.json", s.plansJSON)
	for path, act := range map[string]func(request) error{
		"/edit": s.edit, "/part": s.editPart, "/undo": s.undoLast, "/save": s.save, "/reload": s.reload, "/stop": s.halt,
		"/bought": s.bought, "/bought-part": s.boughtPart, "/sold": s.sold,
	} {
		mux.HandleFunc("POST "+path, s.act(act))
	}
	return mux
}

// asset serves a file that is built in.
func asset(name string) http.HandlerFunc {
	return func(w http.ResponseWriter, _ *http.Request) {
		text, err := assets.ReadFile("html/" + name)
		if err != nil {
			http.Error(w, err.Error(), http.StatusInternalServerError)
			return
		}
		w.Header().Set("Content-Type", mime.TypeByExtension(filepath.Ext(name)))
		send(w, text)
	}
}

// send writes an answer; one that nobody waits for any more is no matter.
func send(w http.ResponseWriter, text []byte) { _, _ = w.Write(text) }

// request is what the page asks to have done.
type request struct {
	Tab    string           // which tab asks
	Number int              // of the change that the page shows
	Path   string           // of a value of the scenario
	Value  string           // what is to stand there
	Add    []scenarios.Pair // a new item of the list at Path
	Remove bool             // the item at Path goes
	File   string           // of the catalogue
	Row    int
	Column int
	Show   int // rank of a plan
	Part   string
	Count  string
	Price  string
}

// reply is what comes back.
type reply struct {
	Number int    `json:"number"`
	Error  string `json:"error,omitempty"`
}

// act reads a request, has it done under the lock and says how it went.
func (s *session) act(do func(request) error) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		var q request
		d := json.NewDecoder(r.Body)
		d.DisallowUnknownFields()
		if err := d.Decode(&q); err != nil {
			status := http.StatusBadRequest
			var large *http.MaxBytesError
			if errors.As(err, &large) {
				status = http.StatusRequestEntityTooLarge
			}
			http.Error(w, "this is no request of the page", status)
			return
		}
		s.mu.Lock()
		s.from = q.Tab
		err := do(q)
		answer := reply{Number: s.number}
		if err != nil {
			answer.Error = err.Error()
			s.notice = answer.Error
			s.send(event{Kind: "planned", Number: s.number})
		}
		s.mu.Unlock()
		writeJSON(w, answer)
	}
}

func writeJSON(w http.ResponseWriter, v any) {
	text, err := json.Marshal(v)
	if err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "application/json")
	send(w, text)
}
