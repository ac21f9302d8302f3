package cli

import (
	"fmt"
	"os"
	"time"

	"github.com/schollz/progressbar/v3"
	"golang.org/x/term"

	"cartwright/optimize/question"
)

// progress shows on standard error how far a search is. It does nothing where that is no terminal.
type progress struct {
	bar *progressbar.ProgressBar
}

// progress begins to show it.
func (a *app) progress() *progress {
	f, ok := a.stderr.(*os.File)
	if !ok || !term.IsTerminal(int(f.Fd())) {
		return &progress{}
	}
	return &progress{bar: progressbar.NewOptions(-1,
		progressbar.OptionSetWriter(f),
		progressbar.OptionSetDescription("searching"),
		progressbar.OptionSetElapsedTime(true),
		progressbar.OptionThrottle(100*time.Millisecond),
		progressbar.OptionClearOnFinish(),
	)}
}

// tell shows how many cores were looked into and how many plans were found so far.
func (p *progress) tell(at question.Progress) {
	if p.bar != nil {
		p.bar.Describe(fmt.Sprintf("searching: %d choices looked into, %d plans found", at.Looked, at.Found))
		// A terminal that takes no progress takes no answer either, and that failure is told.
		_ = p.bar.Set(at.Looked)
	}
}

// clear removes the line.
func (p *progress) clear() {
	if p.bar != nil {
		_ = p.bar.Finish()
	}
}
