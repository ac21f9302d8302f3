// Package doubt draws prices and loads at random and reports how the ranked plans fare.
package doubt

import (
	"context"
	"fmt"

	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/optimize/rank"
)

// Options says how far prices and loads are in doubt and how often to draw. There are no defaults for zero fields: see
// Default.
type Options struct {
	Plans int    // how many of the first ranked plans are candidates
	Draws int    // how often prices and loads are drawn
	Seed  uint64 // the same seed gives the same draws
	// Prices is the share by which the price of a part that states no range may be off either way; Loads that by which the
	// watts of a load and the sunshine of the year may be. Both are from 0 to 1.
	Prices, Loads float64
}

// Default returns the usual options: ten plans, ten thousand draws (a share is then known to about a
// hundredth, twice its largest standard error), prices to 10 % and loads to 15 %; common practice, no source.
func Default() Options {
	return Options{Plans: 10, Draws: 10000, Seed: 1, Prices: 0.10, Loads: 0.15}
}

// The most that may be asked for: a hundred times the usual draws, and for all plans together so many that their
// costs take less than 200 MB.
const (
	mostDraws  = 1_000_000
	mostTrials = 20_000_000
)

// check returns an error for options out of range.
func (o *Options) check() error {
	switch {
	case o.Plans < 1:
		return fmt.Errorf("%d plans; ask for 1 or more", o.Plans)
	case o.Draws < 1 || o.Draws > mostDraws:
		return fmt.Errorf("%d draws; ask for 1 to %d", o.Draws, mostDraws)
	case o.Plans > mostTrials/o.Draws:
		return fmt.Errorf("%d draws of %d plans; ask for at most %d of all plans together", o.Draws, o.Plans, mostTrials)
	case !(o.Prices >= 0 && o.Prices <= 1):
		return fmt.Errorf("prices off by a share of %g; give 0 to 1", o.Prices)
	case !(o.Loads >= 0 && o.Loads <= 1):
		return fmt.Errorf("loads off by a share of %g; give 0 to 1", o.Loads)
	}
	return nil
}

// Doubted says how a ranking fares when prices and loads are in doubt.
type Doubted struct {
	Draws   int
	Stopped bool // time ran out before all draws asked for were made
	Seed    uint64
	Plans   []PlanDoubt // by rank
	// Regret is that of the first plan; nil where it is feasible in no draw.
	Regret *Regret
	// FirstFails is the share of draws in which the first plan is not feasible but another candidate is;
	// NoneServes is the share in which no candidate is.
	FirstFails float64
	NoneServes float64
	// Robust is the rank of the plan that is best in the worst case: with the fewest draws in which it is
	// not feasible, of these the one whose greatest cost of all draws is least, of these the first in rank.
	Robust int
	// Ranking is the ranking the candidates are from; without plans it holds the reasons.
	Ranking *question.Result
}

// PlanDoubt is how one plan fares.
type PlanDoubt struct {
	Rank int
	Core plan.Core
	Cost plan.Money // as ranked
	// Cheapest is the share of draws in which it is the cheapest feasible candidate (of equally cheap ones
	// the first in rank), Feasible that in which it meets its limits.
	Cheapest float64
	Feasible float64
	// Breaks lists the limits that it does not meet in some draw, the most frequent first.
	Breaks []Break
	// MeanCost is the mean of its cost over all draws, Cost95 what it costs at most in 95 of 100 draws,
	// Greatest the most it costs in any.
	MeanCost float64
	Cost95   plan.Money
	Greatest plan.Money
}

// Break is a limit and the share of draws in which a plan does not meet it.
type Break struct {
	Limit string
	Share float64
}

// Regret is how much more the first plan costs than the cheapest feasible candidate, in the draws in which
// the first plan is feasible: the mean, what it is at most in 95 of 100 of these draws, and the most.
type Regret struct {
	Draws int
	Mean  float64
	At95  plan.Money
	Most  plan.Money
}

// Run draws prices and loads at random and reports how the first ranked plans fare: the Monte Carlo method.
//
// Each price is drawn from a triangular distribution with the stated price as its mode, over the range the
// catalogue states or else o.Prices to either side; a part's offers and ends move with it. Each line
// of the load list is drawn likewise, its watts off by up to o.Loads. Measured loads are all off by the
// same factor, and so is the light on the modules in every hour of the year. All draws are independent of each other.
// Shipping, tax, and what owned parts are sold for are taken as certain. A plan is bought as it is: no part of it is
// chosen again. In each draw it has to meet the limits that depend on prices and loads: autonomy, power, leg power with
// its own assignment of the loads to the legs, surge, bus current, recharge, the share of the year that is served, the
// current of its bus bars and circuits, and the budget.
//
// The triangular distribution for a quantity of which only a range and a likeliest value are known is common
// practice, no source.
func Run(ctx context.Context, p question.Problem, o Options, watch question.Watch) (*Doubted, error) {
	if err := o.check(); err != nil {
		return nil, err
	}
	r, err := rank.Plans(ctx, p, question.Options{Plans: o.Plans, Watch: watch})
	if err != nil {
		return nil, err
	}
	out := &Doubted{Draws: o.Draws, Seed: o.Seed, Plans: []PlanDoubt{}, Ranking: r}
	if len(r.Plans) == 0 {
		return out, nil
	}
	return out, out.simulate(ctx, p, o)
}

// simulate draws and counts. One goroutine does all of the drawing and counting, so that the same seed gives the same
// figures on any machine. Where the context ends, the draws made until then count.
func (d *Doubted) simulate(ctx context.Context, p question.Problem, o Options) error {
	dice := newDice(p, o)
	var list []*candidate
	light := sunlightOf(p.Scenario)
	for i := range d.Ranking.Plans {
		c, err := newCandidate(p, dice, light, &d.Ranking.Plans[i])
		if err != nil {
			return err
		}
		list = append(list, c)
	}
	t := newTally(list, o.Draws)
	demands := newDemands(p.Scenario, list)
	for range o.Draws {
		if ctx.Err() != nil {
			break
		}
		dice.throw()
		if err := demands.draw(dice); err != nil {
			return err
		}
		if light != nil {
			light.shine(dice.light)
			serveAll(list, demands.of)
		}
		t.draw(func(i int) (plan.Money, []string) {
			cost := list[i].costs(dice)
			return cost, list[i].broken(demands.of[i], demands.drawn[demands.group[i]], cost)
		})
	}
	d.Draws, d.Stopped = t.draws, t.draws < o.Draws
	if d.Draws == 0 {
		return question.ErrUnknown
	}
	t.report(d)
	return nil
}
