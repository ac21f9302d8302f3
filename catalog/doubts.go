package catalog

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"cartwright/catalog/problem"
)

// OwnColumn is a column of a person's own, which is not read.
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

// What is plausible of a battery. Common practice, no source: a cell for a torch has 1 Ah, the largest lead cell for
// traction some 1,500.
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
			d.add(i, "capacity_kwh", fmt.Sprintf("%s kWh at %s V are %s Ah", rough(kWh), rough(b.NominalV), rough(ah)),
				"check that capacity_kwh is in kWh, not in Wh or Ah")
			continue // every other figure of the row depends on it
		}
		if x := b.CapacityWh / b.MassKg; x < leastWhPerKg || x > mostWhPerKg { // +Inf where the mass is 0
			d.add(i, "mass_kg", fmt.Sprintf("%s kWh in %s kg are %s Wh/kg", rough(kWh), rough(b.MassKg), rough(x)),
				fmt.Sprintf("check mass and capacity; batteries have %d to %d Wh/kg", leastWhPerKg, mostWhPerKg))
		}
		litres := b.LengthM * b.WidthM * b.HeightM * 1000
		if x := b.CapacityWh / litres; x < leastWhPerLitre || x > mostWhPerLitre {
			d.add(i, "length_mm", fmt.Sprintf("%s kWh in %s litres are %s Wh/l", rough(kWh), rough(litres), rough(x)),
				fmt.Sprintf("check length, width, height and capacity; batteries have %d to %d Wh/l", leastWhPerLitre, mostWhPerLitre))
		}
		if p := prices[i]; typical > 0 && (p*priceFactor < typical || p > typical*priceFactor) {
			d.add(i, "price", fmt.Sprintf("%.2f for a kWh, while the median of the batteries is %.2f", p, typical),
				"check price and capacity")
		}
	}
}

// rough returns a figure to three digits or more, without an exponent, which few people read.
func rough(v float64) string {
	if math.Abs(v) >= 1000 {
		return strconv.FormatFloat(v, 'f', 0, 64)
	}
	three, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 3, 64), 64)
	return strconv.FormatFloat(three, 'f', -1, 64)
}

// median returns the middle of some numbers, of an even count the mean of the two in the middle; 0 of none.
func median(values []float64) float64 {
	if len(values) == 0 {
		return 0
	}
	sorted := slices.Sorted(slices.Values(values))
	return (sorted[(len(sorted)-1)/2] + sorted[len(sorted)/2]) / 2
}
