package files

import (
	"bytes"
	"io"
	"io/fs"
	"path"
	"slices"
	"strings"
	"time"
)

// texts are files by their names, as a file system: a folder is what has files in it.
type texts map[string][]byte

// Open opens a file or a folder.
func (t texts) Open(name string) (fs.File, error) {
	if !fs.ValidPath(name) {
		return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrInvalid}
	}
	if text, ok := t[name]; ok {
		return &file{Reader: bytes.NewReader(text), info: info{path.Base(name), int64(len(text)), false}}, nil
	}
	entries := t.entries(name)
	if len(entries) == 0 {
		return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrNotExist}
	}
	return &folder{info: info{path.Base(name), 0, true}, rest: entries}, nil
}

// entries returns what is in a folder, in the order of names.
func (t texts) entries(name string) []fs.DirEntry {
	within := name + "/"
	if name == "." {
		within = ""
	}
	found := map[string]info{}
	for key, text := range t {
		rest, ok := strings.CutPrefix(key, within)
		if !ok {
			continue
		}
		first, _, deeper := strings.Cut(rest, "/")
		if deeper {
			found[first] = info{first, 0, true}
		} else {
			found[first] = info{first, int64(len(text)), false}
		}
	}
	var list []fs.DirEntry
	for _, i := range found {
		list = append(list, fs.FileInfoToDirEntry(i))
	}
	slices.SortFunc(list, func(a, b fs.DirEntry) int { return strings.Compare(a.Name(), b.Name()) })
	return list
}

// file is an open file.
type file struct {
	io.Reader
	info info
}

func (f *file) Stat() (fs.FileInfo, error) { return f.info, nil }
func (f *file) Close() error               { return nil }

// folder is an open folder, with what is not read of it yet.
type folder struct {
	info info
	rest []fs.DirEntry
}

func (f *folder) Stat() (fs.FileInfo, error) { return f.info, nil }
func (f *folder) Close() error               { return nil }

func (f *folder) Read([]byte) (int, error) {
	return 0, &fs.PathError{Op: "read", Path: f.info.name, Err: fs.ErrInvalid}
}

// ReadDir returns the next n entries, all of them where n is not above 0.
func (f *folder) ReadDir(n int) ([]fs.DirEntry, error) {
	switch {
	case n <= 0:
		n = len(f.rest)
	case len(f.rest) == 0:
		return nil, io.EOF
	}
	n = min(n, len(f.rest))
	list := f.rest[:n]
	f.rest = f.rest[n:]
	return list, nil
}

// info is what a file or a folder is.
type info struct {
	name   string
	size   int64
	folder bool
}

func (i info) Name() string       { return i.name }
func (i info) Size() int64        { return i.size }
func (i info) ModTime() time.Time { return time.Time{} }
func (i info) IsDir() bool        { return i.folder }
func (i info) Sys() any           { return nil }

func (i info) Mode() fs.FileMode {
	if i.folder {
		return fs.ModeDir | 0o555
	}
	return 0o444
}
