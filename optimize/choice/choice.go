// Package choice holds what the program chose for a plan, and works out its bill, figures and limits.
package choice

import (
	"math"

	"cartwright/optimize/bench"
	"cartwright/optimize/market"
)

// Choice is a plan as the program decided it: the numbers of everything, and where special articles come from.
type Choice struct {
	Market  *market.Market // with the prices that were paid
	Supply  int            // index into the bench's supplies
	Stacks  []int          // indices into the bench's stacks, of those present
	Strings []int          // how many of each of Stacks
	Stand   [][]int        // modules by Stacks and shelf
	Fills   []Fill
	Bought  map[int]Acquired // by special article; see market.Article.Special
}

// Fill is a number of equal things that fill a slot.
type Fill struct {
	Kind   SlotKind
	Slot   string
	Stack  int // index into the bench's stacks, of a string run
	Option *market.Option
	Count  int
	Paths  int // equal cable paths: one option may stand for several that are wired alike
}

// Acquired is where a special article comes from.
type Acquired struct {
	Used float64   // of what is owned
	Buy  []float64 // by offer; a single one where there are no offers
}

// Reconcile takes the engine's rounding out of where an article comes from: what is bought at the offers that were
// chosen, at least their min_qty, and then exactly what is missing from what is owned.
func Reconcile(b *bench.Bench, a *market.Article, needed float64, got Acquired) Acquired {
	const (
		hair  = 1e-6 // of a piece or a metre: the engine's tolerance, far below anything that is bought
		speck = 1e-4 // the same for a purchase that what is owned covers as well, so that it saves the engine nothing
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
	for i := range out.Buy { // the rounding difference goes to the first offer that is bought at
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

// SlotKind says what part of a plan a slot is.
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
