package catalog

import (
	"fmt"
	"slices"

	"cartwright/catalog/problem"
)

// OwnColumn is a column of a person's own, which is read past.
type OwnColumn struct {
	Name string
	Pos  problem.Pos
}

// doubts are the rows of a file, to be looked at for values that are possible, but not plausible.
type doubts[T any] struct {
	t     table[T]
	f     *form
	rows  []T
	cells [][]cell
}

// add warns of the cell of a column in a row.
func (d *doubts[T]) add(row int, column, wrong, right string) {
	d.f.to.warnings.Add(d.t.at(d.f, column, d.cells[row]).pos, wrong, right)
}

// What is plausible of a battery, by the contract; the ampere-hours are common practice, no source: a cell for
// a torch has 1, the largest lead cell for traction some 1,500.
const (
	leastWhPerKg, mostWhPerKg       = 20, 400
	leastWhPerLitre, mostWhPerLitre = 20, 900
	leastAh, mostAh                 = 1, 5000
	priceFactor                     = 10 // times the median price of a kWh, or a tenth of it
)

// doubtBatteries warns of capacities, masses, sizes and prices that look like a slip of the unit.
func doubtBatteries(d *doubts[Battery]) {
	var prices []float64
	for _, b := range d.rows {
		prices = append(prices, b.Price.Units()/b.CapacityWh*1000)
	}
	typical := median(prices)
	for i, b := range d.rows {
		kWh := b.CapacityWh / 1000
		if ah := b.CapacityWh / b.NominalV; ah < leastAh || ah > mostAh {
			d.add(i, "capacity_kwh", fmt.Sprintf("%.4g kWh at %.4g V are %.3g Ah", kWh, b.NominalV, ah),
				"check that capacity_kwh is in kWh, not in Wh or Ah")
			continue // every other figure of the row hangs on it
		}
		if x := b.CapacityWh / b.MassKg; x < leastWhPerKg || x > mostWhPerKg { // +Inf where the mass is 0
			d.add(i, "mass_kg", fmt.Sprintf("%.4g kWh in %.4g kg are %.3g Wh/kg", kWh, b.MassKg, x),
				fmt.Sprintf("check mass and capacity; batteries have %d to %d Wh/kg", leastWhPerKg, mostWhPerKg))
		}
		litres := b.LengthM * b.WidthM * b.HeightM * 1000
		if x := b.CapacityWh / litres; x < leastWhPerLitre || x > mostWhPerLitre {
			d.add(i, "length_mm", fmt.Sprintf("%.4g kWh in %.4g litres are %.3g Wh/l", kWh, litres, x),
				fmt.Sprintf("check length, width, height and capacity; batteries have %d to %d Wh/l", leastWhPerLitre, mostWhPerLitre))
		}
		if p := prices[i]; typical > 0 && (p*priceFactor < typical || p > typical*priceFactor) {
			d.add(i, "price", fmt.Sprintf("%.2f for a kWh, where the median of the batteries is %.2f", p, typical),
				"check price and capacity")
		}
	}
}

// median returns the middle of some numbers, of an even count the mean of the two in the middle; 0 of none.
func median(values []float64) float64 {
	if len(values) == 0 {
		return 0
	}
	sorted := slices.Sorted(slices.Values(values))
	return (sorted[(len(sorted)-1)/2] + sorted[len(sorted)/2]) / 2
}
