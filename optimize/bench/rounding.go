package bench

import "cartwright/scenarios"

// roundingCents bounds how far a cost that is rounded line by line to whole cents can be from the unrounded one: half a
// cent for each line of what is bought or sold by length, and for the tax. No bill has more such lines than the paths
// use, nor more than the catalogue has parts by length and offers for them.
func (b *Bench) roundingCents() float64 {
	return 0.5 * float64(min(b.lengthsOffered(), b.lengthsUsed())+len(b.Scenario.Have)+1)
}

// lengthsOffered returns how many lines by length the catalogue and its offers allow.
func (b *Bench) lengthsOffered() int {
	lines := 0
	for i := range b.Market.Articles {
		if a := &b.Market.Articles[i]; !a.Whole {
			lines += max(1, len(a.Offers))
		}
	}
	return lines
}

// lengthsUsed returns how many lines by length the paths can have: each one for its cable, its ground and its conduit.
// Each string, main and feeder may have a cable of its own.
func (b *Bench) lengthsUsed() int {
	strings, units, inputs := 0, 0, 0
	for shelf := range b.Scenario.Cart.Shelves {
		most := 0
		for i := range b.Stacks {
			most = max(most, b.Stacks[i].Caps[shelf])
		}
		strings += most
	}
	for i := range b.Supplies {
		units, inputs = max(units, b.Supplies[i].Units), max(inputs, b.Supplies[i].inputs())
	}
	lines := len(b.Scenario.Cart.Pieces)
	path := func(count, cables int, conduit string) {
		if conduit != "" {
			cables++
		}
		lines += count * cables
	}
	for i := range b.Scenario.Runs {
		switch r := &b.Scenario.Runs[i]; r.Kind {
		case scenarios.RunString:
			path(strings, 1, r.Conduit)
		case scenarios.RunMain:
			path(units, 1, r.Conduit)
		case scenarios.RunFeeder:
			path(units, 2, r.Conduit)
		case scenarios.RunSolar:
			path(inputs, 2, r.Conduit)
		case scenarios.RunBond:
			path(1, 1, r.Conduit)
		default:
			path(1, 2, r.Conduit)
		}
	}
	for i := range b.Scenario.Circuits {
		path(1, 2, b.Scenario.Circuits[i].Conduit)
	}
	return lines
}
