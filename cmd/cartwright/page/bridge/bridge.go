// Package bridge has an http.Handler answer without a network: what a page that is one file asks of the planner within it.
package bridge

import (
	"context"
	"net/http"
	"strings"
	"time"
)

// Ask is what is asked.
type Ask struct {
	Method string // "": GET
	Path   string // relative, with its query
	Body   string // JSON
}

// Listener hears an answer piece by piece, as it comes.
type Listener struct {
	Begin func(status int, kind string) // kind is the type of what follows
	More  func(text string)
}

// Answer has a handler answer. It returns when the answer is whole, or the handler ended since ctx did.
func Answer(ctx context.Context, h http.Handler, ask Ask, to Listener) {
	w := &writer{header: http.Header{}, to: to}
	r, err := http.NewRequestWithContext(ctx, ask.Method, "/"+strings.TrimPrefix(ask.Path, "/"), strings.NewReader(ask.Body))
	if err != nil {
		http.Error(w, "this is no request of the page", http.StatusBadRequest)
		return
	}
	h.ServeHTTP(w, r)
	w.WriteHeader(http.StatusOK) // where nothing was written
}

// writer passes on what a handler writes.
type writer struct {
	header http.Header
	begun  bool
	to     Listener
}

// Header returns what the answer says of itself before it begins.
func (w *writer) Header() http.Header { return w.header }

// WriteHeader begins the answer, once.
func (w *writer) WriteHeader(status int) {
	if w.begun {
		return
	}
	w.begun = true
	w.to.Begin(status, w.header.Get("Content-Type"))
}

// Write passes a piece on.
func (w *writer) Write(p []byte) (int, error) {
	w.WriteHeader(http.StatusOK)
	w.to.More(string(p))
	return len(p), nil
}

// FlushError does nothing: nothing is held back.
func (w *writer) FlushError() error { return nil }

// SetReadDeadline does nothing: what is asked is here already.
func (w *writer) SetReadDeadline(time.Time) error { return nil }
