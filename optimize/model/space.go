package model

import (
	"context"

	"cartwright/optimize/bench"
	"cartwright/optimize/market"
)

// WholeSpace is the space of all plans. Its program may be large; writing it stops when the context ends.
func WholeSpace(ctx context.Context, b *bench.Bench) space {
	sp := space{CannotTip: !b.Tips.Matter(), hourly: true, ended: func() bool { return ctx.Err() != nil }}
	for i := range b.Supplies {
		if b.MayServe(&b.Supplies[i]) {
			sp.supplies = append(sp.supplies, i)
		}
	}
	for i := range b.Stacks {
		sp.strings = append(sp.strings, stringRange{i, 0, b.Stacks[i].Most})
	}
	return sp
}

// space is the part of the space of plans that a model covers: some supplies, and for some stacks the
// range of how many strings there may be.
type space struct {
	supplies []int
	strings  []stringRange
	// CannotTip says that no cart of this space tips: no row for it is written, and heavier options are not kept for
	// their mass.
	CannotTip bool
	market    *market.Market // nil: the bench's own, whose orders the program decides
	strict    bool           // the unrounded cost is held to the budget
	ended     func() bool    // says that writing the program is to stop; nil: never
	hourly    bool           // the share served is required by rows for each hour; else it was simulated before
}

// stringRange bounds the number of strings of a stack.
type stringRange struct {
	stack, lo, hi int
}

// CoreSpace is the space of one core. No row for tipping is written where its cart stands whatever the support.
func CoreSpace(b *bench.Bench, c *bench.Core) space {
	sp := space{supplies: []int{c.Supply}}
	for _, h := range c.Strings {
		sp.strings = append(sp.strings, stringRange{b.Groups[c.Group][h.Member], h.N, h.N})
	}
	sp.CannotTip = b.Stands(c)
	return sp
}
