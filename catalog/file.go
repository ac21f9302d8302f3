package catalog

import (
	"errors"
	"fmt"
	"io"
	"io/fs"

	"cartwright/catalog/problem"
)

// maxFile is the largest catalogue file that is read, in bytes: some hundred thousand parts.
const maxFile = 16 << 20

// readFile returns a file's bytes. What is wrong goes to the report; err is fs.ErrNotExist for a file that
// is not there, which the caller judges.
func readFile(fsys fs.FS, name string, to *report) ([]byte, error) {
	whole := problem.Pos{File: to.file}
	fail := func(wrong, right string) ([]byte, error) {
		to.lost = true
		to.add(whole, wrong, right)
		return nil, errors.New(wrong)
	}
	info, err := fs.Stat(fsys, name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, fs.ErrNotExist
	case err != nil:
		return fail("cannot be read: "+reason(err), "make it a plain file that you may read")
	case info.IsDir():
		return fail("is a folder", "put a CSV file in its place")
	case !info.Mode().IsRegular():
		return fail("is not a plain file", "put a CSV file in its place")
	case info.Size() > maxFile:
		return fail(tooLong())
	}
	f, err := fsys.Open(name)
	if err != nil {
		return fail("cannot be read: "+reason(err), "make it a plain file that you may read")
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, maxFile+1)) // the file may have grown since
	switch {
	case err != nil:
		return fail("cannot be read: "+reason(err), "make it a plain file that you may read")
	case len(data) > maxFile:
		return fail(tooLong())
	}
	return data, nil
}

// tooLong says that a file is larger than is read.
func tooLong() (wrong, right string) {
	const megabytes = maxFile >> 20
	return fmt.Sprintf("the file has more than %d MB", megabytes),
		fmt.Sprintf("a catalogue file has at most %d MB: keep only parts you may buy", megabytes)
}

// reason returns what the system says, without the path, which stands before the message already.
func reason(err error) string {
	var path *fs.PathError
	if errors.As(err, &path) {
		return path.Err.Error()
	}
	return err.Error()
}
