//go:build unix

package optimize_test

import "syscall"

// cpuSeconds returns what this process has used of all processors: unlike the clock it does not hang on what else they do.
func cpuSeconds() float64 {
	var u syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &u) != nil {
		return 0
	}
	return seconds(u.Utime) + seconds(u.Stime)
}

func seconds(t syscall.Timeval) float64 { return float64(t.Sec) + float64(t.Usec)/1e6 }

// mostMB returns the most memory this process has had.
func mostMB() float64 {
	var u syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &u) != nil {
		return 0
	}
	return float64(u.Maxrss) * 1024 / 1e6 // on Linux it comes in KiB
}
