package sun

// Orders of a month's days: the rank of each day's clearness among 31, the darkest being 1. In these orders one day
// resembles the next about as much as in real weather.
//
// Source: Knight, Klein and Duffie, Solar Energy 46 (1991) 109, read in one text.
var (
	darkOrder = [31]int{24, 28, 11, 19, 18, 3, 2, 4, 9, 20, 14, 23, 8, 16, 21, 26, 15, 10, 22, 17, 5, 1, 6, 29, 12, 7, 31, 30, 27, 13, 25}
	fairOrder = [31]int{24, 27, 11, 19, 18, 3, 2, 4, 9, 20, 14, 23, 8, 16, 21, 7, 22, 10, 28, 6, 5, 1, 26, 29, 12, 17, 31, 30, 15, 13, 25}
	fineOrder = [31]int{24, 27, 11, 4, 18, 3, 2, 19, 9, 25, 14, 23, 8, 16, 21, 26, 22, 10, 15, 17, 5, 1, 6, 29, 12, 7, 31, 20, 28, 13, 30}
)

// The largest mean clearness of a month that has the first order, and the second.
const (
	darkMonth = 0.45
	fairMonth = 0.55
)

// Order returns the ranks of the days of a month of so many days and a mean clearness: the published order for 31
// days without the ranks above days.
//
// Source: as for the orders; that the last ranks are dropped is in the same text.
func Order(mean float64, days int) []int {
	order := &fineOrder
	switch {
	case mean <= darkMonth:
		order = &darkOrder
	case mean <= fairMonth:
		order = &fairOrder
	}
	ranks := make([]int, 0, days)
	for _, rank := range order {
		if rank <= days {
			ranks = append(ranks, rank)
		}
	}
	return ranks
}

// Days returns the clearness of each day of a month of N days and a mean clearness, not yet scaled to that mean: the
// day of rank d has the clearness below which (2d - 1) / (2N) of the days lie.
//
// Source: Knight, Klein and Duffie, Solar Energy 46 (1991) 109; the shares read in one text.
func Days(mean float64, days int) []float64 {
	c := ClearnessOf(mean)
	clearness := make([]float64, 0, days)
	for _, rank := range Order(mean, days) {
		clearness = append(clearness, c.Day(float64(2*rank-1)/float64(2*days)))
	}
	return clearness
}
