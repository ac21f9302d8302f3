package bridge

import (
	"context"
	"fmt"
	"io"
	"net/http"
	"strings"
	"testing"
	"time"
)

// heard is an answer as it was told.
type heard struct {
	status int
	kind   string
	pieces []string
}

func (h *heard) listener() Listener {
	return Listener{
		Begin: func(status int, kind string) { h.status, h.kind = status, kind },
		More:  func(text string) { h.pieces = append(h.pieces, text) },
	}
}

func handler() http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("GET /state", func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("Content-Type", "application/json")
		fmt.Fprint(w, r.URL.Query().Get("show"))
	})
	mux.HandleFunc("POST /edit", func(w http.ResponseWriter, r *http.Request) {
		body, err := io.ReadAll(r.Body)
		if err != nil {
			http.Error(w, err.Error(), http.StatusBadRequest)
			return
		}
		w.WriteHeader(http.StatusAccepted)
		fmt.Fprintf(w, "got %s", body)
	})
	mux.HandleFunc("GET /nothing", func(http.ResponseWriter, *http.Request) {})
	mux.HandleFunc("GET /events", func(w http.ResponseWriter, r *http.Request) {
		out := http.NewResponseController(w)
		if err := out.SetReadDeadline(time.Time{}); err != nil {
			http.Error(w, err.Error(), http.StatusInternalServerError)
			return
		}
		for i := range 2 {
			fmt.Fprintf(w, "data: %d\n\n", i)
			if err := out.Flush(); err != nil {
				return
			}
		}
		<-r.Context().Done()
	})
	return mux
}

func TestAnswer(t *testing.T) {
	for _, c := range []struct {
		ask    Ask
		status int
		text   string
	}{
		{Ask{Path: "state?show=2"}, http.StatusOK, "2"},
		{Ask{Path: "/state?show=ä%26"}, http.StatusOK, "ä&"},
		{Ask{Method: "POST", Path: "edit", Body: `{"Path":"limits.mass"}`}, http.StatusAccepted, `got {"Path":"limits.mass"}`},
		{Ask{Path: "nothing"}, http.StatusOK, ""},
		{Ask{Path: "elsewhere"}, http.StatusNotFound, "404 page not found\n"},
		{Ask{Method: "POST", Path: "state"}, http.StatusMethodNotAllowed, "Method Not Allowed\n"},
		{Ask{Method: "ODD METHOD", Path: "state"}, http.StatusBadRequest, "this is no request of the page\n"},
		{Ask{Path: "%zz"}, http.StatusBadRequest, "this is no request of the page\n"},
	} {
		var h heard
		Answer(t.Context(), handler(), c.ask, h.listener())
		if h.status != c.status || strings.Join(h.pieces, "") != c.text {
			t.Errorf("%+v: %d %q, want %d %q", c.ask, h.status, h.pieces, c.status, c.text)
		}
	}
	var h heard
	Answer(t.Context(), handler(), Ask{Path: "state?show=1"}, h.listener())
	if h.kind != "application/json" {
		t.Errorf("the type is %q", h.kind)
	}
}

// What is told as it happens comes as it happens, until nobody listens any more.
func TestAnswerThatGoesOn(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	pieces := make(chan string)
	done := make(chan bool)
	go func() {
		Answer(ctx, handler(), Ask{Path: "events"}, Listener{Begin: func(int, string) {}, More: func(text string) { pieces <- text }})
		close(done)
	}()
	for i := range 2 {
		if got, want := <-pieces, fmt.Sprintf("data: %d\n\n", i); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	select {
	case <-done:
		t.Error("it ended by itself")
	default:
	}
	cancel()
	<-done
}
