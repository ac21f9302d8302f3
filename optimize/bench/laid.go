package bench

import (
	"reflect"
	"slices"
	"sync"

	"cartwright/optimize/energy"
	"cartwright/optimize/market"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// Before keeps what takes long to find and is the same for all problems that differ only in their limits:
// the demand (splitting loads between legs can take seconds), the sun, and the options of runs. Catalogue,
// owned parts and tax have to be the same.
type Before struct {
	asked   asked
	demand  *energy.Demand
	lock    sync.Mutex // cores are laid out in parallel
	options map[wiredRun][]market.Option
	ranges  map[wiredRun][]useRange       // what all options of the run use, those that were pruned included
	scratch sync.Pool                     // of *scratch
	listed  map[*market.Option][]useRange // of lists that are kept, by their first
	market  *market.Market                // with the prices it has worked out
	markets int                           // how many benches got it
	sun     *sunlight
	nets    sync.Pool // of *[]float64: see netOf
}

// asked is what a demand depends on.
type asked struct {
	loads    []scenarios.Load
	never    [][]int // on together
	measured *scenarios.Measured
	circuits []circuit
	lowV     float64
	rules    scenarios.Rules
}

// circuit is what of a circuit the demand depends on.
type circuit struct {
	name           string
	dc             bool
	volts, deviceA float64
}

func askedBy(s *scenarios.Scenario) asked {
	a := asked{s.Loads, s.OneAtATime, s.Measured, nil, s.Bus.LowV, s.Rules}
	for i := range s.Circuits {
		c := &s.Circuits[i]
		a.circuits = append(a.circuits, circuit{c.Name, c.DC, c.Volts, c.DeviceA})
	}
	return a
}

// wiredRun is a run and whether heavier options had to be kept.
type wiredRun struct {
	duty  wiring.Duty
	heavy bool
}

// demandOf returns the demand of a scenario's loads.
func (l *Before) demandOf(s *scenarios.Scenario) (*energy.Demand, error) {
	now := askedBy(s)
	if l.demand != nil && reflect.DeepEqual(l.asked, now) {
		return l.demand, nil
	}
	d, err := energy.DemandOf(s)
	if err != nil {
		return nil, err
	}
	now.loads, now.never = slices.Clone(now.loads), slices.Clone(now.never)
	l.demand, l.asked = d, now
	return d, nil
}

// kept returns the options of a run, where they are known.
func (l *Before) kept(run wiredRun) (options []market.Option, known bool) {
	l.lock.Lock()
	defer l.lock.Unlock()
	options, known = l.options[run]
	return options, known
}

// keep remembers the options of a run, and what they use, and returns them: those of the first who found them, since
// others may have them already.
func (l *Before) keep(run wiredRun, ranges []useRange, options []market.Option) []market.Option {
	l.lock.Lock()
	defer l.lock.Unlock()
	if first, known := l.options[run]; known {
		return first
	}
	if l.options == nil {
		l.options, l.ranges = map[wiredRun][]market.Option{}, map[wiredRun][]useRange{}
	}
	l.options[run], l.ranges[run] = options, ranges
	return options
}

// used returns what the options of a run use. It locks, since another bench that shares this Before may be adding some.
func (l *Before) used(run wiredRun) []useRange {
	l.lock.Lock()
	defer l.lock.Unlock()
	return l.ranges[run]
}

// mostMarkets is how many benches share a market. After that a new one is made, so that what the old one keeps for the
// options of each bench can be freed.
const mostMarkets = 64

// marketLike returns the kept market if it is the same as m; else it keeps m.
func (l *Before) marketLike(m *market.Market) *market.Market {
	l.lock.Lock()
	defer l.lock.Unlock()
	if l.markets++; l.market == nil || l.markets > mostMarkets || !l.market.Same(m) {
		l.market, l.markets, l.listed = m, 1, nil
	}
	return l.market
}

// OtherParts returns what may be kept for another catalogue or other owned parts: the demand.
func (l *Before) OtherParts() *Before {
	return &Before{asked: l.asked, demand: l.demand}
}
