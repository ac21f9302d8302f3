//go:build !race

package optimize_test

// leastTimes is how many times as long as the engine cbc takes for four weeks at the least, all cases together.
const leastTimes = 200
