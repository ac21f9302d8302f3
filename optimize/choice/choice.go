// Package choice holds what was chosen for a plan, and works out its bill, figures and limits.
package choice

import (
	"math"

	"cartwright/optimize/bench"
	"cartwright/optimize/market"
)

// Choice is a plan as the program decided it: whole numbers only, and how special articles are come by.
type Choice struct {
	Market  *market.Market // with the prices that were paid
	Supply  int            // index into the bench's supplies
	Stacks  []int          // indices into the bench's stacks, those that are present
	Strings []int          // by stacks
	Stand   [][]int
	Fills   []Fill
	Bought  map[int]Acquired // by article, of the special ones
}

// Fill is a number of equal things that fill a slot.
type Fill struct {
	Kind   SlotKind
	Slot   string
	Stack  int // of a string run
	Option *market.Option
	Count  int
	Paths  int // equal cable paths: one option may stand for several that are wired alike
}

// Acquired is how a special article is come by: of what is owned, and by offer.
type Acquired struct {
	Used float64
	Buy  []float64
}

// Reconcile takes the engine's rounding out of how an article is come by: all owned pieces that are used,
// then exactly what is missing at the offers that were chosen, at least their least quantity.
func Reconcile(b *bench.Bench, a *market.Article, needed float64, got Acquired) Acquired {
	const (
		hair  = 1e-6 // of a piece or a metre: the engine's tolerance, far below what is ever bought
		speck = 1e-4 // the same where what is owned covers it: the engine gains nothing by such a purchase
	)
	var out Acquired
	out.Buy = make([]float64, len(got.Buy))
	left := needed
	for i, n := range got.Buy {
		if n <= hair || n <= speck && n <= a.Have-got.Used+hair {
			continue
		}
		if a.Whole {
			n = math.Round(n)
		} else if len(a.Offers) > 0 && math.Abs(n-a.Offers[i].MinQty) < hair {
			n = a.Offers[i].MinQty
		}
		out.Buy[i] = n
		left -= n
	}
	out.Used = math.Max(0, math.Min(math.Min(a.Have, needed), left))
	short := left - out.Used
	for i := range out.Buy { // what rounding took from a purchase goes back to the first that has one
		if out.Buy[i] > 0 && math.Abs(short) > 0 && short > -hair {
			out.Buy[i] += short
			short = 0
		}
	}
	if a.Whole {
		out.Used = math.Round(out.Used)
	}
	return out
}

// Quantities returns how much of each article is installed.
func Quantities(b *bench.Bench, c *Choice) []float64 {
	q := make([]float64, len(b.Market.Articles))
	for i, k := range c.Stacks {
		st := &b.Stacks[k]
		q[b.Market.Part(st.Battery.ID).Position] += float64(st.Series * c.Strings[i])
	}
	v := &b.Supplies[c.Supply]
	q[b.Market.Part(v.Inverter.ID).Position] += float64(v.Units)
	if x := v.Array; x != nil {
		q[b.Market.Part(x.Module.ID).Position] += float64(x.Modules())
	}
	for i := range c.Fills {
		f := &c.Fills[i]
		for _, u := range f.Option.Uses {
			q[u.Article] += float64(f.Count) * u.Quantity
		}
	}
	return q
}

// SlotKind says what a slot is for.
type SlotKind int

const (
	SlotString SlotKind = iota
	SlotMain
	SlotFeeder
	SlotFixed // branches, receptacles, needs
	SlotBusbar
	SlotCasters
	SlotSolar      // the run of each input
	SlotStringFuse // of the strings of modules
)
