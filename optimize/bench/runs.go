package bench

import (
	"math"
	"slices"

	"cartwright/optimize/market"
	"cartwright/optimize/plan"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// RunOptions returns the options of a run, and whether there are any; a run that the scenario does not
// list has none and needs none.
func (b *Bench) RunOptions(d wiring.Duty, listed bool) ([]market.Option, bool) {
	if !listed {
		return nil, true
	}
	run := wiredRun{d, b.Tips.HeavyBoard}
	options, known := b.before.kept(run)
	if known {
		return options, len(options) > 0
	}
	if d.Kind == scenarios.RunBond {
		options = b.bondOptions(d)
		return b.keep(run, options), len(options) > 0
	}
	memory, _ := b.before.scratch.Get().(*scratch)
	if memory == nil {
		memory = &scratch{}
	}
	defer b.before.scratch.Put(memory)
	b.wiredOptions(d, memory)
	options = b.keep(run, memory.options)
	return options, len(options) > 0
}

// keep prunes the options of a run and remembers them, with what they use where quantities are counted.
func (b *Bench) keep(run wiredRun, options []market.Option) []market.Option {
	var ranges []useRange
	if b.counts() {
		ranges = rangesOf(options)
	}
	return b.before.keep(run, ranges, b.Market.Prune(options, b.Tips.HeavyBoard))
}

// scratch is memory for the options of a run, of which few are kept.
type scratch struct {
	options []market.Option
	uses    []market.Use
}

// wiredOptions finds the options of a run with lines and a device.
func (b *Bench) wiredOptions(d wiring.Duty, memory *scratch) {
	const most = 7 // a cable and its ends, a ground and its ends, a device, a conduit and its ends
	options, uses := memory.options[:0], memory.uses[:0]
	_, bond := wiring.BondDuty(b.Scenario)
	wiring.EachOption(b.Rules, d, b.Catalog, func(w wiring.Option) {
		if cap(uses)-len(uses) < most { // the options there are keep what they have
			uses = make([]market.Use, 0, max(most*slab, 2*cap(uses)))
		}
		o := b.Market.Wire(&d, w, uses[len(uses):len(uses):len(uses)+most])
		if d.AC {
			if !plan.AtLeast(o.InterruptingA, b.Scenario.ACFaultA) {
				return
			}
			o.InterruptingA = math.Inf(1) // ac_fault is all there can be
		}
		switch d.Kind {
		case scenarios.RunMain:
			if bond {
				o.BondMM2, _ = wiring.BondMM2(b.Rules, d, w, "copper")
			}
		case scenarios.RunFeeder:
			if b.Centre {
				o.FeedsA = d.OwnBreakerA
				if w.Device != nil {
					o.FeedsA = w.Device.RatingA
				}
			}
		}
		if !b.Centre || d.Kind != scenarios.RunFeeder && d.Kind != scenarios.RunBranch {
			o.Mount, o.Poles = "", 0
		}
		if !b.mounts {
			o.Mount = ""
		}
		if b.Market.CanHave(&o) {
			options = append(options, o)
			uses = uses[:len(uses)+len(o.Uses)]
		}
	})
	memory.options, memory.uses = options, uses
}

// slab is for how many options memory is allocated at first.
const slab = 64

// bondOptions finds the options of the bond, which is one grounding conductor.
func (b *Bench) bondOptions(d wiring.Duty) []market.Option {
	var options []market.Option
	var scratch [4]market.Use
	for _, w := range wiring.Bond(b.Rules, d, b.Catalog) {
		o := b.Market.Wire(&d, w, scratch[:])
		o.BondMM2 = w.Ground.Size.AreaMM2()
		if b.Market.CanHave(&o) {
			o.Uses = slices.Clone(o.Uses)
			options = append(options, o)
		}
	}
	return options
}
