package bench

// Condition is one thing that a part has to meet to serve at all. The bench keeps what meets every condition of
// its list; the explanation of why a part cannot serve, or none of a kind can, reads the same list.
type Condition[T any] struct {
	Name string // short, the same in every scenario
	Met  func(T) bool
	// Why says what is wrong with one that does not meet it: the figures, and where in the files they are.
	Why func(T) string
	// None says what is wrong where nothing meets it; left is what met all conditions before it.
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

// Blame returns the condition that none of the candidates meets which met all conditions before it, and those
// candidates; nil where some candidate meets all, or where there is none to begin with.
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
