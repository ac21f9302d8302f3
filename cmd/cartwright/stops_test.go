//go:build unix

package main

import (
	"bytes"
	"errors"
	"math"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"cartwright/scenarios"
)

// Told to stop, a command ends within this time with what it has.
const ends = time.Second

// stops are the signals that stop a command: Ctrl-C, being told to end, and its terminal's end.
var stops = []syscall.Signal{syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP}

// A command is stopped at so many moments, from the first to the last in growing steps.
const (
	moments     = 20
	firstMoment = 5 * time.Millisecond
	lastMoment  = 500 * time.Millisecond
)

// stoppable is a command on a market with several shops, or with sun, that is in mid-work for most of the moments.
type stoppable struct {
	line    string // HERE stands for the scenario
	sun     bool
	limited bool   // it takes --time-limit
	status  int    // where it is not stopped
	out     string // a file it writes
	whole   string // what that ends in
}

var stoppables = []stoppable{
	{line: "demo"},
	{line: "new made", out: "made"},
	{line: "parts"},
	{line: "sources"},
	{line: "audit HERE", status: 1},
	{line: "plan HERE", limited: true},
	{line: "plan HERE --by mass --format json", limited: true},
	{line: "plan HERE --by energy", sun: true, limited: true},
	{line: "plan HERE --by life", sun: true, limited: true},
	{line: "next HERE", limited: true},
	{line: "compare HERE --buy 2xlfp-rack-5 --buy 1xlfp-rack-2", limited: true},
	{line: "why HERE", limited: true},
	{line: "why HERE --part lfp-rack-7", sun: true, limited: true},
	{line: "frontier HERE --svg steps.svg", limited: true, out: "steps.svg", whole: "</svg>"},
	{line: "draw HERE --what costs --out costs.svg", limited: true, out: "costs.svg", whole: "</svg>"},
	{line: "report HERE --out plan.html", limited: true, out: "plan.html", whole: "</html>"},
	{line: "value HERE", limited: true},
	{line: "doubt HERE --draws 1000000 --plans 2", limited: true},
	{line: "bought HERE --write", limited: true},
	{line: "model HERE --out whole.mps", sun: true, out: "whole.mps", whole: "ENDATA"},
	{line: "page HERE"},
}

// Every command, stopped at twenty moments by Ctrl-C, by being told to end, by its terminal's end or by its own limit,
// ends within a second, says that it was stopped, and leaves whole files or none.
func TestStops(t *testing.T) {
	for _, s := range stops {
		if signal.Ignored(s) { // by who began the tests; what they begin would ignore it until it listens
			signal.Notify(make(chan os.Signal, 1), s)
			t.Cleanup(func() { signal.Ignore(s) })
		}
	}
	market, sunny := filepath.Join(t.TempDir(), "market"), filepath.Join(t.TempDir(), "sunny")
	writeMarket(t, market, "lantern-market", 800, 150, 60, 4)
	writeMarket(t, sunny, "goat-dairy", 500, 60, 60, 3)
	for _, c := range stoppables {
		t.Run(c.line, func(t *testing.T) {
			t.Parallel()
			from := market
			if c.sun {
				from = sunny
			}
			step := math.Pow(float64(lastMoment)/float64(firstMoment), 1/float64(moments-1))
			for i := range moments {
				after := time.Duration(float64(firstMoment) * math.Pow(step, float64(i)))
				const tries = 3 // the machine may be busy with something else: once is enough
				for try := 1; ; try++ {
					took := c.stop(t, from, i, after)
					if took <= watched*ends {
						break
					}
					if try == tries {
						t.Errorf("stopped after %s it still ran for %s", after, took)
						break
					}
				}
			}
		})
	}
}

// stop runs a command in a folder of its own, stops it and returns for how long it ran on.
func (c stoppable) stop(t *testing.T, market string, i int, after time.Duration) (took time.Duration) {
	t.Helper()
	dir := t.TempDir()
	yaml := filepath.Join(dir, scenarios.FileName)
	was := strings.Replace(get(t, filepath.Join(market, scenarios.FileName)), "catalog: parts\n", "catalog: "+filepath.Join(market, "parts")+"\n", 1)
	put(t, yaml, was)
	args := strings.Fields(strings.ReplaceAll(c.line, "HERE", "."))
	byLimit := c.limited && i%(len(stops)+1) == len(stops)
	if byLimit {
		args = append(args, "--time-limit", after.String())
	}
	run := exec.Command("cartwright", args...)
	run.Dir = dir
	run.Env = append(os.Environ(), "GORACE=atexit_sleep_ms=0") // else a program that is watched for races waits at its end
	var stdout, stderr bytes.Buffer
	run.Stdout, run.Stderr = &stdout, &stderr
	open, err := run.StdinPipe() // a page ends where its terminal does
	if err != nil {
		t.Fatal(err)
	}
	defer open.Close()
	if err := run.Start(); err != nil {
		t.Fatal(err)
	}
	ended := make(chan error, 1)
	go func() { ended <- run.Wait() }()
	select {
	case err = <-ended:
	case <-time.After(after):
		from := time.Now()
		if !byLimit {
			_ = run.Process.Signal(stops[i%len(stops)]) // it may have ended just now
		}
		err = <-ended
		took = time.Since(from)
	}
	c.leavings(t, dir, yaml, was)
	if strings.Contains(stderr.String(), "stopped while it was waiting") {
		return max(took, watched*ends+1) // it did not look up by itself
	}
	c.judge(t, after, err, &stdout, &stderr)
	return took
}

// judge checks how a command ended.
func (c stoppable) judge(t *testing.T, after time.Duration, err error, stdout, stderr *bytes.Buffer) {
	t.Helper()
	status := 0
	var exit *exec.ExitError
	switch {
	case errors.As(err, &exit):
		status = exit.ExitCode()
	case err != nil:
		t.Fatal(err)
	}
	const bySignal, stopped = -1, 3
	switch {
	case status == c.status:
	case status == bySignal && stdout.Len() == 0: // before it had begun
	case status == stopped && strings.Contains(stderr.String(), "error: stopped before"):
	default:
		t.Errorf("after %s: status %d: %s", after, status, stderr.String())
	}
}

// leavings checks what a command left in its folder: the scenario, whole, and the whole of what it writes or nothing.
func (c stoppable) leavings(t *testing.T, dir, yaml, was string) {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if !slices.Contains([]string{scenarios.FileName, c.out}, e.Name()) {
			t.Errorf("it left %s", e.Name())
		}
	}
	if now := get(t, yaml); now != was {
		if _, err := scenarios.Open(dir); err != nil || len(now) < len(was)/2 {
			t.Errorf("the scenario is no longer whole: %v", err)
		}
	}
	if c.whole == "" {
		return
	}
	written, err := os.ReadFile(filepath.Join(dir, c.out))
	if err == nil && !strings.HasSuffix(strings.TrimSpace(string(written)), c.whole) {
		t.Errorf("%s is half written: %d bytes", c.out, len(written))
	}
}

// get returns what a file holds.
func get(t *testing.T, path string) string {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}
