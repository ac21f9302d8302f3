package cli

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/google/renameio/v2"
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

// failed returns the outcome of the first failed write, nil where there was none.
func (o *output) failed() error {
	if o.err == nil {
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

// writeFile has write fill the file at path, which is replaced whole or left as it was: the text goes to a
// file beside it, is made safe on disk and then takes its name. What is no ordinary file (a device, a
// pipe) is written directly. "-" is standard output.
func (a *app) writeFile(path string, write func(io.Writer) error) error {
	if path == "-" {
		if err := write(a.stdout); err != nil {
			return unwritten("to standard output", err)
		}
		return a.stdout.failed()
	}
	info, err := os.Stat(path)
	switch {
	case err == nil && info.IsDir():
		return wrong("give the name of a file in it: --out "+filepath.Join(path, "model.mps"), "%s is a folder", path)
	case err == nil && !info.Mode().IsRegular():
		return writeThrough(path, write)
	case err == nil:
		// The file keeps its place behind a symbolic link.
		if path, err = filepath.EvalSymlinks(path); err != nil {
			return unchanged(path, err)
		}
	case !errors.Is(err, fs.ErrNotExist):
		return unchanged(path, err)
	}
	if info, err := os.Stat(filepath.Dir(path)); err != nil || !info.IsDir() {
		return wrong("make it first: mkdir -p "+filepath.Dir(path), "there is no folder %s to put it in", filepath.Dir(path))
	}
	f, err := renameio.NewPendingFile(path, renameio.WithTempDir(filepath.Dir(path)),
		renameio.WithPermissions(0o666), renameio.WithExistingPermissions())
	if err != nil {
		return unchanged(path, err)
	}
	defer f.Cleanup() // does nothing once the file has its name
	if err := write(f); err != nil {
		return unchanged(path, err)
	}
	if err := f.CloseAtomicallyReplace(); err != nil {
		return unchanged(path, err)
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
