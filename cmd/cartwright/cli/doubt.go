package cli

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"cartwright/cmd/cartwright/view"
	"cartwright/optimize/doubt"
)

const doubtHelp = `Prices and loads are guesses. This draws them at random many times and says of
each of the first plans how often it is the cheapest that holds, how often it
holds at all and which limit breaks it, and what it costs; how much more the
first plan may cost than the right choice; and which plan is best in the worst
case: the one that fails in the fewest draws and, of several, costs least in its
dearest draw.

A price is drawn from the range the catalogue states (price_low, price_high),
else from --prices to either side; each line of the load list, and the sunshine
of the year, from --loads to either side. The same --seed gives the same draws.

The scenario is a demo's name, a folder, or a scenario.yaml; without one the
current folder is meant. The exit status is 1 where no plan is possible.`

const doubtExample = `  cartwright doubt star-party
  cartwright doubt cider-shed --loads 25% --plans 5 --seed 7`

// The most draws that can be asked for, and the most of all plans together.
const (
	mostDraws  = 1_000_000
	mostTrials = 20_000_000
)

// part is a flag that holds a part of something, written in percent.
type part struct {
	value float64
}

// String returns the part in percent.
func (p *part) String() string { return strconv.FormatFloat(100*p.value, 'f', -1, 64) + "%" }

// Type returns what the help text shows as the value.
func (p *part) Type() string { return "percent" }

// Set takes a number of percent, with or without the sign.
func (p *part) Set(text string) error {
	number := strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(text), "%"))
	v, err := strconv.ParseFloat(number, 64)
	if err != nil || !(v >= 0 && v <= 100) {
		return fmt.Errorf("write a percentage from 0%% to 100%%, for example 10%%")
	}
	p.value = v / 100
	return nil
}

// doubtCommand tells how plans fare when prices and loads are off.
func (a *app) doubtCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:               "doubt [scenario]",
		Short:             "See which plans hold when prices and loads are off",
		Long:              doubtHelp,
		Example:           doubtExample,
		Args:              oneArgument("scenario"),
		ValidArgsFunction: completeScenario,
	}
	o := doubt.Default()
	prices, loads := &part{o.Prices}, &part{o.Loads}
	cmd.Flags().IntVar(&o.Plans, "plans", o.Plans, "`number` of ranked plans to look at")
	cmd.Flags().IntVar(&o.Draws, "draws", o.Draws, "`number` of draws")
	cmd.Flags().Uint64Var(&o.Seed, "seed", o.Seed, "`number` that starts the random draws")
	cmd.Flags().Var(prices, "prices", "how far prices without a range of their own may be off")
	cmd.Flags().Var(loads, "loads", "how far loads and sunshine may be off")
	limit := addTimeLimit(cmd)
	format := addFormat(cmd)
	asOf := addAsOf(cmd)
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		switch {
		case o.Plans < 1 || o.Plans > mostPlans:
			return wrong("write for example --plans 10", "--plans is %d, but has to be from 1 to %d", o.Plans, mostPlans)
		case o.Draws < 1 || o.Draws > mostDraws:
			return wrong("write for example --draws 1000", "--draws is %d, but has to be from 1 to %d", o.Draws, mostDraws)
		case o.Plans > mostTrials/o.Draws:
			return wrong("write for example --draws "+strconv.Itoa(mostTrials/o.Plans), "%d draws of %d plans are too many", o.Draws, o.Plans)
		}
		p, err := a.open(args)
		if err != nil {
			return err
		}
		ctx, cancel, err := limit.context(cmd, p)
		if err != nil {
			return err
		}
		defer cancel()
		o.Prices, o.Loads = prices.value, loads.value
		bar := a.progress()
		d, err := doubt.Run(ctx, p, o, bar.tell)
		bar.clear()
		if err != nil {
			return stopped(err)
		}
		answer := view.Doubt{Scenario: p.Scenario, Catalog: p.Catalog, Doubted: d, Options: o,
			Cautions: append(d.Ranking.Cautions, view.StalePrices(p.Catalog, d.Ranking, asOf.or(a.today))...)}
		if err := a.show(answer, format); err != nil {
			return err
		}
		if err := ending(p, d.Ranking); err != nil || !d.Stopped {
			return err
		}
		return &outcome{code: codeUnproven, err: fmt.Errorf("stopped before all draws were made: %d of %d are shown", d.Draws, o.Draws),
			hint: "give it more time, for example --time-limit 10m, or ask for fewer with --draws"}
	}
	return cmd
}
