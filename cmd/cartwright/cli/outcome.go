package cli

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"

	"cartwright/catalog/problem"
	"cartwright/optimize/question"
)

// The exit codes.
const (
	codeDone     = 0
	codeNo       = 1 // no plan meets the limits; the audit of what is installed fails
	codeInput    = 2 // the input is wrong
	codeUnproven = 3 // stopped by the time limit, by hand, or by the solver's failure
	codeDisagree = 4 // a plan failed its audit, or a proof does not hold
	codeWrite    = 5 // the answer could not be written
)

// outcome is how a command ended other than well.
type outcome struct {
	code int
	err  error
	hint string // what to do next; "" for nothing
}

func (o *outcome) Error() string { return o.err.Error() }
func (o *outcome) Unwrap() error { return o.err }

// wrong returns the outcome of a wrong command line or a wrong file.
func wrong(hint, format string, args ...any) error {
	return &outcome{code: codeInput, err: fmt.Errorf(format, args...), hint: hint}
}

// asFlags returns mistakes that stand on the command line, and so have no place in a file.
func asFlags(err error) error {
	var mistakes *problem.Error
	if !errors.As(err, &mistakes) {
		return err
	}
	var wrongs, rights []string
	for _, m := range mistakes.Problems {
		wrongs, rights = append(wrongs, m.Wrong), append(rights, m.Right)
	}
	return wrong(strings.Join(rights, "; "), "%s", strings.Join(wrongs, "; "))
}

// unwritten returns the outcome of a write that failed.
func unwritten(what string, err error) error {
	return &outcome{
		code: codeWrite,
		err:  fmt.Errorf("cannot write %s: %w", what, err),
		hint: "what is there now may be incomplete; write it somewhere else, or make room, and run again",
	}
}

// unchanged returns the outcome of a file or folder that could not be put in its place: what stood there
// before still does. The error leaves out the name of the temporary file, which would mean nothing to the user.
func unchanged(path string, err error) error {
	var of *fs.PathError
	var between *os.LinkError
	switch {
	case errors.As(err, &of):
		err = of.Err
	case errors.As(err, &between):
		err = between.Err
	}
	return &outcome{
		code: codeWrite,
		err:  fmt.Errorf("cannot write %s: %w", path, err),
		hint: "nothing there has changed; write it somewhere else, or make room, and run again",
	}
}

// report tells of an error on stderr and returns the exit code. The voice: lower case, no full stop, "error:"
// says what is wrong and "hint:" what to do next; mistakes in files stand one a line with their place.
func report(stderr io.Writer, err error) int {
	if err == nil {
		return codeDone
	}
	code, hint := codeInput, ""
	var o *outcome
	if errors.As(err, &o) {
		code, hint = o.code, o.hint
	}
	var mistakes *problem.Error
	var disagreement *question.DisagreementError
	switch {
	case errors.As(err, &mistakes):
		for _, m := range mistakes.Problems {
			fmt.Fprintln(stderr, m.Error())
		}
		n := len(mistakes.Problems)
		what := "1 mistake in the input"
		if n != 1 {
			what = fmt.Sprintf("%d mistakes in the input", n)
		}
		fmt.Fprintf(stderr, "cartwright: error: %s; nothing was planned or written\n", what)
		if hint == "" {
			hint = "correct each as it says, then run again"
		}
	case errors.As(err, &disagreement):
		code = codeDisagree
		fmt.Fprintf(stderr, "cartwright: error: %v\n", err)
		hint = "this is a fault of the program, not of the input; no plan is shown because none can be trusted"
	default:
		fmt.Fprintf(stderr, "cartwright: error: %v\n", err)
	}
	if hint != "" {
		fmt.Fprintf(stderr, "cartwright: hint: %s\n", hint)
	}
	return code
}
