package cli

import (
	"context"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"cartwright/cmd/cartwright/page"
	"cartwright/cmd/cartwright/page/files"
	"cartwright/cmd/cartwright/page/planner"
)

const pageHelp = `Serves one page to a browser on this machine: limits as sliders with what a step
costs, loads, parts and what is owned as tables that are checked while you type,
and the plans, drawings and lists that follow. Purchases you think of, and two
plans, stand side by side. "Bought" and "sold" change what is owned; undo takes
it back; nothing is written before you press save, and nothing that changed
outside is overwritten.

Open the address that is printed. It works on this machine only and holds a
secret: give it to nobody. The page ends with Ctrl-C, or with the terminal.

The scenario is a demo's name, a folder, or a scenario.yaml; without one the
current folder is meant. A demo can be tried out, but not saved.

With --file nothing is served: the page, the scenario, its parts and the whole
planner are written as one HTML file. It plans in a browser of 2023 or later, on
a phone or a friend's laptop, with no network and nothing installed, and gives
changed files back as downloads. An existing file is replaced.`

const pageExample = `  cartwright page cider-shed
  cartwright page star-party
  cartwright page cider-shed --file cart.html`

// pageCommand serves the page.
func (a *app) pageCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:               "page [scenario]",
		Short:             "Plan in a browser on this machine",
		Long:              pageHelp,
		Example:           pageExample,
		Args:              oneArgument("scenario"),
		ValidArgsFunction: completeScenario,
	}
	file := cmd.Flags().String("file", "", "`file` to write the page to, ending in .html, instead of serving it")
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if cmd.Flags().Changed("file") {
			return a.pageFile(cmd.Context(), args, *file)
		}
		return a.servePage(cmd.Context(), args)
	}
	return cmd
}

// servePage serves the page until the terminal ends.
func (a *app) servePage(ctx context.Context, args []string) error {
	about, err := a.pageFiles(args)
	if err != nil {
		return err
	}
	ctx, cancel := context.WithCancel(ctx)
	defer cancel()
	go func() { // the terminal's end is the page's
		_, _ = io.Copy(io.Discard, a.stdin)
		cancel()
	}()
	p := &page.Page{Planner: &planner.Planner{Today: a.today}, Files: about}
	unsaved, err := p.Serve(ctx, func(address string) {
		fmt.Fprintf(a.stdout, "%s\n", address)
		fmt.Fprintln(a.stderr, "cartwright: open this address in a browser; Ctrl-C ends the page")
	})
	if unsaved {
		fmt.Fprintln(a.stderr, "cartwright: changes that were not saved are lost")
	}
	return err
}

// pageFiles says which files the page is about. They may have mistakes, which the page shows; but they have to
// be there.
func (a *app) pageFiles(args []string) (page.Files, error) {
	where := "."
	if len(args) > 0 {
		where = args[0]
	}
	s, err := a.scenario(where)
	if s == nil {
		return page.Files{}, err
	}
	if s.Dir != "" {
		return page.Files{Scenario: s.File, Store: files.Disk{}}, nil
	}
	kept, err := files.Demo(where)
	return page.Files{Scenario: s.File, Store: kept}, err
}
