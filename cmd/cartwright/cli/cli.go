// Package cli is the front door: it reads the command line, opens what is asked about, has it answered and
// writes the answer. One file holds one command, its help text on top.
//
// Answers go to standard output in one piece, everything else to standard error. Commands return an
// outcome, which is an exit code with what went wrong and a hint of what to do next; see outcome.go for
// the codes.
package cli

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"
	"sync"
	"time"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"cartwright/catalog/problem"
	"cartwright/cmd/cartwright/view"
)

const rootHelp = `Cartwright answers: what do I buy next, and how many, so that the power cart
carries my loads long enough, can still be rolled and does not tip, and every
cable and fuse is right, for the least money?

A scenario says what the cart has to do and what is owned already; a catalogue
lists parts with prices. Look at a demo first, then start one of your own.

Exit status: 0 done; 1 no plan meets the limits, or the audit fails; 2 the input
is wrong; 3 stopped before the proof was complete; 4 the program disagrees with
itself; 5 the answer could not be written.`

const rootExample = `  cartwright demo
  cartwright plan cider-shed
  cartwright new my-cart`

// app is what every command works with.
type app struct {
	stdin  io.Reader
	stdout *output
	stderr io.Writer
	// today returns the day by which the age of prices is judged where --as-of gives none.
	today func() time.Time
	width int // of the screen, where --width gives it
	// replacing is held while a file takes its place.
	replacing sync.Mutex
}

// Program is the program without its process.
type Program struct {
	Manual string // what it prints, in Markdown: the text of "help json"
}

// Run runs the command line args, without the program's name, and returns the exit code.
func (p Program) Run(ctx context.Context, args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	a := &app{stdin: stdin, stdout: &output{w: stdout}, stderr: stderr, today: time.Now}
	root := a.root(p.topics())
	root.SetArgs(args)
	root.SetIn(stdin)
	root.SetOut(a.stdout)
	root.SetErr(stderr)
	done := make(chan error, 1)
	go func() {
		err := root.ExecuteContext(ctx)
		if failed := a.stdout.failed(); failed != nil {
			err = failed
		}
		done <- err
	}()
	select {
	case err := <-done:
		return report(stderr, err)
	case <-ctx.Done():
		return report(stderr, a.windUp(done))
	}
}

// windUpTime is how long a command that was told to stop may take to show what it has. Every search looks up far more
// often; but a read or a write may hang for as long as a disk, a network or another program does.
const windUpTime = 900 * time.Millisecond

// windUp waits for a command that was told to stop, and no longer than it may take. A file that is being put in its
// place is waited for, so that none is left half written.
func (a *app) windUp(done <-chan error) error {
	select {
	case err := <-done:
		return err
	case <-time.After(windUpTime):
		a.replacing.Lock() // and never given back: no other file is begun
		return &outcome{code: codeUnproven, err: errors.New("stopped while it was waiting for a file or for another program"),
			hint: "check whether what it reads from or writes to answers"}
	}
}

// root returns the whole tree of commands, made anew for every run.
func (a *app) root(topics []topic) *cobra.Command {
	root := &cobra.Command{
		Use:           "cartwright",
		Short:         "Plan what to buy for a power cart",
		Long:          rootHelp,
		Example:       rootExample,
		SilenceErrors: true,
		SilenceUsage:  true,
		Args:          cobra.ArbitraryArgs,
		RunE: func(cmd *cobra.Command, args []string) error {
			if told, _ := cmd.Flags().GetBool("version"); told {
				return a.print([]byte(view.Wrapped(cmd.Name()+" version "+version()+"\n", a.screenWidth())))
			}
			if len(args) == 0 {
				return cmd.Help()
			}
			return unknownCommand(cmd, args[0])
		},
	}
	root.Flags().BoolP("version", "v", false, "show the version and the engines that are there")
	root.SetFlagErrorFunc(flagError)
	root.SetHelpFunc(func(cmd *cobra.Command, _ []string) { _ = a.tell(a.help(cmd)) }) // a failed write is kept by a.stdout
	a.addWidth(root)
	root.AddCommand(a.commands()...)
	a.addHelp(root, topics)
	return root
}

// unknownCommand says that there is no such command, and which one may be meant.
func unknownCommand(root *cobra.Command, name string) error {
	var known []string
	for _, c := range root.Commands() {
		if c.IsAvailableCommand() {
			known = append(known, c.Name())
		}
	}
	hint := "the commands are " + strings.Join(known, ", ")
	if near := problem.Nearest(name, known); near != "" {
		hint = fmt.Sprintf("did you mean %q?", "cartwright "+near)
	}
	return wrong(hint, "there is no command %q", name)
}

// flagError adds the nearest flag to an error about one that does not exist, and says in our words what a
// flag's value has to be.
func flagError(cmd *cobra.Command, err error) error {
	hint := fmt.Sprintf("%q lists the flags", cmd.CommandPath()+" --help")
	var missing *pflag.NotExistError
	if errors.As(err, &missing) {
		var known []string
		cmd.Flags().VisitAll(func(f *pflag.Flag) { known = append(known, f.Name) })
		if near := problem.Nearest(missing.GetSpecifiedName(), known); near != "" {
			hint = "did you mean --" + near + "?"
		}
	}
	var invalid *pflag.InvalidValueError
	if errors.As(err, &invalid) {
		name := invalid.GetFlag().Name
		switch invalid.GetFlag().Value.Type() {
		case "int", "uint64":
			return wrong(fmt.Sprintf("write for example --%s 3", name), "--%s is %q, but has to be a whole number", name, invalid.GetValue())
		case "duration":
			return wrong(fmt.Sprintf("write for example --%s 90s", name), "--%s is %q, but has to be a time with its unit: s, m or h",
				name, invalid.GetValue())
		}
	}
	return &outcome{code: codeInput, err: err, hint: hint}
}
