package next

import (
	"cartwright/catalog"
	"cartwright/optimize/plan"
)

// sale is one piece that the target sells, or a length of cable. It may wait, and serve on the way, or be
// made early, when that lets more be bought; one that is not among the way's early ones is made in the first
// month.
type sale struct {
	bill plan.Line
}

// mostEarly bounds the sales that may wait, and with it how many sets of them are looked into.
const mostEarly = 6

// collectSales lists what the target sells, piece by piece, since one may go while another still serves.
// Batteries and inverters come first: where there are more pieces than can wait, these do.
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

// inOrder reports whether a set of early sales takes pieces of a kind from the first on. Any other set is
// worth the same as one that does.
func (w *way) inOrder(sold int) bool {
	for bit := 1; bit < len(w.early); bit++ {
		same := w.sales[w.early[bit]].bill.Part == w.sales[w.early[bit-1]].bill.Part
		if same && sold&(1<<bit) != 0 && sold&(1<<(bit-1)) == 0 {
			return false
		}
	}
	return true
}

// earlyBit returns which bit of a set a sale is, -1 where it does not wait.
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
