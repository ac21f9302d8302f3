package page

import (
	"bytes"
	"io"
	"io/fs"
	"time"
)

// overlay is a folder with the texts of some files changed.
type overlay struct {
	below fs.FS
	texts map[string][]byte
}

// Open opens a file, with its own text or the changed one.
func (o *overlay) Open(name string) (fs.File, error) {
	if text, ok := o.texts[name]; ok {
		return &textFile{name: name, Reader: bytes.NewReader(text), size: int64(len(text))}, nil
	}
	return o.below.Open(name)
}

// textFile is a plain file in memory.
type textFile struct {
	io.Reader
	name string
	size int64
}

// Stat returns what the file is.
func (f *textFile) Stat() (fs.FileInfo, error) { return textInfo{f.name, f.size}, nil }

// Close does nothing.
func (f *textFile) Close() error { return nil }

type textInfo struct {
	name string
	size int64
}

func (i textInfo) Name() string       { return i.name }
func (i textInfo) Size() int64        { return i.size }
func (i textInfo) Mode() fs.FileMode  { return 0o444 }
func (i textInfo) ModTime() time.Time { return time.Time{} }
func (i textInfo) IsDir() bool        { return false }
func (i textInfo) Sys() any           { return nil }
