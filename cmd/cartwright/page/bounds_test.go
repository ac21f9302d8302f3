package page

import (
	"bufio"
	"fmt"
	"net"
	"net/http"
	"net/http/httptest"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"
)

// dialled sends a beginning of a request as it is, and returns the connection.
func dialled(t *testing.T, address, text string) net.Conn {
	t.Helper()
	conn, err := net.Dial("tcp", hostOf(address))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = conn.Close() })
	if _, err := fmt.Fprint(conn, text); err != nil {
		t.Fatal(err)
	}
	return conn
}

// postHead is the head of a change whose body is said to be so long.
func postHead(address string, length int64) string {
	host := hostOf(address)
	return fmt.Sprintf("POST %sedit HTTP/1.1\r\nHost: %s\r\nOrigin: http://%s\r\nContent-Type: application/json\r\nContent-Length: %d\r\n\r\n",
		strings.TrimPrefix(address, "http://"+host), host, host, length)
}

// A body that is said to be huge is refused before a byte of it is sent.
func TestAHugeBodyIsRefusedByItsHead(t *testing.T) {
	address := up(t, newFake(t), demoFiles())
	conn := dialled(t, address, postHead(address, 100<<20))
	if err := conn.SetReadDeadline(time.Now().Add(10 * time.Second)); err != nil {
		t.Fatal(err)
	}
	answer, err := http.ReadResponse(bufio.NewReader(conn), nil)
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	if answer.StatusCode != http.StatusRequestEntityTooLarge {
		t.Errorf("status %d, want 413", answer.StatusCode)
	}
}

// Who sends a request slowly, or never ends it, is hung up on.
func TestSlowRequestsAreHungUpOn(t *testing.T) {
	address := up(t, newFake(t), demoFiles())
	var all sync.WaitGroup
	for what, text := range map[string]string{"a head that never ends": "GET / HTTP/1.1\r\nHost: x\r\n", "a body that never comes": postHead(address, 1000)} {
		conn := dialled(t, address, text)
		all.Go(func() {
			if err := conn.SetReadDeadline(time.Now().Add(40 * time.Second)); err != nil {
				t.Error(err)
			}
			for b := make([]byte, 4096); ; {
				if _, err := conn.Read(b); err != nil {
					if late, ok := err.(net.Error); ok && late.Timeout() {
						t.Errorf("%s is still waited for", what)
					}
					return
				}
			}
		})
	}
	all.Wait()
}

// A request with a word that the page does not send is none of the page's.
func TestUnknownWordsAreRefused(t *testing.T) {
	address := up(t, newFake(t), demoFiles())
	r, err := http.NewRequestWithContext(t.Context(), "POST", address+"edit", strings.NewReader(`{"Command":"rm"}`))
	if err != nil {
		t.Fatal(err)
	}
	r.Header.Set("Origin", "http://"+hostOf(address))
	r.Header.Set("Content-Type", "application/json")
	answer, err := http.DefaultClient.Do(r)
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	if answer.StatusCode != http.StatusBadRequest {
		t.Errorf("status %d, want 400", answer.StatusCode)
	}
}

// Of many requests only so many are served at once; all of them are in the end.
func TestOnlySoManyRequestsAtOnce(t *testing.T) {
	var now, most atomic.Int64
	g := newGuard("x", "s", http.HandlerFunc(func(http.ResponseWriter, *http.Request) {
		n := now.Add(1)
		for {
			m := most.Load()
			if n <= m || most.CompareAndSwap(m, n) {
				break
			}
		}
		time.Sleep(20 * time.Millisecond)
		now.Add(-1)
	}))
	var all sync.WaitGroup
	for range 200 {
		all.Go(func() {
			r := httptest.NewRequest("GET", "http://x/s/", nil)
			w := httptest.NewRecorder()
			if g.ServeHTTP(w, r); w.Code != http.StatusOK {
				t.Errorf("status %d", w.Code)
			}
		})
	}
	all.Wait()
	const bearable = 64 // for a small machine, whatever the page's own bound is
	if most.Load() > bearable || most.Load() < 2 {
		t.Errorf("%d were served at once, at most %d may be", most.Load(), bearable)
	}
}

// Only so many tabs are kept told; one more is refused, and finds room once another is closed.
func TestOnlySoManyTabs(t *testing.T) {
	address := up(t, newFake(t), demoFiles())
	open := func() *http.Response {
		answer, err := http.Get(address + "events")
		if err != nil {
			t.Fatal(err)
		}
		t.Cleanup(func() { _ = answer.Body.Close() })
		return answer
	}
	var tabs []*http.Response
	for range maxEvents {
		tabs = append(tabs, open())
	}
	if one := open(); one.StatusCode != http.StatusServiceUnavailable {
		t.Errorf("one tab more: status %d, want 503", one.StatusCode)
	}
	_ = tabs[0].Body.Close()
	for range 200 {
		if open().StatusCode == http.StatusOK {
			return
		}
		time.Sleep(20 * time.Millisecond)
	}
	t.Error("a closed tab makes no room")
}
