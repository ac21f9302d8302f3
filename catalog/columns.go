package catalog

import (
	"fmt"
	"slices"
	"time"

	"cartwright/catalog/problem"
)

// common returns the columns that a part of any kind has first, and those it has last, with the columns
// of price and mass in between: each, or of a length.
func common[T any](part func(*T) *Part, worth []column[T], own ...column[T]) []column[T] {
	return slices.Concat([]column[T]{
		identity("id", func(v *T) *string { return &part(v).ID }).must(),
		text("name", "words for a person", func(v *T) *string { return &part(v).Name }).must(),
	}, worth, []column[T]{
		text("vendor", "words", func(v *T) *string { return &part(v).Vendor }),
		day("as_of", func(v *T) *time.Time { return &part(v).AsOf }),
	}, own, []column[T]{
		text("notes", "words", func(v *T) *string { return &part(v).Notes }),
	})
}

// each returns the columns of price and mass of a part that is bought by the piece.
func each[T any](part func(*T) *Part) []column[T] {
	guessed := func(v *T) bool { return part(v).PriceLow != 0 || part(v).PriceHigh != 0 }
	return []column[T]{
		money("price", func(v *T) *Cents { return &part(v).Price }).must(),
		money("price_low", func(v *T) *Cents { return &part(v).PriceLow }).onlyIf(guessed),
		money("price_high", func(v *T) *Cents { return &part(v).PriceHigh }).onlyIf(guessed),
		number("mass_kg", kilograms, zeroToo, func(v *T) *float64 { return &part(v).MassKg }).must(),
	}
}

// perMetre returns the columns of price and mass of a part that is bought by length.
func perMetre[T any](cents, low, high, kg func(*T) *float64) []column[T] {
	guessed := func(v *T) bool { return *low(v) != 0 || *high(v) != 0 }
	return []column[T]{
		number("price_per_m", currencyPerMetre, zeroToo, cents).must(),
		number("price_low_per_m", currencyPerMetre, zeroToo, low).onlyIf(guessed),
		number("price_high_per_m", currencyPerMetre, zeroToo, high).onlyIf(guessed),
		number("mass_kg_per_m", kilogramsPerMetre, zeroToo, kg).must(),
	}
}

// eachRange is the rule for a guessed price of a part that is bought by the piece.
func eachRange[T any](part func(*T) *Part) []rule[T] {
	return priceRange("", func(v *T) (low, price, high float64) {
		p := part(v)
		return float64(p.PriceLow), float64(p.Price), float64(p.PriceHigh)
	})
}

// priceRange is the rule for a guessed price: both ends or neither, and the price between them.
func priceRange[T any](suffix string, prices func(*T) (low, price, high float64)) []rule[T] {
	name, lowName, highName := "price"+suffix, "price_low"+suffix, "price_high"+suffix
	return []rule[T]{{lowName, []string{highName, name}, func(v *T, at func(string) entry) *flaw {
		lowCell, highCell := at(lowName), at(highName)
		if (lowCell.text == "") != (highCell.text == "") {
			return &flaw{fmt.Sprintf("only one of %s and %s is stated", lowCell.header, highCell.header), "state both or neither"}
		}
		low, price, high := prices(v)
		if lowCell.text == "" || low <= price && price <= high {
			return nil
		}
		return &flaw{fmt.Sprintf("the price %s is not between %s %s and %s %s", at(name).text,
			lowCell.header, lowCell.text, highCell.header, highCell.text), "widen the range or correct the price"}
	}}}
}

// notBelow is the rule that one number is at least another. It is kept where the cell is empty.
func notBelow[T any](high, low, why string, numbers func(*T) (high, low float64)) rule[T] {
	return rule[T]{high, []string{low}, func(v *T, at func(string) entry) *flaw {
		h, l := numbers(v)
		if h >= l || at(high).text == "" || at(low).text == "" {
			return nil
		}
		return &flaw{fmt.Sprintf("%s %s is below %s %s", at(high).header, at(high).text, at(low).header, at(low).text), why}
	}}
}

// posOf returns where a part keeps the place of its row.
func posOf[T any](part func(*T) *Part) func(*T) *problem.Pos {
	return func(v *T) *problem.Pos { return &part(v).Pos }
}
