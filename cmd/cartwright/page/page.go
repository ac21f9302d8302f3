// Package page serves one page to a browser on this machine: limits as sliders, loads, parts and what is
// owned as tables that are checked while one types, and the plan that follows. What is changed stays in
// memory until it is saved into the same files, with their comments.
//
// What answers is one http.Handler behind two doors: Serve listens to this machine alone; a page that is one file (see
// package shop) has the handler within it, and asks it without a network.
//
// Only this machine is listened to (127.0.0.1). The address holds a secret; requests that name another host,
// or come from another page, are refused; bodies are small; only so many requests are served at once. The
// page itself is plain HTML, a style sheet and a small script of our own, all built in.
package page

import (
	"context"
	"net/http"
)

// Page is what is served.
type Page struct {
	Planner Planner
	Files   Files
}

// Handler returns what Serve serves, without its guard: for a page that is one file and asks only itself. All work for it
// ends with ctx.
func (p *Page) Handler(ctx context.Context) (http.Handler, error) {
	s, err := newSession(ctx, p.Planner, p.Files)
	if err != nil {
		return nil, err
	}
	return s.routes(), nil
}
