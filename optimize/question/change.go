package question

// Change is one limit and how far it has to give.
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
