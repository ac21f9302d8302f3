//go:build !js

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
