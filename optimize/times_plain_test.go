//go:build !race

package optimize_test

// leastTimes is how many times as long as the engine cbc takes for four weeks at the least, all cases together.
// It was seen to take 145 to 240 times as long, as busy as the machine was.
const leastTimes = 100
