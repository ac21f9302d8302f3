package page

import (
	"embed"
	"encoding/json"
	"errors"
	"fmt"
	"mime"
	"net/http"
	"os"
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
	mux.HandleFunc("GET /events", s.events)
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

// edit changes a value of the scenario.
func (s *session) edit(q request) error {
	about := q.Path
	if q.Add != nil || q.Remove {
		about = ""
	}
	return s.change(q.Number, about, func(d *draft) error {
		text, err := scenarios.EditValues(d.scenario, s.files.Scenario, scenarios.Edit{Path: q.Path, Value: q.Value, Add: q.Add, Remove: q.Remove})
		if err == nil {
			d.scenario = text
		}
		return err
	})
}

// editPart changes a cell of the catalogue, adds a row or takes one away.
func (s *session) editPart(q request) error {
	if !isPartsFile(q.File) {
		return fmt.Errorf("a catalogue has no file %q", q.File)
	}
	text, err := s.partsText(q.File)
	if err != nil {
		return err
	}
	if _, known := s.original[q.File]; !known {
		s.original[q.File] = text
	}
	about := fmt.Sprintf("%s %d %d", q.File, q.Row, q.Column)
	if q.Add != nil || q.Remove {
		about = ""
	}
	return s.change(q.Number, about, func(d *draft) error {
		var made []byte
		var err error
		switch {
		case q.Remove:
			made, err = removeRow(text, q.Row)
		case q.Add != nil:
			made, err = addRow(text, q.Value)
		default:
			made, err = setCell(text, q.Row, q.Column, q.Value)
		}
		if err != nil {
			return err
		}
		if d.parts == nil {
			d.parts = map[string][]byte{}
		}
		d.parts[q.File] = made
		return nil
	})
}

// undoLast takes the last change back.
func (s *session) undoLast(request) error {
	if len(s.undo) == 0 {
		return errors.New("there is nothing to take back")
	}
	s.now, s.undo = s.undo[len(s.undo)-1], s.undo[:len(s.undo)-1]
	s.notice = "The last change is taken back."
	s.settle()
	return nil
}

// save writes the files.
func (s *session) save(q request) error {
	if q.Number != s.number {
		return errStale
	}
	original := func(name string) ([]byte, error) {
		if text, ok := s.original[name]; ok {
			return text, nil
		}
		return os.ReadFile(filepath.Join(s.opened.folder, name))
	}
	written, err := s.files.save(s.base, s.now, s.opened.folder, original)
	if err != nil {
		return err
	}
	s.base = draft{scenario: s.now.scenario}
	for name, text := range s.now.parts {
		s.original[name] = text
	}
	s.stamp = stampOf(s.opened.folder)
	s.notice = fmt.Sprintf("Saved: %d files written.", len(written))
	if len(written) == 1 {
		s.notice = "Saved: " + written[0] + "."
	}
	if len(s.opened.mistakes) > 0 {
		s.notice += " There are mistakes in what was saved."
	}
	s.send(event{Kind: "planned", Number: s.number})
	return nil
}

// reload reads the files anew; what is not saved is gone.
func (s *session) reload(request) error {
	if err := s.read(); err != nil {
		return err
	}
	s.notice = "The files are read anew."
	s.settle()
	return nil
}

// halt stops planning; the last good answer stays.
func (s *session) halt(request) error {
	if s.stop != nil {
		s.stop()
	}
	s.stopped = s.planning
	s.planning = false
	s.notice = "Planning was stopped; what is shown is the last answer."
	s.send(event{Kind: "planned", Number: s.number})
	return nil
}

// bought makes a plan's purchases owned.
func (s *session) bought(q request) error {
	if s.answer == nil || q.Show < 0 || q.Show >= len(s.answer.Plans) {
		return errors.New("there is no such plan")
	}
	owned, err := s.planner.Bought(s.of.scenario, s.of.catalog, &s.answer.Plans[q.Show])
	if err != nil {
		return err
	}
	if err := s.own(q.Number, owned); err != nil {
		return err
	}
	s.notice = fmt.Sprintf("Plan %d is bought: its parts are owned now. Undo takes it back.", q.Show+1)
	return nil
}

// boughtPart makes some of a part owned, and takes what was paid from the money in hand.
func (s *session) boughtPart(q request) error {
	if s.opened.scenario == nil || s.opened.catalog == nil {
		return errMistakes
	}
	owned, err := s.planner.BoughtPart(s.opened.scenario, s.opened.catalog, q.Part, q.Count, q.Price)
	if err != nil {
		return err
	}
	if err := s.own(q.Number, owned); err != nil {
		return err
	}
	s.notice = q.Part + " is bought. Undo takes it back."
	return nil
}

// sold takes some of a part out of what is owned, and puts what it brought into the money in hand.
func (s *session) sold(q request) error {
	if s.opened.scenario == nil || s.opened.catalog == nil {
		return errMistakes
	}
	owned, err := s.planner.Sold(s.opened.scenario, s.opened.catalog, q.Part, q.Count, q.Price)
	if err != nil {
		return err
	}
	if err := s.own(q.Number, owned); err != nil {
		return err
	}
	s.notice = q.Part + " is sold. Undo takes it back."
	return nil
}

// errMistakes is the error of what needs files that can be read.
var errMistakes = errors.New("mend the mistakes first")
