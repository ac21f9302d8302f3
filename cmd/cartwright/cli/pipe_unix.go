//go:build unix

package cli

import (
	"errors"
	"syscall"
)

// readNoMore reports whether a write failed because whoever read has closed the pipe.
func readNoMore(err error) bool { return errors.Is(err, syscall.EPIPE) }
