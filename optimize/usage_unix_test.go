//go:build unix

package optimize_test

import (
	"os"
	"strconv"
	"strings"
	"syscall"
)

// cpuSeconds returns what this process has used of all processors: unlike the clock it does not depend on what else they do.
func cpuSeconds() float64 {
	var u syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &u) != nil {
		return 0
	}
	return seconds(u.Utime) + seconds(u.Stime)
}

func seconds(t syscall.Timeval) float64 { return float64(t.Sec) + float64(t.Usec)/1e6 }

// mostMB returns the most memory this process has had. The kernel's peak of a process is not below that of the one which
// began it, so what Linux tells of this program alone is read where it is told.
func mostMB() float64 {
	status, _ := os.ReadFile("/proc/self/status")
	if _, after, told := strings.Cut(string(status), "VmHWM:"); told {
		if fields := strings.Fields(after); len(fields) > 0 {
			if kib, err := strconv.ParseFloat(fields[0], 64); err == nil {
				return kib * 1024 / 1e6
			}
		}
	}
	var u syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &u) != nil {
		return 0
	}
	return float64(u.Maxrss) * 1024 / 1e6 // KiB, as Linux has it
}
