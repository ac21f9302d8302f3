package audit

import "testing"

// A plan with a year of sun.
func BenchmarkPlan(b *testing.B) {
	k := newFair()
	for b.Loop() {
		Plan(k.s, k.c, k.p)
	}
}
