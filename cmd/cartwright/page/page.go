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
	"crypto/rand"
	"encoding/base64"
	"errors"
	"fmt"
	"io"
	"log"
	"net"
	"net/http"
	"time"
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

// Serve serves the page until ctx ends. Told is called with the address once it can be opened. Unsaved reports
// whether changes are lost with it.
func (p *Page) Serve(ctx context.Context, told func(address string)) (unsaved bool, err error) {
	listener, err := (&net.ListenConfig{}).Listen(ctx, "tcp4", "127.0.0.1:0")
	if err != nil {
		return false, fmt.Errorf("cannot listen on this machine: %w", err)
	}
	secret, err := newSecret()
	if err != nil {
		return false, errors.Join(err, listener.Close())
	}
	s, err := newSession(ctx, p.Planner, p.Files)
	if err != nil {
		return false, errors.Join(err, listener.Close())
	}
	defer s.close()
	host := listener.Addr().String()
	server := &http.Server{
		Handler:           newGuard(host, secret, s.routes()),
		ReadHeaderTimeout: 5 * time.Second,
		ReadTimeout:       8 * time.Second,
		IdleTimeout:       time.Minute,
		MaxHeaderBytes:    16 << 10,
		ErrorLog:          log.New(io.Discard, "", 0), // what a browser breaks off is nobody's business
		BaseContext:       func(net.Listener) context.Context { return ctx },
	}
	ended := make(chan error, 1)
	go func() { ended <- server.Serve(listener) }()
	told("http://" + host + "/" + secret + "/")
	select {
	case err := <-ended:
		return s.unsaved(), fmt.Errorf("the page ended: %w", err)
	case <-ctx.Done():
	}
	s.close()
	// The program ends: what is still being sent has a moment to finish.
	last, cancel := context.WithTimeout(context.WithoutCancel(ctx), time.Second)
	defer cancel()
	if err := server.Shutdown(last); err != nil {
		err = server.Close()
		if err != nil {
			return s.unsaved(), fmt.Errorf("the page did not close: %w", err)
		}
	}
	return s.unsaved(), nil
}

// secretBytes is how many random bytes stand in the address: more than anybody guesses.
const secretBytes = 24

func newSecret() (string, error) {
	b := make([]byte, secretBytes)
	if _, err := rand.Read(b); err != nil {
		return "", fmt.Errorf("no secret for the address: %w", err)
	}
	return base64.RawURLEncoding.EncodeToString(b), nil
}
