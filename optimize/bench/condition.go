package bench

// Condition is one thing that a part has to meet to serve at all. The bench keeps what meets every condition of
// its list; whoever explains why a part, or none of a kind, may serve reads the same list.
type Condition[T any] struct {
	Name string // short, the same in every scenario
	Met  func(T) bool
	// Why says of one that does not meet it what is wrong: the figures, and where in the files they stand.
	Why func(T) string
	// None says it of all that met the conditions before, where none meets this one.
	None func(left []T) string
}

// Unmet returns the first condition that something does not meet, nil where it meets all.
func Unmet[T any](list []Condition[T], x T) *Condition[T] {
	for i := range list {
		if !list[i].Met(x) {
			return &list[i]
		}
	}
	return nil
}

// Blame returns the condition that leaves nothing of several candidates, and those that met all before it; nil
// where some candidate meets all, or where there is none to begin with.
func Blame[T any](list []Condition[T], candidates []T) (*Condition[T], []T) {
	left := candidates
	for i := range list {
		var kept []T
		for _, x := range left {
			if list[i].Met(x) {
				kept = append(kept, x)
			}
		}
		if len(kept) == 0 {
			if len(left) == 0 {
				return nil, nil
			}
			return &list[i], left
		}
		left = kept
	}
	return nil, nil
}
