//go:build !js

package page

import (
	"crypto/subtle"
	"net/http"
	"strings"
	"time"
)

// The bounds of what is served. No request that the page makes comes near them.
const (
	maxBody = 64 << 10 // bytes
	atOnce  = 32       // requests
	maxWait = 10 * time.Second
)

// guard lets through what the page itself asks for, and nothing else.
type guard struct {
	host, secret string
	rooms        chan struct{}
	next         http.Handler
}

func newGuard(host, secret string, next http.Handler) *guard {
	return &guard{host: host, secret: secret, rooms: make(chan struct{}, atOnce), next: next}
}

// ServeHTTP checks host, origin and secret before anything else of a request is looked at.
func (g *guard) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	h := w.Header()
	h.Set("Content-Security-Policy", "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; "+
		"base-uri 'none'; form-action 'none'; frame-ancestors 'none'")
	h.Set("Referrer-Policy", "no-referrer")
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Cross-Origin-Resource-Policy", "same-origin")
	h.Set("Cross-Origin-Opener-Policy", "same-origin")
	h.Set("Cache-Control", "no-store")
	if status := g.refuse(r); status != 0 {
		h.Set("Connection", "close")
		http.Error(w, http.StatusText(status), status)
		return
	}
	r.Body = http.MaxBytesReader(w, r.Body, maxBody)
	r.URL.Path = strings.TrimPrefix(r.URL.Path, "/"+g.secret)
	if r.URL.Path == "/events" { // these stay open, and are counted where they are served
		g.next.ServeHTTP(w, r)
		return
	}
	wait := time.NewTimer(maxWait)
	defer wait.Stop()
	select {
	case g.rooms <- struct{}{}:
		defer func() { <-g.rooms }()
		g.next.ServeHTTP(w, r)
	case <-wait.C:
		http.Error(w, "too many requests at once", http.StatusServiceUnavailable)
	case <-r.Context().Done():
	}
}

// refuse returns the status that a request is turned away with, 0 for one that is let through.
func (g *guard) refuse(r *http.Request) int {
	own := "http://" + g.host
	origin := r.Header.Get("Origin")
	site := r.Header.Get("Sec-Fetch-Site")
	switch {
	case r.Host != g.host: // another name that leads here: no page of ours asks for it
		return http.StatusMisdirectedRequest
	case origin != "" && origin != own, site == "cross-site", site == "same-site":
		return http.StatusForbidden
	case !g.knows(r.URL.EscapedPath()):
		return http.StatusNotFound
	case r.Method != http.MethodGet && r.Method != http.MethodPost:
		return http.StatusMethodNotAllowed
	case r.Method == http.MethodPost && (origin != own || r.Header.Get("Content-Type") != "application/json"):
		return http.StatusForbidden
	case r.ContentLength > maxBody:
		return http.StatusRequestEntityTooLarge
	}
	return 0
}

// knows reports whether a path begins with the secret, in the same time whatever it is. Paths of ours have
// nothing escaped in them.
func (g *guard) knows(path string) bool {
	want := "/" + g.secret + "/"
	if len(path) < len(want) {
		return false
	}
	return subtle.ConstantTimeCompare([]byte(path[:len(want)]), []byte(want)) == 1
}
