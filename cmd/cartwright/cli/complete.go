package cli

import (
	"strings"

	"github.com/spf13/cobra"

	"cartwright/scenarios"
)

// completeScenario offers the demos to a shell; where none fits, the shell offers files.
func completeScenario(_ *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	return demosBeginning(begun), cobra.ShellCompDirectiveDefault
}

// completeDemo offers the demos and nothing else.
func completeDemo(_ *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	return demosBeginning(begun), cobra.ShellCompDirectiveNoFileComp
}

// completeFolder offers folders.
func completeFolder(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	return nil, cobra.ShellCompDirectiveFilterDirs
}

// demosBeginning returns the demos whose names begin so.
func demosBeginning(begun string) []string {
	var names []string
	for _, name := range scenarios.DemoNames() {
		if strings.HasPrefix(name, begun) {
			names = append(names, name)
		}
	}
	return names
}
