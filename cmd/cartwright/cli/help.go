package cli

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"cartwright/catalog"
	"cartwright/cmd/cartwright/view"
	"cartwright/optimize"
	"cartwright/scenarios"
)

// topic is something other than a command that help explains. Its text is the README beside the code.
type topic struct {
	name, about, text string
}

// topics lists what help explains beside the commands.
func (p Program) topics() []topic {
	return []topic{
		{"catalog", "the files of the catalogue, every column", catalog.Manual()},
		{"scenario", "the scenario, every key", scenarios.Manual()},
		{"json", "what is printed: formats, exit status, the keys of JSON", p.Manual},
		{"model", "what a plan has to meet, and how it is proved", optimize.Manual()},
	}
}

// addHelp gives root its help command, which knows the topics, and a command that does not exist from one that
// does.
func (a *app) addHelp(root *cobra.Command, topics []topic) {
	root.InitDefaultHelpCmd()
	var list strings.Builder
	for _, t := range topics {
		fmt.Fprintf(&list, "  %-10s %s\n", t.name, t.about)
	}
	root.Long += "\n\nMore to read, with \"cartwright help TOPIC\":\n" + strings.TrimRight(list.String(), "\n")
	for _, c := range root.Commands() {
		if c.Name() != "help" {
			continue
		}
		c.Long = "Explains a command, or one of these:\n" + list.String()
		c.Example = "  cartwright help plan\n  cartwright help json"
		c.Run, c.RunE = nil, func(_ *cobra.Command, args []string) error {
			for _, t := range topics {
				if len(args) == 1 && args[0] == t.name {
					return a.manual(t.text)
				}
			}
			about, rest, err := root.Find(args)
			if err != nil || len(rest) > 0 {
				return unknownCommand(root, strings.Join(args, " "))
			}
			return about.Help()
		}
	}
}

// help returns the help of a command: its text, then how it is used, with flags wrapped to the screen.
func (a *app) help(cmd *cobra.Command) string {
	cmd.SetUsageTemplate(strings.ReplaceAll(cmd.UsageTemplate(), ".FlagUsages", fmt.Sprintf(".FlagUsagesWrapped %d", a.screenWidth())))
	about := cmd.Long
	if about == "" {
		about = cmd.Short
	}
	return strings.TrimRight(about, "\n") + "\n\n" + cmd.UsageString()
}

// manual writes a text in Markdown, laid out for the screen.
func (a *app) manual(text string) error {
	laid, err := view.Manual(text, a.screenWidth())
	if err != nil {
		return err
	}
	return a.print([]byte(laid))
}
