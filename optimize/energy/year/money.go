package year

import "cartwright/catalog"

// Saved returns what the wall's energy would have cost for what sun and store serve in a year, in unrounded cents,
// at a price in cents for each kWh.
//
//	grid sum (P + Q) (1 - short / D)
//
// Source: common practice, none; what the wall gives to the bus beside the sun counts as if it served the loads
// straight.
func (f *Figures) Saved(centsPerKWh float64) float64 { return centsPerKWh * f.ServedLoadWh / 1000 }

// PaybackYears returns after how many years the savings of a year have paid a cost, and whether they ever do.
//
//	cost / saved
//
// Source: common practice, none; prices are taken to stay as they are.
func PaybackYears(cost catalog.Cents, savedCents float64) (years float64, ok bool) {
	if !(savedCents > 0) {
		return 0, false
	}
	return max(0, float64(cost)) / savedCents, true
}
