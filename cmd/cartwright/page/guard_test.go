package page

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net"
	"net/http"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"
)

// up serves a page and returns its address; it ends with the test.
func up(t *testing.T, f *fake, files Files) string {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	address, ended := make(chan string, 1), make(chan error, 1)
	p := &Page{Planner: f, Files: files}
	go func() {
		_, err := p.Serve(ctx, func(a string) { address <- a })
		ended <- err
	}()
	t.Cleanup(func() {
		cancel()
		if err := <-ended; err != nil {
			t.Errorf("the page ended with %v", err)
		}
	})
	select {
	case a := <-address:
		return a
	case err := <-ended:
		t.Fatal(err)
		return ""
	}
}

func hostOf(address string) string {
	return strings.Split(strings.TrimPrefix(address, "http://"), "/")[0]
}

func TestOnlyThePageItselfIsServed(t *testing.T) {
	address := up(t, newFake(t), demoFiles())
	host := hostOf(address)
	secret := strings.Trim(strings.TrimPrefix(address, "http://"+host), "/")
	port := host[strings.LastIndex(host, ":"):]
	own := "http://" + host
	for _, c := range []struct {
		name, method, path string
		host, origin       string
		header             map[string]string
		want               int
	}{
		{name: "the page", path: "/" + secret + "/", want: 200},
		{name: "the page from itself", path: "/" + secret + "/state", origin: own, want: 200},
		{name: "no secret", path: "/", want: 404},
		{name: "a wrong secret", path: "/" + strings.Repeat("A", len(secret)) + "/", want: 404},
		{name: "half a secret", path: "/" + secret[:len(secret)/2] + "/", want: 404},
		{name: "the secret without its slash", path: "/" + secret, want: 404},
		{name: "the secret in the query", path: "/?" + secret, want: 404},
		{name: "another name for this machine", path: "/" + secret + "/", host: "localhost" + port, want: 421},
		{name: "a name that leads here", path: "/" + secret + "/", host: "evil.example" + port, want: 421},
		{name: "the address without its port", path: "/" + secret + "/", host: "127.0.0.1", want: 421},
		{name: "another port", path: "/" + secret + "/", host: "127.0.0.1:1", want: 421},
		{name: "all addresses", path: "/" + secret + "/", host: "0.0.0.0" + port, want: 421},
		{name: "another page", path: "/" + secret + "/state", origin: "https://evil.example", want: 403},
		{name: "a page of a file", path: "/" + secret + "/state", origin: "null", want: 403},
		{name: "another port's page", path: "/" + secret + "/state", origin: "http://127.0.0.1:1", want: 403},
		{name: "a frame of another site", path: "/" + secret + "/", header: map[string]string{"Sec-Fetch-Site": "cross-site"}, want: 403},
		{name: "a frame of another port", path: "/" + secret + "/", header: map[string]string{"Sec-Fetch-Site": "same-site"}, want: 403},
		{name: "a change without origin, as the page sends it", method: "POST", path: "/" + secret + "/undo", header: map[string]string{"Content-Type": "application/json"}, want: 403},
		{name: "a change without origin", method: "POST", path: "/" + secret + "/undo", want: 403},
		{name: "a change by a form", method: "POST", path: "/" + secret + "/undo", origin: own, header: map[string]string{"Content-Type": "text/plain"}, want: 403},
		{name: "a change by another page", method: "POST", path: "/" + secret + "/undo", origin: "http://evil.example", header: map[string]string{"Content-Type": "application/json"}, want: 403},
		{name: "a change by reading", path: "/" + secret + "/undo", want: 405},
		{name: "another method", method: "DELETE", path: "/" + secret + "/", want: 405},
		{name: "up the folders", path: "/" + secret + "/../../etc/passwd", want: 404},
		{name: "up the folders in code", path: "/" + secret + "/%2e%2e/%2e%2e/etc/passwd", want: 404},
		{name: "a file of the program", path: "/" + secret + "/page.html", want: 404},
		{name: "a part that is none", path: "/" + secret + "/parts?kind=../../etc/passwd", want: 404},
		{name: "a part in another folder", path: "/" + secret + "/parts?kind=..%2fscenario", want: 404},
		{name: "two slashes", path: "//" + secret + "/", want: 404},
	} {
		t.Run(c.name, func(t *testing.T) {
			method := c.method
			if method == "" {
				method = "GET"
			}
			hosted := c.host
			if hosted == "" {
				hosted = host
			}
			request := method + " " + c.path + " HTTP/1.1\r\nHost: " + hosted + "\r\nConnection: close\r\n"
			if c.origin != "" {
				request += "Origin: " + c.origin + "\r\n"
			}
			for k, v := range c.header {
				request += k + ": " + v + "\r\n"
			}
			if method == "POST" {
				request += "Content-Length: 2\r\n"
			}
			request += "\r\n"
			if method == "POST" {
				request += "{}"
			}
			// Written out by hand: a client would tidy the tricks away.
			conn, err := net.Dial("tcp", host)
			if err != nil {
				t.Fatal(err)
			}
			defer conn.Close()
			if _, err := io.WriteString(conn, request); err != nil {
				t.Fatal(err)
			}
			answer, err := http.ReadResponse(bufio.NewReader(conn), nil)
			if err != nil {
				t.Fatal(err)
			}
			defer answer.Body.Close()
			body, _ := io.ReadAll(answer.Body)
			if answer.StatusCode != c.want && !(c.want == 404 && answer.StatusCode/100 == 3 && !strings.Contains(string(body), "root:")) {
				t.Errorf("status %d, want %d: %.200s", answer.StatusCode, c.want, body)
			}
			if c.want != 200 && bytes.Contains(body, []byte("Cider")) {
				t.Error("it says what the page says")
			}
			for header, want := range map[string]string{
				"Referrer-Policy": "no-referrer", "X-Content-Type-Options": "nosniff", "Cache-Control": "no-store",
				"Cross-Origin-Resource-Policy": "same-origin", "Cross-Origin-Opener-Policy": "same-origin",
			} {
				if got := answer.Header.Get(header); got != want {
					t.Errorf("%s: %q, want %q", header, got, want)
				}
			}
			policy := answer.Header.Get("Content-Security-Policy")
			for _, want := range []string{"default-src 'none'", "script-src 'self'", "connect-src 'self'", "base-uri 'none'", "form-action 'none'", "frame-ancestors 'none'"} {
				if !strings.Contains(policy, want) {
					t.Errorf("the policy lacks %s: %s", want, policy)
				}
			}
			if strings.Contains(policy, "*") || strings.Contains(policy, "unsafe") {
				t.Errorf("the policy is loose: %s", policy)
			}
			if answer.Header.Get("Access-Control-Allow-Origin") != "" {
				t.Error("it allows another page")
			}
		})
	}
}

func TestOnlyThisMachineIsListenedTo(t *testing.T) {
	address := up(t, newFake(t), demoFiles())
	if !strings.HasPrefix(address, "http://127.0.0.1:") {
		t.Errorf("it is served at %s", address)
	}
	if other := up(t, newFake(t), demoFiles()); strings.TrimPrefix(other, "http://"+hostOf(other)) == strings.TrimPrefix(address, "http://"+hostOf(address)) {
		t.Error("two pages have the same secret")
	}
}

// endless is a body that never ends.
type endless struct{ sent atomic.Int64 }

func (e *endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = 'x'
	}
	if e.sent.Add(int64(len(p))) > 100<<20 {
		return 0, io.EOF
	}
	return len(p), nil
}

func TestAHugeBodyIsRefusedBeforeItIsRead(t *testing.T) {
	address := up(t, newFake(t), demoFiles())
	for _, length := range []int64{100 << 20, -1} { // stated, and not
		body := &endless{}
		request, err := http.NewRequestWithContext(t.Context(), "POST", address+"edit", io.MultiReader(strings.NewReader(`{"Value":"`), body))
		if err != nil {
			t.Fatal(err)
		}
		request.ContentLength = length
		request.Header.Set("Origin", "http://"+hostOf(address))
		request.Header.Set("Content-Type", "application/json")
		answer, err := http.DefaultClient.Do(request)
		if err == nil { // else the connection was closed while it was still sent
			_ = answer.Body.Close()
			if answer.StatusCode != http.StatusRequestEntityTooLarge {
				t.Errorf("status %d, want 413", answer.StatusCode)
			}
		}
		if sent := body.sent.Load(); sent > 32<<20 {
			t.Errorf("%d bytes were taken", sent)
		}
	}
	if answer, err := http.Get(address); err != nil || answer.StatusCode != 200 {
		t.Errorf("the page is gone: %v", err)
	}
}

// post asks to have something done and returns what came back.
func post(t testing.TB, address, path string, q request) (reply, error) {
	t.Helper()
	body, err := json.Marshal(q)
	if err != nil {
		return reply{}, err
	}
	r, err := http.NewRequestWithContext(t.Context(), "POST", address+path, bytes.NewReader(body))
	if err != nil {
		return reply{}, err
	}
	r.Header.Set("Origin", "http://"+hostOf(address))
	r.Header.Set("Content-Type", "application/json")
	answer, err := http.DefaultClient.Do(r)
	if err != nil {
		return reply{}, err
	}
	defer answer.Body.Close()
	if answer.StatusCode != 200 {
		return reply{}, fmt.Errorf("status %d", answer.StatusCode)
	}
	var out reply
	return out, json.NewDecoder(answer.Body).Decode(&out)
}

// Of 200 changes at once, each made of the first state, one is made and the others are told so; nothing is lost
// silently, and the page goes on.
func TestTwoHundredRequestsAtOnce(t *testing.T) {
	address := up(t, newFake(t), demoFiles())
	var mu sync.Mutex
	made, refused := 0, 0
	var all sync.WaitGroup
	for i := range 200 {
		all.Go(func() {
			answer, err := post(t, address, "edit", request{Number: 1, Path: "limits.mass", Value: fmt.Sprintf("%d kg", 300+i)})
			mu.Lock()
			defer mu.Unlock()
			switch {
			case err != nil:
				t.Errorf("request %d: %v", i, err)
			case answer.Error == "":
				made++
			default:
				refused++
			}
		})
	}
	all.Wait()
	if made != 1 || refused != 199 {
		t.Errorf("%d changes were made and %d refused, want 1 and 199", made, refused)
	}
	if answer, err := post(t, address, "edit", request{Number: 2, Path: "limits.mass", Value: "377 kg"}); err != nil || answer.Error != "" || answer.Number != 3 {
		t.Errorf("afterwards: %+v, %v", answer, err)
	}
}

func TestThePageEndsWithTheProgram(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	address, ended := make(chan string, 1), make(chan error, 1)
	p := &Page{Planner: newFake(t), Files: demoFiles()}
	go func() {
		_, err := p.Serve(ctx, func(a string) { address <- a })
		ended <- err
	}()
	at := <-address
	// A tab that listens keeps nothing alive.
	tab, err := http.Get(at + "events")
	if err != nil {
		t.Fatal(err)
	}
	defer tab.Body.Close()
	if line, err := bufio.NewReader(tab.Body).ReadString('\n'); err != nil || !strings.HasPrefix(line, "data: ") {
		t.Errorf("the first event is %q, %v", line, err)
	}
	cancel()
	select {
	case err := <-ended:
		if err != nil {
			t.Error(err)
		}
	case <-time.After(20 * time.Second):
		t.Fatal("it did not end")
	}
	if _, err := http.Get(at); err == nil {
		t.Error("it still answers")
	}
}
