package scenarios

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"cartwright/catalog"
	"cartwright/catalog/problem"
	"cartwright/catalog/quantity"
)

// Deal is a purchase or sale of one part that a person made and no plan.
type Deal struct {
	PartID   string
	Count    float64 // pieces, or metres of what is bought by length
	ByLength bool
	Ends     int           // ends of a cable or conduit that came or went with it
	Amount   catalog.Cents // paid or received for all of it, shipping and tax included
}

// ReadDeal reads a deal from words: the id of a part of the catalogue, a count ("1", or "12 ft" of what is bought by
// length) and an amount ("1190", "$1,190.00"). The error lists everything that is wrong.
func ReadDeal(c *catalog.Catalog, part, count, amount string) (Deal, error) {
	d := Deal{PartID: part}
	var list problem.List
	wrong := func(wrong, right string) { list.Add(problem.Pos{}, wrong, right) }
	e, known := c.Find(part)
	if !known {
		right := "name a part of the catalogue"
		if near := problem.Nearest(part, c.IDs()); near != "" {
			right = fmt.Sprintf("did you mean %q?", near)
		}
		wrong(fmt.Sprintf("the catalogue has no part %q", part), right)
	}
	switch d.ByLength = e.Kind.ByLength(); {
	case !known:
	case d.ByLength:
		v, err := quantity.Parse(count, quantity.Length)
		if err != nil || v <= 0 || v > maxCount {
			wrong(fmt.Sprintf("%s %q is counted by length, and %q is not a length", e.Kind, part, count), `write for example "12 ft"`)
		}
		d.Count = v
	default:
		n, err := strconv.Atoi(strings.TrimSpace(count))
		if err != nil || n < 1 || n > maxCount {
			wrong(fmt.Sprintf("%s %q is counted by piece, and %q is not a number of pieces", e.Kind, part, count), fmt.Sprintf("write 1 to %d", maxCount))
		}
		d.Count = float64(n)
	}
	cents, err := catalog.ParseMoney(amount)
	if err != nil {
		wrong(fmt.Sprintf("%q is not an amount of money", amount), "write for example 1190 or 1190.50")
	}
	d.Amount = cents
	if err := list.Err(); err != nil {
		return Deal{}, err
	}
	return d, nil
}

// AfterBuying returns what is owned and the money in hand once a part is bought: it is paid from what was sold before,
// then from savings. Short is how much is missing; where that is above 0, the money is left as it is.
func (s *Scenario) AfterBuying(d Deal) (after Owned, short catalog.Cents) {
	after = Owned{Have: slices.Clone(s.Have), Sold: max(0, s.Sold-d.Amount)}
	at := s.holdingOf(d, &after)
	after.Have[at].Count += d.Count
	after.Have[at].Ends += d.Ends
	rest := max(0, d.Amount-s.Sold)
	switch {
	case s.Savings == nil && rest > 0, s.Savings != nil && rest > s.Savings.Now:
		after.Sold = s.Sold
		return after, d.Amount - s.Sold - s.saved()
	case rest > 0:
		now := s.Savings.Now - rest
		after.SavingsNow = &now
	}
	return after, 0
}

// AfterSelling returns what is owned and the money in hand once a part is sold. It is an error to sell what is not
// owned, or what is marked keep.
func (s *Scenario) AfterSelling(d Deal) (Owned, error) {
	i := slices.IndexFunc(s.Have, func(h Holding) bool { return h.PartID == d.PartID })
	const hair = 1e-9 // m, against the rounding of sums
	if i < 0 || s.Have[i].ByLength != d.ByLength || s.Have[i].Count < d.Count-hair || s.Have[i].Ends < d.Ends {
		owned := "none of it"
		if i >= 0 {
			owned = countText(s.Have[i], "m")
		}
		return Owned{}, problem.Problem{Wrong: fmt.Sprintf("you own %s: %q", owned, d.PartID), Right: "sell at most what is under have"}
	}
	if s.Have[i].Keep {
		return Owned{}, problem.Problem{Pos: s.Have[i].Pos, Wrong: fmt.Sprintf("%q is to be kept", d.PartID), Right: "take keep out first"}
	}
	after := Owned{Have: slices.Clone(s.Have), Sold: s.Sold + d.Amount}
	h := &after.Have[i]
	h.Count, h.Ends = math.Max(0, h.Count-d.Count), h.Ends-d.Ends
	if h.Count <= hair && h.Ends == 0 {
		after.Have = slices.Delete(after.Have, i, i+1)
	}
	return after, nil
}

// holdingOf returns the index of the holding that a deal adds to; a part that was not owned is added last.
func (s *Scenario) holdingOf(d Deal, after *Owned) int {
	at := slices.IndexFunc(after.Have, func(h Holding) bool { return h.PartID == d.PartID })
	if at < 0 {
		at = len(after.Have)
		after.Have = append(after.Have, Holding{PartID: d.PartID, ByLength: d.ByLength})
	}
	return at
}

// saved returns the money put aside.
func (s *Scenario) saved() catalog.Cents {
	if s.Savings == nil {
		return 0
	}
	return s.Savings.Now
}
