package cli

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"cartwright/catalog/problem"
	"cartwright/cmd/cartwright/view"
)

// choice is a flag with a fixed list of values.
type choice struct {
	value   string
	options []string
}

func (c *choice) String() string { return c.value }

// Type returns what the help text shows as the value: the options, unless they are so long that they would leave
// no room for what the flags mean.
func (c *choice) Type() string {
	if all := strings.Join(c.options, "|"); len(all) <= longestType {
		return all
	}
	return "word"
}

const longestType = 30

// Set takes one of the options.
func (c *choice) Set(text string) error {
	if !slices.Contains(c.options, text) {
		if near := problem.Nearest(text, c.options); near != "" {
			return fmt.Errorf("did you mean %q?", near)
		}
		return fmt.Errorf("write one of %s", strings.Join(c.options, ", "))
	}
	c.value = text
	return nil
}

// addChoice gives a command a flag with a fixed list of values, the first being the default.
func addChoice(cmd *cobra.Command, name, usage string, options []string) *choice {
	c := &choice{value: options[0], options: options}
	if c.Type() == "word" {
		usage += ": " + strings.Join(options, ", ")
	}
	cmd.Flags().Var(c, name, usage)
	// The only error is a flag that does not exist; it was made in the line above.
	_ = cmd.RegisterFlagCompletionFunc(name, cobra.FixedCompletions(options, cobra.ShellCompDirectiveNoFileComp))
	return c
}

// addFormat gives a command the choice of an output format.
func addFormat(cmd *cobra.Command) *choice {
	return addChoice(cmd, "format", "form of the answer", view.Formats)
}

// day is a flag that holds a date.
type day struct {
	time.Time
}

// String returns the date, or nothing where none was given.
func (d *day) String() string {
	if d.IsZero() {
		return ""
	}
	return d.Format(time.DateOnly)
}

// Type returns what the help text shows as the value.
func (d *day) Type() string { return "YYYY-MM-DD" }

// Set takes a date.
func (d *day) Set(text string) error {
	t, err := time.Parse(time.DateOnly, text)
	if err != nil {
		return fmt.Errorf("write a date like 2026-03-31")
	}
	d.Time = t
	return nil
}

// addAsOf gives a command the day by which the age of prices is judged.
func addAsOf(cmd *cobra.Command) *day {
	d := &day{}
	cmd.Flags().Var(d, "as-of", "day by which the age of prices is judged (default today)")
	return d
}

// or returns the day that was given, else today.
func (d *day) or(today func() time.Time) time.Time {
	if d.IsZero() {
		return today()
	}
	return d.Time
}
