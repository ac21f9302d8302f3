package scenarios

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"strconv"
	"unicode/utf8"

	"cartwright/catalog/plaintext"
	"cartwright/catalog/problem"
)

// The most bytes read of a file. A scenario of a hundred loads has 10 kB; a year of minutes on two legs
// has 17 MB. Anything larger is some other file, and is refused before it is read.
const (
	maxScenarioBytes = 256 << 10
	maxProfileBytes  = 32 << 20
)

// readFile reads a whole text file of at most limit bytes with open, and adds what is wrong with it to
// the list at pos. A byte order mark at the start is dropped: spreadsheets write one.
func readFile(open func() (fs.File, error), shown string, pos problem.Pos, limit int64, list *problem.List) ([]byte, bool) {
	name := strconv.Quote(shown)
	f, err := open()
	if err != nil {
		var special specialFile
		switch {
		case errors.As(err, &special):
			list.Add(pos, "the file "+name+" is "+string(special), "give the name of a plain file")
		case errors.Is(err, fs.ErrNotExist):
			list.Add(pos, "there is no file "+name, "give the name of one that exists")
		case errors.Is(err, fs.ErrPermission):
			list.Add(pos, "the file "+name+" may not be read", "give yourself the right to read it, or name another")
		default:
			list.Add(pos, "the file "+name+" cannot be opened: "+plain(err), "give the name of a file that can be read")
		}
		return nil, false
	}
	defer f.Close() // read only: nothing can be lost
	info, err := f.Stat()
	if err == nil && info.IsDir() {
		list.Add(pos, name+" is a folder", "give the name of a file")
		return nil, false
	}
	if err == nil && info.Size() > limit {
		list.Add(pos, fmt.Sprintf("the file %s has %d bytes", name, info.Size()), fmt.Sprintf("write at most %d", limit))
		return nil, false
	}
	data, err := io.ReadAll(io.LimitReader(f, limit+1))
	switch {
	case err != nil:
		list.Add(pos, "the file "+name+" cannot be read: "+plain(err), "give the name of a file that can be read")
		return nil, false
	case int64(len(data)) > limit:
		list.Add(pos, fmt.Sprintf("the file %s has more than %d bytes", name, limit), "write fewer")
		return nil, false
	}
	return bytes.TrimPrefix(data, []byte("\uFEFF")), true
}

// plain returns an error without the path that the message around it names already.
func plain(err error) string {
	var pe *fs.PathError
	if errors.As(err, &pe) {
		return pe.Err.Error()
	}
	return err.Error()
}

// checkText adds the first place where data is not UTF-8 text to the list, and reports whether it is.
func checkText(data []byte, file string, list *problem.List) bool {
	if plaintext.UTF16(data) {
		list.Add(problem.Pos{File: file, Line: 1, Column: 1}, "the text is UTF-16", "save the file as UTF-8")
		return false
	}
	line, start := 1, 0
	for i := 0; i < len(data); {
		r, size := utf8.DecodeRune(data[i:])
		pos := problem.Pos{File: file, Line: line, Column: i - start + 1}
		if r == utf8.RuneError && size == 1 {
			list.Add(pos, fmt.Sprintf("the byte %#02x is not UTF-8 text", data[i]), "save the file as UTF-8")
			return false
		}
		endsLine := r == '\n' || r == '\r' && bytes.HasPrefix(data[i+1:], []byte("\n"))
		if r < ' ' && r != '\t' && !endsLine || r == 0x7f {
			list.Add(pos, fmt.Sprintf("the control character %#02x is not text", r), "take it out")
			return false
		}
		if r == '\n' {
			line, start = line+1, i+1
		}
		i += size
	}
	return true
}
