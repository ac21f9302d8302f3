package bench

import (
	"fmt"
	"math"
	"strings"

	"cartwright/catalog"
	"cartwright/optimize/chassis"
	"cartwright/optimize/energy"
	"cartwright/optimize/plan"
	"cartwright/optimize/wiring"
)

// Standing is a battery with its number in series on the bus and the modules of it that the shelves hold.
type Standing struct {
	Battery *catalog.Battery
	Series  int
	Caps    []int              // by shelf: the modules it has room for
	Columns [][]chassis.Column // by shelf
	Room    int                // the sum of Caps
	Carried int                // the modules that the shelves have room for and may carry
}

// StandingOf works out a battery's standing.
func (b *Bench) StandingOf(bat *catalog.Battery) *Standing {
	f := &Standing{Battery: bat, Series: energy.Series(b.Scenario.Bus.NominalV, bat.NominalV)}
	for j := range b.Scenario.Cart.Shelves {
		sh := &b.Scenario.Cart.Shelves[j]
		columns := chassis.Columns(sh, bat)
		room := 0
		for _, c := range columns {
			room = max(room, c.Most*c.Modules())
		}
		f.Columns, f.Caps = append(f.Columns, columns), append(f.Caps, room)
		f.Room += room
		if bat.MassKg > 0 && float64(room)*bat.MassKg > b.ShelfKg[j] {
			room = int(plan.Floor(b.ShelfKg[j] / bat.MassKg))
		}
		f.Carried += room
	}
	return f
}

// BusConditions are those that a battery has to meet to suit the bus. They need no cart.
func (b *Bench) BusConditions() []Condition[*Standing] {
	bus := b.Scenario.Bus
	none := func([]*Standing) string {
		return fmt.Sprintf("no battery of the catalogue, in the number in series its maker allows, makes up the bus of %s V between %s and %s V",
			Figure(bus.NominalV), Figure(bus.LowV), Figure(bus.HighV))
	}
	volts := func(f *Standing, each float64) float64 { return float64(f.Series) * each }
	return []Condition[*Standing]{
		{"nominal voltage", func(f *Standing) bool { return f.Series >= 1 },
			func(f *Standing) string {
				return fmt.Sprintf("one of %s V is more than the bus of %s V (bus.nominal)", Figure(f.Battery.NominalV), Figure(bus.NominalV))
			}, none},
		{"max series", func(f *Standing) bool { return f.Series <= f.Battery.MaxSeries },
			func(f *Standing) string {
				return fmt.Sprintf("the bus of %s V takes %d of %s V in series, the maker allows %d (batteries.csv, max_series)", Figure(bus.NominalV), f.Series, Figure(f.Battery.NominalV), f.Battery.MaxSeries)
			}, none},
		{"bus high", func(f *Standing) bool { return energy.BelowHigh(bus, volts(f, f.Battery.MaxV)) },
			func(f *Standing) string {
				return fmt.Sprintf("%d in series reach %s V, the bus is never above %s V (bus.high)", f.Series, Figure(volts(f, f.Battery.MaxV)), Figure(bus.HighV))
			}, none},
		{"bus low", func(f *Standing) bool { return energy.AboveLow(bus, volts(f, f.Battery.NominalV)) },
			func(f *Standing) string {
				return fmt.Sprintf("%d in series have %s V, the bus is never below %s V (bus.low)", f.Series, Figure(volts(f, f.Battery.NominalV)), Figure(bus.LowV))
			}, none},
	}
}

// BatteryConditions are those that a battery has to meet to serve, in the order in which they are checked and named.
func (b *Bench) BatteryConditions() []Condition[*Standing] {
	s := b.Scenario
	tallest, longest, deepest := 0.0, 0.0, 0.0
	for i := range s.Cart.Shelves {
		sh := &s.Cart.Shelves[i]
		tallest, longest, deepest = math.Max(tallest, sh.ClearHeightM), math.Max(longest, sh.LengthM), math.Max(deepest, sh.DepthM)
	}
	const noRoom = "the shelves have no room for a string of any battery that fits the bus: look at their length, depth and clear_height"
	just := func(words string) func([]*Standing) string { return func([]*Standing) string { return words } }
	return append(b.BusConditions(), []Condition[*Standing]{
		{"usable energy", func(f *Standing) bool { return energy.UsableWh(f.Battery, s.Limits.Reserve) > 0 },
			func(f *Standing) string {
				return fmt.Sprintf("a reserve of %s %% (limits.reserve) leaves nothing of its usable_fraction of %s to draw", Figure(100*s.Limits.Reserve), Figure(f.Battery.UsableFraction))
			},
			just(fmt.Sprintf("a reserve of %s %% leaves nothing of a battery to draw", Figure(100*s.Limits.Reserve)))},
		{"shelf height", func(f *Standing) bool { return plan.AtMost(f.Battery.HeightM, tallest) },
			func(f *Standing) string {
				return fmt.Sprintf("it is %s m high, and the highest shelf has %s m (cart.shelves, clear_height)", Figure(f.Battery.HeightM), Figure(tallest))
			}, just(noRoom)},
		{"shelf floor", func(f *Standing) bool { return f.Room > 0 },
			func(f *Standing) string {
				return fmt.Sprintf("with %s by %s m it fits no shelf that is high enough for it; the largest is %s by %s m (cart.shelves, length and depth)",
					Figure(f.Battery.LengthM), Figure(f.Battery.WidthM), Figure(longest), Figure(deepest))
			}, just(noRoom)},
		{"room for a string", func(f *Standing) bool { return f.Room >= f.Series },
			func(f *Standing) string {
				return fmt.Sprintf("the shelves have room for %d of it, a string takes %d (cart.shelves, length and depth)", f.Room, f.Series)
			}, just(noRoom)},
		{"shelf mass", func(f *Standing) bool { return f.Carried >= f.Series },
			func(f *Standing) string {
				return fmt.Sprintf("the shelves carry %d of %s kg, a string takes %d (cart.shelves, max_mass)", f.Carried, Figure(f.Battery.MassKg), f.Series)
			}, just("the shelves' max_mass is too little for a string of any battery that fits the bus and their floor")},
		{"to be had", func(f *Standing) bool { return b.Market.Part(f.Battery.ID).Available(float64(f.Series)) },
			func(f *Standing) string {
				a := b.Market.Part(f.Battery.ID)
				return fmt.Sprintf("only %s can be had, a string takes %d", Figure(a.Have+a.Buyable), f.Series)
			}, just("no battery can be had in the number that makes a string")},
		{"protocols", func(f *Standing) bool { return !s.Limits.SharedProtocols || b.speaks(f.Battery) },
			func(f *Standing) string {
				return fmt.Sprintf("it has no protocol in common with an inverter that serves: %s (batteries.csv and inverters.csv, protocols; limits.protocols)", spoken(f.Battery.Protocols))
			}, just("no battery has a protocol in common with an inverter that serves, as limits.protocols asks")},
		{"string wiring", func(f *Standing) bool {
			_, ok := b.RunOptions(wiring.StringDuty(s, f.Battery, b.LeastBusA(), 1))
			return ok
		},
			func(f *Standing) string {
				d, _ := wiring.StringDuty(s, f.Battery, b.LeastBusA(), 1)
				return b.NoRun(d, "a string of it")
			},
			func(left []*Standing) string {
				least := left[0].Battery
				for _, f := range left {
					if f.Battery.MaxDischargeA < least.MaxDischargeA {
						least = f.Battery
					}
				}
				of := " of " + least.ID
				if len(left) > 1 {
					of += " (the battery of least current that fits)"
				}
				d, _ := wiring.StringDuty(s, least, b.LeastBusA(), 1)
				return b.NoRun(d, "a string"+of)
			}},
	}...)
}

// speaks reports whether a battery has a protocol in common with some supply.
func (b *Bench) speaks(bat *catalog.Battery) bool {
	for i := range b.Supplies {
		if bat.SharesProtocol(b.Supplies[i].Inverter) {
			return true
		}
	}
	return false
}

// spoken says which protocols a battery states.
func spoken(protocols []string) string {
	if len(protocols) == 0 {
		return "it states none"
	}
	return "it talks " + strings.Join(protocols, ", ")
}
