package cli

import (
	"fmt"

	"github.com/spf13/cobra"

	"cartwright/cmd/cartwright/view"
)

// commands returns every command of our own; the library adds help and completion.
func (a *app) commands() []*cobra.Command {
	return []*cobra.Command{
		a.demoCommand(),
		a.newCommand(),
		a.planCommand(),
		a.nextCommand(),
		a.compareCommand(),
		a.whyCommand(),
		a.frontierCommand(),
		a.drawCommand(),
		a.reportCommand(),
		a.pageCommand(),
		a.valueCommand(),
		a.doubtCommand(),
		a.boughtCommand(),
		a.auditCommand(),
		a.partsCommand(),
		a.modelCommand(),
		a.sourcesCommand(),
	}
}

// show writes an answer in the format asked for.
func (a *app) show(d view.Document, format *choice) error {
	answer, err := view.Render(d, view.Format(format.value), a.screenWidth())
	if err != nil {
		return err
	}
	return a.print(answer)
}

// noArguments refuses arguments.
func noArguments(cmd *cobra.Command, args []string) error {
	if len(args) > 0 {
		return wrong(fmt.Sprintf("run %q", cmd.CommandPath()), "%s takes no argument, but got %q", cmd.Name(), args[0])
	}
	return nil
}

// oneArgument accepts at most one argument of the given meaning.
func oneArgument(meaning string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if len(args) > 1 {
			return wrong(fmt.Sprintf("name one %s: %q", meaning, cmd.CommandPath()+" "+args[0]),
				"%s takes at most one %s, but got %d", cmd.Name(), meaning, len(args))
		}
		return nil
	}
}
