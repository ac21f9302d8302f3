package view

import (
	"fmt"
	"strings"
	"time"

	"cartwright/catalog"
	"cartwright/optimize/market"
	"cartwright/optimize/question"
)

// StalePrices cautions of parts that some plan buys at a price that is old.
func StalePrices(c *catalog.Catalog, r *question.Result, day time.Time) []string {
	bought := map[string]bool{}
	for i := range r.Plans {
		for _, l := range r.Plans[i].Bill {
			if market.StalePrice(c, l, day) {
				bought[l.Part] = true
			}
		}
	}
	var old []string
	for _, e := range c.All() {
		if bought[e.ID] {
			old = append(old, e.ID)
		}
	}
	if len(old) == 0 {
		return nil
	}
	return []string{fmt.Sprintf("Prices older than %d days on %s: %s. Ask again before you buy.",
		catalog.StaleAfter, day.Format(time.DateOnly), strings.Join(old, ", "))}
}
