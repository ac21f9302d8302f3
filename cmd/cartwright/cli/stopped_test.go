package cli

import (
	"bytes"
	"context"
	"encoding/json"
	"strings"
	"testing"
	"time"
)

// A searchingCommand is a command line that searches, and the value of its JSON that tells whether the answer
// is whole, with what that is where it is not. One with none shows no answer before it is whole.
type searchingCommand struct {
	line    string
	section string // of the JSON, "" for the whole
	key     string
	stopped any
}

var searching = []searchingCommand{
	{"plan lantern-market", "solver", "status", "time-limit"},
	{"plan lantern-market --by mass", "solver", "status", "time-limit"},
	{"frontier lantern-market", "", "complete", false},
	{"doubt lantern-market --plans 2 --draws 100", "", "status", "time-limit"},
	{"next star-party", "", "complete", false},
	{"why lantern-market", "", "complete", false},
	{"why lantern-market --part lfp-rack-7", "", "", nil},
	{"value star-party", "", "complete", false},
	{"compare lantern-market --buy 1lfp-rack-7 --buy 1lfp-rack-10", "", "complete", false},
	{"bought lantern-market --plan 2", "", "", nil},
}

// Whenever a command is stopped, it ends with a whole answer, or with 3, with what it has, marked as not
// proved, or with nothing; never with the answer that there is no plan.
func TestStopped(t *testing.T) {
	for _, c := range searching {
		t.Run(c.line, func(t *testing.T) {
			for _, after := range []time.Duration{0, 10 * time.Millisecond, 40 * time.Millisecond, 160 * time.Millisecond} {
				ctx, cancel := context.WithTimeout(context.Background(), after)
				var stdout, stderr bytes.Buffer
				code := Program{}.Run(ctx, append(strings.Fields(c.line), "--format", "json"), strings.NewReader(""), &stdout, &stderr)
				cancel()
				switch {
				case code == codeDone && after > 0:
					if !json.Valid(stdout.Bytes()) || stderr.Len() > 0 {
						t.Errorf("after %s: done, but %q, %s", after, stderr.String(), stdout.String())
					}
				case code == codeUnproven:
					if !strings.Contains(stderr.String(), "error: stopped before") {
						t.Errorf("after %s: stderr does not say that it was stopped: %s", after, stderr.String())
					}
					if stdout.Len() > 0 {
						c.marked(t, stdout.Bytes())
					}
				default:
					t.Errorf("after %s: exit %d: %s", after, code, stderr.String())
				}
			}
		})
	}
}

// marked reports an error where an answer that is not whole does not say so, or shows a plan whose audit
// fails.
func (c searchingCommand) marked(t *testing.T, answer []byte) {
	t.Helper()
	var whole map[string]any
	if err := json.Unmarshal(answer, &whole); err != nil {
		t.Fatalf("half an answer: %v", err)
	}
	section := whole
	if c.section != "" {
		section, _ = whole[c.section].(map[string]any)
	}
	if c.key == "" || section[c.key] != c.stopped {
		t.Errorf("%q of the JSON is %v, want %v", c.key, section[c.key], c.stopped)
	}
	plans, _ := whole["plans"].([]any)
	open := 0
	for _, p := range plans {
		one, _ := p.(map[string]any)
		audit, _ := one["audit"].(map[string]any)
		proven, told := one["proven"].(bool)
		switch {
		case strings.HasPrefix(c.line, "plan") && (audit["passed"] != true || !told):
			t.Errorf("plan %v: audit %v, proven %v", one["rank"], audit["passed"], one["proven"])
		case !proven:
			open++
		case open > 0:
			t.Errorf("plan %v is proved, one before it is not", one["rank"])
		}
	}
}

// The time limit given on the command line stops like anything else.
func TestTimeLimit(t *testing.T) {
	for _, c := range searching {
		t.Run(c.line, func(t *testing.T) {
			var stdout, stderr bytes.Buffer
			line := append(strings.Fields(c.line), "--format", "json", "--time-limit", "1ns")
			if code := (Program{}).Run(context.Background(), line, strings.NewReader(""), &stdout, &stderr); code != codeUnproven {
				t.Errorf("exit %d, want %d: %s", code, codeUnproven, stderr.String())
			}
			if stdout.Len() > 0 {
				c.marked(t, stdout.Bytes())
			}
		})
	}
}
