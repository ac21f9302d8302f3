package cli

import (
	"bytes"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"cartwright/catalog/problem"
	"cartwright/cmd/cartwright/view"
	"cartwright/scenarios"
)

const demoHelp = `Lists the demos, or tells the story of one. Their people, places and parts are
invented.

A demo's name can stand wherever a scenario is asked for.`

const demoExample = `  cartwright demo
  cartwright demo star-party`

// demoCommand lists the demos or tells the story of one.
func (a *app) demoCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:               "demo [name]",
		Short:             "List the demos, or tell the story of one",
		Long:              demoHelp,
		Example:           demoExample,
		Args:              oneArgument("demo"),
		ValidArgsFunction: completeDemo,
	}
	format := addFormat(cmd)
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if len(args) == 0 {
			return a.listDemos(format)
		}
		if !slices.Contains(scenarios.DemoNames(), args[0]) {
			hint := "the demos are " + strings.Join(scenarios.DemoNames(), ", ")
			if near := problem.Nearest(args[0], scenarios.DemoNames()); near != "" {
				hint = fmt.Sprintf("did you mean %q?", cmd.CommandPath()+" "+near)
			}
			return wrong(hint, "there is no demo %q", args[0])
		}
		story, err := demoStory(args[0])
		if err != nil {
			return err
		}
		return a.manual(string(story))
	}
	return cmd
}

// demoStory returns the README of a demo.
func demoStory(name string) ([]byte, error) {
	return fs.ReadFile(scenarios.DemoFS(), path.Join(name, "README.md"))
}

// listDemos shows the names of the demos with the first sentence of each story.
func (a *app) listDemos(format *choice) error {
	var demos view.Demos
	for _, name := range scenarios.DemoNames() {
		story, err := demoStory(name)
		if err != nil {
			return err
		}
		demos = append(demos, view.Demo{Name: name, Story: firstSentence(story)})
	}
	return a.show(demos, format)
}

// firstSentence returns the first sentence below the headings of a Markdown text, on one line.
func firstSentence(text []byte) string {
	var words []string
	for line := range bytes.Lines(text) {
		prose := strings.TrimSpace(string(line))
		if strings.HasPrefix(prose, "#") {
			continue
		}
		if prose == "" && len(words) > 0 {
			break
		}
		words = append(words, strings.Fields(prose)...)
	}
	for i, w := range words {
		if strings.HasSuffix(w, ".") {
			words = words[:i+1]
			break
		}
	}
	return strings.Join(words, " ")
}
