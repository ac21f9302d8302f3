//go:build race

package optimize_test

// leastTimes is how many times as long cbc takes as the engine that is watched for races, which slows it tenfold and more.
const leastTimes = 5
