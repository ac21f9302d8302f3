package cli

import (
	"context"
	"errors"
	"time"

	"github.com/spf13/cobra"

	"cartwright/optimize/question"
)

// timeLimit is a flag that holds how long to search at most.
type timeLimit struct {
	given time.Duration
}

// addTimeLimit gives a command the time to search.
func addTimeLimit(cmd *cobra.Command) *timeLimit {
	t := &timeLimit{}
	cmd.Flags().DurationVar(&t.given, "time-limit", 0, "longest `time` to search, like 90s (default: the scenario's)")
	return t
}

// context returns the command's context with the time that was given, else that of the scenario.
func (t *timeLimit) context(cmd *cobra.Command, p question.Problem) (context.Context, context.CancelFunc, error) {
	longest := t.given
	if cmd.Flags().Changed("time-limit") {
		if longest <= 0 {
			return nil, nil, wrong("write for example --time-limit 90s", "--time-limit is %s, but has to be longer than nothing", longest)
		}
	} else {
		longest = time.Duration(p.Scenario.Solver.TimeLimitS * float64(time.Second))
	}
	if longest <= 0 {
		ctx, cancel := context.WithCancel(cmd.Context())
		return ctx, cancel, nil
	}
	ctx, cancel := context.WithTimeout(cmd.Context(), longest)
	return ctx, cancel, nil
}

// stopped returns the outcome of a search that was stopped before there was an answer; any other error as
// it is.
func stopped(err error) error {
	if errors.Is(err, context.Canceled) || errors.Is(err, context.DeadlineExceeded) || errors.Is(err, question.ErrUnknown) {
		return stoppedBefore("the answer was known")
	}
	return err
}

// stoppedBefore returns the outcome of a search that was stopped before something, with what it had shown.
func stoppedBefore(what string) error {
	return &outcome{code: codeUnproven, err: errors.New("stopped before " + what),
		hint: "give it more time, for example --time-limit 10m"}
}
