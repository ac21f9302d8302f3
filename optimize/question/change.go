package question

// Change is one limit and how far it has to give.
type Change struct {
	Limits []LimitChange `json:"limits"` // one for a single change, several for a joint one
}

// LimitChange is a limit's value now and the value that is enough.
type LimitChange struct {
	Name string  `json:"name"`
	From float64 `json:"from"`
	To   float64 `json:"to"`
	Unit string  `json:"unit"`
}
