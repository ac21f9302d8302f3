//go:build !unix

package optimize_test

// cpuSeconds and mostMB are known only where the system reports them.
func cpuSeconds() float64 { return 0 }

func mostMB() float64 { return 0 }
