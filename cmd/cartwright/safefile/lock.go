package safefile

import "time"

// How long to wait for another run's lock, and how often to try: a run holds it for milliseconds.
const (
	lockTime = 2 * time.Second
	lockStep = 5 * time.Millisecond
)
