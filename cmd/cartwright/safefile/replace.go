// Package safefile writes files that people keep. A file is replaced whole or left as it was; its mode, symbolic links
// to it and its other names stay; and no half-written file is left beside it, whatever signal comes. Loss of power may
// leave one, whose name is a dot, the file's name and more.
package safefile

import (
	"errors"
	"io"
	"io/fs"
	"math/rand/v2"
	"os"
	"os/signal"
	"path/filepath"
	"strconv"
	"syscall"
)

// Replace has fill write the file at path. The text goes to a file beside it first and is made safe on disk;
// then ready, if given, may still refuse; then the new file takes the old one's name. From ready on the folder is
// locked where the system can do that, so that of several runs at once each finds what the one before wrote.
// A file that has several names is written in its place instead, since a new file would have one of them only.
func Replace(path string, fill func(io.Writer) error, ready func() error) error {
	path, old, err := settle(path)
	if err != nil {
		return err
	}
	defer hold()()
	beside, err := create(path, old)
	if err != nil {
		return err
	}
	name := beside.Name()
	defer os.Remove(name) // it is gone already where it took the other's name
	err = fill(beside)
	if err == nil {
		err = beside.Sync()
	}
	if err = errors.Join(err, beside.Close()); err != nil {
		return err
	}
	release, err := lock(filepath.Dir(path))
	if err != nil {
		return err
	}
	defer release()
	if ready != nil {
		if err := ready(); err != nil {
			return err
		}
	}
	if old != nil && names(path, old) > 1 {
		return inPlace(path, name)
	}
	if err := rename(name, path); err != nil {
		return err
	}
	return syncFolder(filepath.Dir(path))
}

// settle returns the file that a path leads to, behind symbolic links, and what is there now, nil for nothing.
func settle(path string) (string, fs.FileInfo, error) {
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return path, nil, nil
	case err != nil:
		return "", nil, err
	}
	path, err = filepath.EvalSymlinks(path)
	return path, info, err
}

// create makes a new file beside path, with the mode of the file that is there or the usual one.
func create(path string, old fs.FileInfo) (*os.File, error) {
	mode := fs.FileMode(0o666)
	if old != nil {
		mode = old.Mode().Perm()
	}
	for {
		name := filepath.Join(filepath.Dir(path), "."+filepath.Base(path)+"-"+strconv.FormatUint(rand.Uint64(), 36))
		f, err := os.OpenFile(name, os.O_RDWR|os.O_CREATE|os.O_EXCL, mode)
		if errors.Is(err, fs.ErrExist) {
			continue
		}
		if err == nil && old != nil {
			// Gives back the rights that the process's umask took away; where that is not allowed the file has fewer.
			_ = f.Chmod(mode)
			keepOwner(name, old)
		}
		return f, err
	}
}

// inPlace copies the file called name over the one at path. Where that breaks off, what stood there is put back.
func inPlace(path, name string) error {
	before, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	after, err := os.ReadFile(name)
	if err != nil {
		return err
	}
	if err := overwrite(path, after); err != nil {
		return errors.Join(err, overwrite(path, before))
	}
	return nil
}

// overwrite gives a file another text and makes it safe on disk.
func overwrite(path string, text []byte) error {
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		return err
	}
	_, err = f.WriteAt(text, 0)
	if err == nil {
		err = f.Truncate(int64(len(text)))
	}
	if err == nil {
		err = f.Sync()
	}
	return errors.Join(err, f.Close())
}

// hold keeps signals from ending the process until release is called. Others that listen for them still get them.
func hold() (release func()) {
	heard := make(chan os.Signal, 1)
	signal.Notify(heard, os.Interrupt, syscall.SIGTERM, syscall.SIGHUP)
	return func() { signal.Stop(heard) }
}
