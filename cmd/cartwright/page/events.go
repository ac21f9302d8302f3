package page

import (
	"encoding/json"
	"fmt"
	"net/http"
	"time"
)

// maxEvents is how many open tabs are kept told.
const maxEvents = 16

// event is what a tab is told as it happens.
type event struct {
	Kind   string `json:"kind"` // "changed" the draft, "planned" what is known of it, "progress"
	Number int    `json:"number"`
	Tab    string `json:"tab,omitempty"` // that made the change
	Cells  int    `json:"cells,omitempty"`
	Found  int    `json:"found,omitempty"`
}

// send tells every tab. Where one does not listen the oldest event makes room: an event only says that there is
// something new, and the last says it as well. The lock is held.
func (s *session) send(e event) {
	for tab := range s.tabs {
		select {
		case tab <- e:
			continue
		default:
		}
		select {
		case <-tab:
		default:
		}
		select {
		case tab <- e:
		default: // only this sends, under the lock, so that there is room
		}
	}
}

// events keeps a tab told until it is closed or the program ends.
func (s *session) events(w http.ResponseWriter, r *http.Request) {
	const waiting = 64
	tab := make(chan event, waiting)
	s.mu.Lock()
	if len(s.tabs) >= maxEvents || s.ctx.Err() != nil {
		s.mu.Unlock()
		http.Error(w, "too many open tabs", http.StatusServiceUnavailable)
		return
	}
	s.tabs[tab] = true
	first := event{Kind: "changed", Number: s.number}
	s.mu.Unlock()
	defer func() {
		s.mu.Lock()
		delete(s.tabs, tab)
		s.mu.Unlock()
	}()
	w.Header().Set("Content-Type", "text/event-stream")
	out := http.NewResponseController(w)
	if err := out.SetReadDeadline(time.Time{}); err != nil {
		return
	}
	write := func(e event) error {
		text, err := json.Marshal(e)
		if err != nil {
			return err
		}
		if _, err := fmt.Fprintf(w, "data: %s\n\n", text); err != nil {
			return err
		}
		return out.Flush()
	}
	if write(first) != nil {
		return
	}
	for {
		select {
		case <-r.Context().Done():
			return
		case e, ok := <-tab:
			if !ok || write(e) != nil {
				return
			}
		}
	}
}
