package cli

import (
	"context"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"cartwright/cmd/cartwright/safefile"
	"cartwright/cmd/cartwright/view"
)

// output is standard output that remembers its first failed write, so that nobody who writes to it on the
// way can lose the failure.
type output struct {
	w   io.Writer
	err error
}

// Write writes to the stream; after a failure it writes nothing any more.
func (o *output) Write(p []byte) (int, error) {
	if o.err != nil {
		return 0, o.err
	}
	n, err := o.w.Write(p)
	o.err = err
	return n, err
}

// failed returns the outcome of the first failed write, nil where there was none. A reader that stops early, as head
// does, has read enough: that is no failure.
func (o *output) failed() error {
	if o.err == nil || readNoMore(o.err) {
		return nil
	}
	return unwritten("to standard output", o.err)
}

// print writes an answer in one piece.
func (a *app) print(answer []byte) error {
	if _, err := a.stdout.Write(answer); err != nil {
		return a.stdout.failed()
	}
	return nil
}

// tell writes plain text, laid out for the screen.
func (a *app) tell(text string) error { return a.print([]byte(view.Plain(text, a.screenWidth()))) }

// target is a file that a command writes: where, which files it must not be, and a last check before it takes its place.
type target struct {
	path   string
	inputs []string     // files the run reads
	ready  func() error // nil: no check
}

// writeFile has write fill a file, which is replaced whole or left as it was (see package safefile). What is no
// ordinary file (a device, a pipe) is written directly. "-" is standard output. Writing ends where ctx does.
func (a *app) writeFile(ctx context.Context, to target, write func(io.Writer) error) error {
	path := to.path
	if path == "-" {
		if err := write(until{ctx, a.stdout}); err != nil && a.stdout.err == nil {
			return broken(ctx, unwritten("to standard output", err))
		}
		return a.stdout.failed()
	}
	if err := notAnInput(path, to.inputs); err != nil {
		return err
	}
	info, err := os.Stat(path)
	switch {
	case err == nil && info.IsDir():
		return wrong("give the name of a file in it: --out "+filepath.Join(path, "model.mps"), "%s is a folder", path)
	case err == nil && !info.Mode().IsRegular():
		return writeThrough(path, write)
	case err != nil && !errors.Is(err, fs.ErrNotExist):
		return unchanged(path, err)
	}
	if info, err := os.Stat(filepath.Dir(path)); err != nil || !info.IsDir() {
		return wrong("make it first: mkdir -p "+filepath.Dir(path), "there is no folder %s to put it in", filepath.Dir(path))
	}
	a.replacing.Lock()
	defer a.replacing.Unlock()
	var refused *outcome
	err = safefile.Replace(path, func(w io.Writer) error { return write(until{ctx, w}) }, to.ready)
	if err == nil || errors.As(err, &refused) {
		return err
	}
	return broken(ctx, unchanged(path, err))
}

// until is a writer that ends where a context does.
type until struct {
	ctx context.Context
	w   io.Writer
}

func (u until) Write(p []byte) (int, error) {
	if err := u.ctx.Err(); err != nil {
		return 0, err
	}
	return u.w.Write(p)
}

// broken returns the outcome of a write that failed: that it was stopped, where it was.
func broken(ctx context.Context, failure error) error {
	if ctx.Err() != nil {
		return &outcome{code: codeUnproven, err: errors.New("stopped before everything was written; no file was made or changed")}
	}
	return failure
}

// notAnInput refuses to write over a file that the run reads.
func notAnInput(path string, inputs []string) error {
	info, err := os.Stat(path)
	if err != nil {
		return nil // it is not there yet
	}
	for _, input := range inputs {
		if other, err := os.Stat(input); err == nil && os.SameFile(info, other) {
			return wrong("give it another name", "%s is read by this run and would be lost", path)
		}
	}
	return nil
}

// writeThrough writes to what is there already and cannot be replaced.
func writeThrough(path string, write func(io.Writer) error) error {
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		return unwritten(path, err)
	}
	err = write(f)
	if closing := f.Close(); err == nil {
		err = closing
	}
	if err != nil {
		return unwritten(path, err)
	}
	return nil
}
