package cli

import (
	"os"

	"github.com/spf13/cobra"
	"golang.org/x/term"

	"cartwright/cmd/cartwright/view"
)

// screenWidth returns how many columns an answer may take: as --width says, else as the terminal has, else 80.
func (a *app) screenWidth() int {
	if a.width > 0 {
		return a.width
	}
	if f, ok := a.stdout.w.(*os.File); ok {
		if width, _, err := term.GetSize(int(f.Fd())); err == nil && width > 0 {
			return width
		}
	}
	return view.Width
}

// addWidth gives all commands the width of the screen.
func (a *app) addWidth(root *cobra.Command) {
	root.PersistentFlags().IntVar(&a.width, "width", 0, "`columns` of the screen (default the terminal's, else 80)")
}
