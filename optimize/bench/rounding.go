package bench

// roundingCents bounds how far a cost that is rounded line by line to whole cents can be from the
// unrounded one: half a cent for each line of cable bought or sold, and for the tax. Every run has a line for its
// cable and one for its ground; strings may each have a cable of their own, and so may mains. No bill has more
// lines of cable than the catalogue has cables and offers of them.
func (b *Bench) roundingCents() float64 {
	strings, units := 0, 0
	for shelf := range b.Scenario.Cart.Shelves {
		most := 0
		for i := range b.Stacks {
			most = max(most, b.Stacks[i].Caps[shelf])
		}
		strings += most
	}
	for i := range b.Supplies {
		units = max(units, b.Supplies[i].Units)
	}
	slots := strings + units + 2*(len(b.Scenario.Circuits)+1)
	lines := 0
	for i := range b.Catalog.Cables {
		lines += max(1, len(b.Market.Part(b.Catalog.Cables[i].ID).Offers))
	}
	return 0.5 * float64(min(lines, slots)+len(b.Scenario.Have)+1)
}
