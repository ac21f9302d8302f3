package optimize_test

import (
	"fmt"
	"syscall"
	"testing"
)

func fmtSscan(t *testing.T, s string, a ...any) {
	if _, err := fmt.Sscan(s, a...); err != nil {
		t.Fatal(err)
	}
}

func cpuNow() float64 {
	var u syscall.Rusage
	syscall.Getrusage(syscall.RUSAGE_SELF, &u)
	return float64(u.Utime.Sec+u.Stime.Sec) + float64(u.Utime.Usec+u.Stime.Usec)/1e6
}
