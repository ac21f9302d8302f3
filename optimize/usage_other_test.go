//go:build !unix

package optimize_test

// cpuSeconds and mostMB are told where the system tells them.
func cpuSeconds() float64 { return 0 }

func mostMB() float64 { return 0 }
