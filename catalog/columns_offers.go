package catalog

import (
	"fmt"
	"math"
	"time"

	"cartwright/catalog/problem"
)

// offerTable is the format of offers.csv beside a catalogue of parts. What a price and a quantity are of
// hangs on the part: for what is bought by length, "price" is that of a metre and "min_qty" counts metres; the columns
// price_per_m|price_per_ft and min_m|min_ft say so in their headers and take either unit.
//
// A table holds the offers seen so far and is good for one file. Where partial, the catalogue lacks parts
// whose rows could not be read, and an unknown part is no mistake of the offer.
func offerTable(c *Catalog, partial bool) table[Offer] {
	kinds := map[string]Kind{}
	for _, e := range c.All() {
		kinds[e.ID] = e.Kind
	}
	long := func(o *Offer) bool { return kinds[o.PartID].ByLength() }
	piece := func(o *Offer) bool { return kinds[o.PartID] != "" && !long(o) }
	pieces := money("price", func(o *Offer) *Cents { return &o.Price })
	length := number("price_per_m", currencyPerMetre, zeroToo, func(o *Offer) *float64 { return &o.CentsPerM })
	byPiece := number("min_qty", quantities, positive, func(o *Offer) *float64 { return &o.MinQty }).or("1")
	byLength := number("min_m", metres, positive, func(o *Offer) *float64 { return &o.MinQty })
	return table[Offer]{
		file: "offers.csv",
		pos:  func(o *Offer) *problem.Pos { return &o.Pos },
		columns: []column[Offer]{
			identity("part", func(o *Offer) *string { return &o.PartID }).must(),
			text("vendor", "the seller's name", func(o *Offer) *string { return &o.Vendor }).must(),
			eachOrMetre(pieces, length, piece).onlyIf(func(o *Offer) bool { return !long(o) }).mayBeEmpty(),
			length.onlyIf(long),
			byPiece.onlyIf(func(o *Offer) bool { return !long(o) }),
			byLength.onlyIf(long),
			money("shipping", func(o *Offer) *Cents { return &o.Shipping }).or("0"),
			day("as_of", func(o *Offer) *time.Time { return &o.AsOf }),
			text("notes", "words", func(o *Offer) *string { return &o.Notes }),
		},
		rules: []rule[Offer]{
			knownPart(c, kinds, partial),
			oneOf("price", "price_per_m", long),
			notBoth("min_qty", "min_m", long),
			wholePieces(long),
			firstOfItsKind(),
		},
		finish: func(o *Offer) {
			if long(o) {
				o.Price = 0
			} else {
				o.CentsPerM = 0
			}
		},
	}
}

// eachOrMetre reads the price column: as whole cents for a piece, unrounded for a metre or for a part that is not known.
func eachOrMetre(pieces, length column[Offer], piece func(*Offer) bool) column[Offer] {
	read := pieces.read
	pieces.read = func(o *Offer, in entry) *flaw {
		if piece(o) {
			return read(o, in)
		}
		return length.read(o, in)
	}
	return pieces
}

// knownPart is the rule that an offer is for a part of the catalogue.
func knownPart(c *Catalog, kinds map[string]Kind, partial bool) rule[Offer] {
	ids := c.IDs()
	return rule[Offer]{"part", nil, func(o *Offer, _ func(string) entry) *flaw {
		if kinds[o.PartID] != "" || partial {
			return nil
		}
		right := "name a part of the catalogue's other files"
		if near := problem.Nearest(o.PartID, ids); near != "" {
			right = fmt.Sprintf("did you mean %q?", near)
		}
		return &flaw{"no part has the id " + quote(o.PartID), right}
	}}
}

// notBoth is the rule that a quantity is stated once, and by length only for what is bought by length.
func notBoth(each, length string, long func(*Offer) bool) rule[Offer] {
	return rule[Offer]{length, []string{"part", each}, func(o *Offer, at func(string) entry) *flaw {
		switch e, l := at(each), at(length); {
		case l.text == "":
			return nil
		case !long(o):
			return &flaw{fmt.Sprintf("%s is for what is bought by length, %s is not", l.header, quote(o.PartID)), "use " + e.header}
		case e.text != "":
			return &flaw{fmt.Sprintf("both %s and %s are stated", e.header, l.header), "keep one of them"}
		}
		return nil
	}}
}

// oneOf is notBoth, and that one of the two is stated.
func oneOf(each, length string, long func(*Offer) bool) rule[Offer] {
	r := notBoth(each, length, long)
	both := r.broken
	r.broken = func(o *Offer, at func(string) entry) *flaw {
		e, l := at(each), at(length)
		if e.text == "" && l.text == "" {
			return &flaw{e.header + " is empty", fmt.Sprintf("write the price of one, or of a metre of what is bought by length, or fill %s", l.header)}
		}
		return both(o, at)
	}
	r.at, r.uses = each, []string{"part", length}
	return r
}

// wholePieces is the rule that what is not bought by length is bought in whole pieces.
func wholePieces(long func(*Offer) bool) rule[Offer] {
	return rule[Offer]{"min_qty", []string{"part"}, func(o *Offer, at func(string) entry) *flaw {
		if long(o) || at("min_qty").text == "" || o.MinQty == math.Trunc(o.MinQty) {
			return nil
		}
		return &flaw{fmt.Sprintf("min_qty %s is not a whole number of pieces", at("min_qty").text), "write 1 or more"}
	}}
}

// firstOfItsKind is the rule that a vendor has one price for a part from a quantity on.
func firstOfItsKind() rule[Offer] {
	type key struct {
		part, vendor string
		from         float64
	}
	seen := map[key]problem.Pos{}
	return rule[Offer]{"part", []string{"vendor", "min_qty", "min_m"}, func(o *Offer, _ func(string) entry) *flaw {
		k := key{o.PartID, o.Vendor, o.MinQty}
		if first, ok := seen[k]; ok {
			return &flaw{fmt.Sprintf("%s has offered %s from that quantity on already, at %s", o.Vendor, o.PartID, first),
				"keep one, or give the quantity break a higher min_qty"}
		}
		seen[k] = o.Pos
		return nil
	}}
}
