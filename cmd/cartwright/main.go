// Command cartwright plans power carts: from a list of parts and a description of what is wanted it finds
// the shopping plans that are cheapest, can be wired and can be rolled. Run "cartwright help" to begin.
package main

import (
	"context"
	_ "embed"
	"os"
	"os/signal"
	"runtime/debug"
	"syscall"

	"cartwright/cmd/cartwright/cli"
)

//go:embed README.md
var manual string

func main() { os.Exit(run()) }

// run hands the process's arguments and streams on, and returns the exit code.
func run() int {
	// Most memory of a search is needed for a moment only. To collect it half as often saves a tenth of the time.
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(200)
	}
	// Writing to a pipe that is closed ends quietly, not by a death that a shell reports.
	signal.Ignore(syscall.SIGPIPE)
	// The first Ctrl-C, or being told to end, or a terminal that closes, ends the search and shows the best so far;
	// the second ends the program.
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM, syscall.SIGHUP)
	defer stop()
	context.AfterFunc(ctx, stop)
	return cli.Program{Manual: manual}.Run(ctx, os.Args[1:], os.Stdin, os.Stdout, os.Stderr)
}
