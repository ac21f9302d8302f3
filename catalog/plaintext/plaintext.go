// Package plaintext says whether bytes are UTF-8 text, as the files of a cart have to be, and whether a file can be read
// at all.
package plaintext

import (
	"bytes"
	"io/fs"
	"regexp"
	"unicode/utf8"
)

// sample is how many bytes are looked at to tell UTF-16 without a mark.
const sample = 256

// UTF16 reports whether data is text in UTF-16, with or without a byte order mark. Without one it goes by the zero
// bytes that stand in every other place where the letters are Latin.
func UTF16(data []byte) bool {
	if bytes.HasPrefix(data, []byte("\xff\xfe")) || bytes.HasPrefix(data, []byte("\xfe\xff")) {
		return true
	}
	head := data[:min(len(data), sample)&^1]
	var zeros [2]int
	for i, b := range head {
		if b == 0 {
			zeros[i%2]++
		}
	}
	half := len(head) / 2
	return len(head) >= 4 && (zeros[0] == 0 && 4*zeros[1] >= 3*half || zeros[1] == 0 && 4*zeros[0] >= 3*half)
}

// BadByte returns the offset of the first byte that is not UTF-8, or -1.
func BadByte(data []byte) int {
	for at := 0; at < len(data); {
		r, n := utf8.DecodeRune(data[at:])
		if r == utf8.RuneError && n == 1 {
			return at
		}
		at += n
	}
	return -1
}

// Special returns what a file is that is neither a plain file nor a folder, "a pipe" for example: reading it may never
// end. It returns "" for those two.
func Special(mode fs.FileMode) string {
	switch {
	case mode.IsRegular() || mode.IsDir():
		return ""
	case mode&fs.ModeNamedPipe != 0:
		return "a pipe"
	case mode&fs.ModeSocket != 0:
		return "a socket"
	case mode&fs.ModeDevice != 0:
		return "a device"
	}
	return "not a plain file"
}

// sepLine matches the line that tells a spreadsheet what separates the cells.
var sepLine = regexp.MustCompile(`^"?sep=([,;|\t])"?\r?\n`)

// Separator returns the separator that the first line states, a comma where there is none, and the data with that
// line made a comment.
func Separator(data []byte) ([]byte, rune) {
	m := sepLine.FindSubmatch(data)
	if m == nil {
		return data, ','
	}
	return append([]byte{'#'}, data[1:]...), rune(m[1][0])
}
