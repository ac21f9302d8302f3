package view

import (
	"strings"

	"cartwright/catalog"
	"cartwright/optimize/next"
	"cartwright/optimize/plan"
)

// purchases names the main ones of a list in a sentence: "1 x slate, 1 x gust and 13 other parts".
func (u units) purchases(list []next.Purchase) string {
	main, others := u.mainParts(list)
	what := strings.Join(main, ", ")
	if others > 0 {
		what += " and " + count(others, "other part", "other parts")
	}
	return what
}

// mainParts returns the purchases that give a list its name, a text each: batteries, inverters and solar modules, or what
// costs most where there are none; and how many other parts there are. Ends go with their cable or conduit.
func (u units) mainParts(of []next.Purchase) (main []string, others int) {
	dearest := -1
	for i, b := range of {
		switch {
		case b.Kind == string(catalog.KindBattery), b.Kind == string(catalog.KindInverter), b.Kind == string(catalog.KindSolar):
			main = append(main, u.quantity(b))
			continue
		case !plan.IsEnd(b.Kind):
			others++
		}
		if dearest < 0 || b.Line > of[dearest].Line {
			dearest = i
		}
	}
	if len(main) == 0 && dearest >= 0 {
		main = []string{u.quantity(of[dearest])}
		if !plan.IsEnd(of[dearest].Kind) {
			others--
		}
	}
	return main, others
}

// quantity returns "2 x part", or "12.00 ft part" of cable.
func (u units) quantity(b next.Purchase) string {
	switch {
	case b.Unit == "m":
		return enough(u.figure(b.Quantity, b.Unit)) + " " + u.unit(b.Unit) + " " + b.Part
	case plan.IsEnd(b.Kind):
		return short(b.Quantity, 0) + " ends " + b.Part
	}
	return short(b.Quantity, 0) + " x " + b.Part
}

// purchasesCell lists purchases for a cell: the main parts, and how many others there are.
func (u units) purchasesCell(of []next.Purchase) string {
	entries, others := u.mainParts(of)
	if others > 0 {
		entries = append(entries, count(others, "other part", "other parts"))
	}
	return items(entries...)
}

// sales lists what is sold for a cell.
func (u units) sales(of []next.Purchase) string {
	var entries []string
	for _, b := range of {
		entries = append(entries, u.quantity(b))
	}
	return items(entries...)
}
