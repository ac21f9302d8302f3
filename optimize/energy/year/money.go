package year

import "cartwright/catalog"

// Saved returns in unrounded cents what energy from the wall would have cost for the loads that sun and store serve in
// a year, at a price in cents per kWh.
//
//	grid sum (P + Q) (1 - short / D)
//
// Common practice, no source. The wall would have fed the loads directly, without the inverter's losses.
func (f *Figures) Saved(centsPerKWh float64) float64 { return centsPerKWh * f.ServedLoadWh / 1000 }

// PaybackYears returns after how many years the yearly savings have paid a cost, and whether they ever do.
//
//	cost / saved
//
// Common practice, no source. Prices are taken to stay as they are.
func PaybackYears(cost catalog.Cents, savedCents float64) (years float64, ok bool) {
	if !(savedCents > 0) {
		return 0, false
	}
	return max(0, float64(cost)) / savedCents, true
}
