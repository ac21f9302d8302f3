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

// Before keeps what is dear to find and the same for all problems that differ in their limits only:
// the demand, of which the split of the legs can take seconds, and the options of runs. Catalogue,
// holdings and tax have to be the same.
type Before struct {
	asked   asked
	demand  *energy.Demand
	lock    sync.Mutex // cores are laid out side by side
	options map[wiredRun][]market.Option
	ranges  map[wiredRun][]useRange // of these and of those left out
	scratch []market.Option         // of which those worth keeping are picked
	market  *market.Market          // with the prices it has worked out
	markets int                     // benches it was handed to
	sun     *sunlight
	nets    sync.Pool // of *[]float64: see netOf
}

// asked is what a demand hangs on.
type asked struct {
	loads    []scenarios.Load
	never    [][]int // on together
	measured *scenarios.Measured
	circuits []circuit
	lowV     float64
	rules    scenarios.Rules
}

// circuit is what of a circuit loads hang on.
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

// keep remembers the options of a run, and what they use.
func (l *Before) keep(run wiredRun, ranges []useRange, options []market.Option) {
	if l.options == nil {
		l.options, l.ranges = map[wiredRun][]market.Option{}, map[wiredRun][]useRange{}
	}
	l.options[run], l.ranges[run] = options, ranges
}

// used returns what the options of a run use. Another bench that shares what was laid out may be finding options.
func (l *Before) used(run wiredRun) []useRange {
	l.lock.Lock()
	defer l.lock.Unlock()
	return l.ranges[run]
}

// mostMarkets is how many benches share a market: what it keeps for the options of each is then let go.
const mostMarkets = 64

// marketLike returns a market from before that is the same, or keeps this one.
func (l *Before) marketLike(m *market.Market) *market.Market {
	l.lock.Lock()
	defer l.lock.Unlock()
	if l.markets++; l.market == nil || l.markets > mostMarkets || !l.market.Same(m) {
		l.market, l.markets = m, 1
	}
	return l.market
}

// OtherParts returns what stays where parts change, too: the demand.
func (l *Before) OtherParts() *Before {
	return &Before{asked: l.asked, demand: l.demand}
}
