package scenarios

import (
	"fmt"
	"math"
	"strings"

	"cartwright/catalog/quantity"
)

// Keys of what the cart must have and of what is owned.
var (
	needKeys    = []string{"role", "count", "rating"}
	holdingKeys = []string{"part", "count", "ends", "keep", "sell"}
)

// unlimited stands for a limit that is not stated.
var unlimited = math.Inf(1)

// needs reads the sundries that the cart must have.
func (s section) needs() []Need {
	var needs []Need
	for _, v := range s.items("needs", "a need", false, needKeys) {
		needs = append(needs, Need{
			Role:    v.words("role", "shunt"),
			Count:   v.integer("count", 1, maxCount, 1),
			RatingA: v.rating(),
			Pos:     v.pos,
		})
	}
	return needs
}

// holdings reads the parts that are owned. Only the catalogue knows the kind of a part: Check looks whether its count
// has to be pieces or a length.
func (s section) holdings() []Holding {
	sections := s.items("have", "an owned part", false, holdingKeys)
	distinct(sections, "part")
	var have []Holding
	for _, v := range sections {
		h := Holding{PartID: v.words("part", "lfp-rack-5"), Pos: v.pos}
		h.Count, h.ByLength = v.amount()
		h.Ends = v.integer("ends", 0, maxCount, 0)
		if v.has("sell") {
			price := v.money("sell")
			h.Sell, h.SellCentsPerM = &price, float64(price)
		}
		h.Keep = v.truth("keep", false)
		switch {
		case h.Keep && h.Sell != nil:
			v.wrong("keep", "keep: what stays on the cart is not sold", "leave out keep or sell")
		case h.Keep && h.ByLength:
			v.wrong("keep", "keep: what is bought by length is cut as it is needed", "leave keep out; it is for pieces")
		}
		have = append(have, h)
	}
	return have
}

// amount reads how much is owned: a number of pieces, or a length in metres.
func (s section) amount() (count float64, byLength bool) {
	n := s.nodes["count"]
	if n != nil && n.kind == isText {
		if !strings.ContainsAny(n.value, "0123456789") {
			s.wrong("count", fmt.Sprintf("count: %q is not a number", n.value), `write count: 2, or of a cable a length, count: "12 ft"`)
			return math.NaN(), false
		}
		return s.quantity("count", quantity.Length, within(0, maxCount)), true
	}
	count = s.number("count", within(0, maxCount), "2")
	if count != math.Trunc(count) && !math.IsNaN(count) {
		s.wrong("count", fmt.Sprintf("count: %s is not a whole number of pieces", n.source),
			`write count: 2, or of a cable a length, count: "12 ft"`)
	}
	return count, false
}
