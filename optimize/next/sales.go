package next

import (
	"cartwright/catalog"
	"cartwright/optimize/plan"
)

// sale is one piece, or a length of cable, that the target sells. Where it is among way.early, it may be sold later and
// serve on the way, or sooner so that more can be bought; else it is sold in the first month.
type sale struct {
	bill plan.Line
}

// mostEarly bounds the sales that may wait, and with them how many sets of sales are tried.
const mostEarly = 6

// collectSales lists what the target sells, piece by piece, since one may be sold while another still serves.
// Batteries and inverters come first: if there are more pieces than mostEarly, these may wait.
func (w *way) collectSales() {
	for _, first := range []bool{true, false} {
		for _, l := range w.target.Bill {
			power := l.Kind == string(catalog.KindBattery) || l.Kind == string(catalog.KindInverter)
			if l.Sell <= 0 || power != first {
				continue
			}
			for _, piece := range pieces(l) {
				if len(w.early) < mostEarly {
					w.early = append(w.early, len(w.sales))
				}
				w.sales = append(w.sales, sale{piece})
			}
		}
	}
}

// pieces returns a line that sells something as lines that sell a piece each; a length of cable stays whole.
func pieces(l plan.Line) []plan.Line {
	if l.Unit != "each" {
		return []plan.Line{l}
	}
	var list []plan.Line
	for left := l.Sell; left > 0; left-- {
		one := l
		one.Sell, one.Credit = 1, l.Credit/plan.Money(l.Sell) // a piece is sold for whole cents
		list = append(list, one)
	}
	return list
}

// inOrder reports whether a set of early sales takes pieces of a part from the first on. Pieces of a part are equal, so
// any other set is worth the same as one that does.
func (w *way) inOrder(sold int) bool {
	for bit := 1; bit < len(w.early); bit++ {
		same := w.sales[w.early[bit]].bill.Part == w.sales[w.early[bit-1]].bill.Part
		if same && sold&(1<<bit) != 0 && sold&(1<<(bit-1)) == 0 {
			return false
		}
	}
	return true
}

// earlyBit returns the bit of a sale in a set of early sales, -1 where it is made in the first month.
func (w *way) earlyBit(sale int) int {
	for bit, at := range w.early {
		if at == sale {
			return bit
		}
	}
	return -1
}

// credit returns what the sales made so far bring.
func (w *way) credit(sold int) plan.Money {
	sum := plan.Money(0)
	for i := range w.sales {
		if bit := w.earlyBit(i); bit < 0 || sold&(1<<bit) != 0 {
			sum += w.sales[i].bill.Credit
		}
	}
	return sum
}

// sold returns what is sold between two states; a state before the first has sold nothing.
func (w *way) sold(before, after *owning) []Purchase {
	var list []Purchase
	for i := range w.sales {
		bit := w.earlyBit(i)
		made := before.sold < 0 && bit < 0
		if bit >= 0 {
			was := before.sold >= 0 && before.sold&(1<<bit) != 0
			made = !was && after.sold&(1<<bit) != 0
		}
		if made {
			l := &w.sales[i].bill
			if n := len(list); n > 0 && list[n-1].Part == l.Part { // another piece
				list[n-1].Quantity += l.Sell
				list[n-1].Line += l.Credit
				continue
			}
			list = append(list, Purchase{Part: l.Part, Kind: l.Kind, Quantity: l.Sell, Unit: l.Unit,
				UnitPrice: l.Credit.Units() / l.Sell, Line: l.Credit})
		}
	}
	return list
}
