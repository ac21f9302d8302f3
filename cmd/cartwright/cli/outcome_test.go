package cli

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"strings"
	"testing"

	"cartwright/catalog/problem"
	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

func TestReport(t *testing.T) {
	var list problem.List
	list.Add(problem.Pos{File: "b.yaml", Line: 2, Column: 3}, "no such key", "write name")
	list.Add(problem.Pos{File: "a.csv"}, "the file is empty", "")
	disagreement := &question.DisagreementError{Failed: []plan.Check{
		{Name: "mass", Value: 301, Limit: 300, Unit: "kg", Source: "the scenario's own limit", Detail: "all parts"}}}
	for _, c := range []struct {
		name string
		err  error
		code int
		want string
	}{
		{"done", nil, codeDone, ""},
		{"mistakes in files, in their order", fmt.Errorf("reading: %w", list.Err()), codeInput,
			"a.csv: the file is empty\n" +
				"b.yaml:2:3: no such key; write name\n" +
				"cartwright: error: 2 mistakes in the input; nothing was planned or written\n" +
				"cartwright: hint: correct each as it says, then run again\n"},
		{"wrong command line", wrong("write 1", "bad number %d", 7), codeInput,
			"cartwright: error: bad number 7\ncartwright: hint: write 1\n"},
		{"a plain error is wrong input", errors.New("odd"), codeInput, "cartwright: error: odd\n"},
		{"disagreement", disagreement, codeDisagree,
			"cartwright: error: internal disagreement: a plan failed its audit\n" +
				"  mass: have 301, limit 300 kg (the scenario's own limit); all parts\n" +
				"cartwright: hint: this is a fault of the program, not of the input; no plan is shown because none can be trusted\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			var stderr bytes.Buffer
			if code := report(&stderr, c.err); code != c.code {
				t.Errorf("exit %d, want %d", code, c.code)
			}
			if stderr.String() != c.want {
				t.Errorf("stderr:\n%swant:\n%s", stderr.String(), c.want)
			}
		})
	}
}

func TestEnding(t *testing.T) {
	for status, want := range map[question.Status]int{
		question.Optimal: codeDone, question.Infeasible: codeNo,
		question.TimeLimit: codeUnproven, question.GaveUp: codeUnproven,
	} {
		p := question.Problem{Scenario: &scenarios.Scenario{Name: "Barn"}}
		r := &question.Result{Solver: question.Solver{Status: status}}
		if got := report(&bytes.Buffer{}, ending(p, r)); got != want {
			t.Errorf("status %s: exit %d, want %d", status, got, want)
		}
	}
}

// A search that is interrupted at once ends with 3, whatever it had found.
func TestInterrupted(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	var stdout, stderr bytes.Buffer
	code := Program{}.Run(ctx, []string{"plan", "star-party"}, strings.NewReader(""), &stdout, &stderr)
	if code != codeUnproven {
		t.Errorf("exit %d, want %d; stderr: %s", code, codeUnproven, stderr.String())
	}
	if !strings.Contains(stderr.String(), "stopped before") {
		t.Errorf("stderr does not say that it was stopped: %s", stderr.String())
	}
}
