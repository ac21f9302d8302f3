package question

// Change is a limit, or several together, and how far each has to give.
type Change struct {
	Limits []LimitChange // one for a single change, several for a joint one
}

// LimitChange is a limit's value now and the value that is enough.
type LimitChange struct {
	Name string
	From float64
	To   float64
	Unit string
}
