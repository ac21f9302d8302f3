package safefile

import "time"

// How long another program's turn is waited for, and how often it is looked whether it is over: a turn takes
// milliseconds.
const (
	lockTime = 2 * time.Second
	lockStep = 5 * time.Millisecond
)
