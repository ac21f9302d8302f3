package cli

import (
	"errors"
	"syscall"
)

// noData is what writing to a pipe gives whose other end is closing.
const noData = syscall.Errno(232)

// readNoMore reports whether a write failed because whoever read has closed the pipe.
func readNoMore(err error) bool {
	return errors.Is(err, syscall.ERROR_BROKEN_PIPE) || errors.Is(err, noData)
}
