package optimize

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"cartwright/catalog"
	"cartwright/optimize/chassis"
	"cartwright/optimize/energy"
	"cartwright/optimize/wiring"
)

// Where the catalogue has nothing for some part of every plan, the bench only notes that. What is missing is
// told here, by asking condition after condition which one leaves nothing: the last that some part still met
// is not to blame, the next one is.

// obstacles says what of the catalogue or the scenario leaves nothing to choose from, the most basic lack
// first; nothing where every plan's parts can be chosen.
func (b *bench) obstacles() []string {
	if len(b.reasons) == 0 {
		return nil
	}
	list := b.emptyFiles()
	add := func(words string) {
		if words != "" {
			list = append(list, words)
		}
	}
	if len(b.supplies) == 0 {
		add(b.noSupply())
	}
	if len(b.stacks) == 0 {
		add(b.noStack())
	}
	for i := range b.s.Circuits {
		c := &b.s.Circuits[i]
		if d, listed := wiring.BranchDuty(b.s, c); listed {
			if _, ok := b.runOptions(d, true); !ok {
				add(b.noRun(d, "circuit "+strconv.Quote(c.Name)))
			}
		}
		if r := c.Receptacle; r != nil && r.Count > 0 && len(b.receptacles(r)) == 0 {
			add(b.noSundry(r.Role, r.RatingA, "circuit "+strconv.Quote(c.Name)))
		}
	}
	for i := range b.s.Needs {
		n := &b.s.Needs[i]
		switch {
		case n.Count == 0:
		case len(b.sundries(n.Role, atLeast(n.RatingA))) == 0:
			add(b.noSundry(n.Role, n.RatingA, "needs"))
		case b.emptied(needSlot(n.Role, i)):
			add("no " + n.Role + " of the catalogue has spaces enough for the breakers of all circuits")
		}
	}
	if len(b.casters) == 0 && len(b.c.Casters) > 0 {
		add(fmt.Sprintf("the catalogue has no set of %d casters, as cart.casters asks for", b.s.Cart.Casters))
	}
	if len(list) == 0 {
		return b.reasons
	}
	return list
}

// needSlot returns the bench's name for the slot of a need, counted from 0.
func needSlot(role string, i int) string { return "need " + role + " " + strconv.Itoa(i+1) }

// emptied reports whether a slot of the bench has no option left.
func (b *bench) emptied(slot string) bool {
	for i := range b.fixed {
		if b.fixed[i].name == slot {
			return len(b.fixed[i].options) == 0
		}
	}
	return false
}

// emptyFiles names the kinds of part that the scenario needs and of which the catalogue has none at all.
func (b *bench) emptyFiles() []string {
	runs := len(b.s.Runs)+len(b.s.Circuits) > 0
	devices := len(b.s.Circuits) > 0
	for i := range b.s.Runs {
		devices = devices || b.s.Runs[i].OwnBreakerA <= 0
	}
	var list []string
	for _, kind := range []struct {
		what   string
		kind   catalog.Kind
		parts  int
		needed bool
	}{
		{"batteries", catalog.KindBattery, len(b.c.Batteries), true},
		{"inverters", catalog.KindInverter, len(b.c.Inverters), true},
		{"cables", catalog.KindCable, len(b.c.Cables), runs},
		{"fuses or breakers", catalog.KindDevice, len(b.c.Devices), devices},
		{"bus bars", catalog.KindBusbar, len(b.c.Busbars), true},
		{"casters", catalog.KindCasters, len(b.c.Casters), true},
		{"sundries", catalog.KindSundry, len(b.c.Sundries), b.asksSundries()},
	} {
		if kind.parts == 0 && kind.needed {
			list = append(list, fmt.Sprintf("the catalogue has no %s: %s is missing or empty", kind.what, kind.kind.File()))
		}
	}
	return list
}

// asksSundries reports whether a circuit or a need asks for a sundry.
func (b *bench) asksSundries() bool {
	for i := range b.s.Circuits {
		if b.s.Circuits[i].Receptacle != nil {
			return true
		}
	}
	return len(b.s.Needs) > 0
}

// noSundry says that no sundry of a role will do for whoever asks.
func (b *bench) noSundry(role string, ratingA float64, asker string) string {
	if len(b.c.Sundries) == 0 {
		return "" // told once, of the file
	}
	most, known := 0.0, false
	for i := range b.c.Sundries {
		if x := &b.c.Sundries[i]; x.Role == role {
			most, known = max(most, x.RatingA), true
		}
	}
	if !known {
		return fmt.Sprintf("the catalogue has no %s, which %s asks for", role, asker)
	}
	return fmt.Sprintf("the catalogue has no %s of %s A, as %s asks for; the largest is of %s A", role, figure(ratingA), asker, figure(most))
}

// noSupply says which condition no inverter meets, "" where it is told otherwise.
func (b *bench) noSupply() string {
	s, d := b.s, b.demand
	left := make([]*catalog.Inverter, len(b.c.Inverters))
	for i := range left {
		left[i] = &b.c.Inverters[i]
	}
	largest := func(watts func(*catalog.Inverter) float64) (most float64) {
		for _, inv := range left {
			most = max(most, watts(inv))
		}
		return most
	}
	all := func(w float64, inv *catalog.Inverter) float64 { return float64(max(1, inv.MaxUnits)) * w }
	continuous := func(inv *catalog.Inverter) float64 { return all(inv.ContinuousW, inv) }
	surge := func(inv *catalog.Inverter) float64 { return all(inv.SurgeW, inv) }
	leg := func(inv *catalog.Inverter) float64 { return all(inv.LegW, inv) }
	const side = ", in the number its maker allows side by side,"
	for _, step := range []struct {
		meets func(*catalog.Inverter) bool
		words func() string
	}{
		{func(inv *catalog.Inverter) bool { return inv.DCMinV <= s.Bus.LowV && inv.DCMaxV >= s.Bus.HighV },
			func() string {
				return fmt.Sprintf("no inverter of the catalogue takes the whole bus, from %s to %s V", figure(s.Bus.LowV), figure(s.Bus.HighV))
			}},
		{func(inv *catalog.Inverter) bool { return energy.InverterFits(s, d, inv) },
			func() string { return "no inverter that takes the bus gives " + b.voltsAsked() }},
		{func(inv *catalog.Inverter) bool { return b.partial || continuous(inv) >= d.PeakTotalW() },
			func() string {
				return fmt.Sprintf("no inverter that fits%s carries the loads that can be on together, %s W; the largest gives %s W", side, figure(d.PeakTotalW()), figure(largest(continuous)))
			}},
		{func(inv *catalog.Inverter) bool {
			return b.partial || inv.ACV != acThreeWire || leg(inv) >= d.PeakLegW()
		},
			func() string {
				return fmt.Sprintf("no inverter that fits%s carries the loads on one leg, %s W; the largest gives %s W a leg", side, figure(d.PeakLegW()), figure(largest(leg)))
			}},
		{func(inv *catalog.Inverter) bool { return b.partial || surge(inv) >= d.SurgeW() },
			func() string {
				return fmt.Sprintf("no inverter that fits%s stands the largest start, %s W with all else on; the strongest stands %s W", side, figure(d.SurgeW()), figure(largest(surge)))
			}},
		{func(inv *catalog.Inverter) bool { return s.Recharge == nil || inv.ChargerA > 0 },
			func() string { return "no inverter that carries the loads has a charger, and recharge asks for one" }},
	} {
		var kept []*catalog.Inverter
		for _, inv := range left {
			if step.meets(inv) {
				kept = append(kept, inv)
			}
		}
		if len(kept) == 0 {
			if len(left) == 0 {
				return "" // told of the file
			}
			return step.words()
		}
		left = kept
	}
	return b.noSupplyRuns(left)
}

// noSupplyRuns says why none of some inverters that serve has a main and a feeder: what stops the smallest.
func (b *bench) noSupplyRuns(left []*catalog.Inverter) string {
	units := func(inv *catalog.Inverter) int {
		d := b.demand
		for u := 1; u < inv.MaxUnits && !b.partial; u++ {
			n := float64(u)
			if n*inv.ContinuousW >= d.PeakTotalW() && n*inv.SurgeW >= d.SurgeW() && (inv.ACV != acThreeWire || n*inv.LegW >= d.PeakLegW()) {
				return u
			}
		}
		return max(1, inv.MaxUnits)
	}
	watts := func(inv *catalog.Inverter) float64 { return float64(units(inv)) * inv.ContinuousW }
	least := left[0]
	for _, inv := range left {
		if watts(inv) < watts(least) {
			least = inv
		}
	}
	of := fmt.Sprintf(" of %d x %s", units(least), least.ID)
	if len(left) > 1 {
		of += " (the smallest that serves)"
	}
	if d, listed := wiring.MainDuty(b.s, least); listed {
		if _, ok := b.runOptions(d, true); !ok {
			return b.noRun(d, "the main"+of)
		}
	}
	if d, listed := wiring.FeederDuty(b.s, least, units(least)); listed {
		if _, ok := b.runOptions(d, true); !ok {
			return b.noRun(d, "the feeder"+of)
		}
	}
	return "no inverter that serves the loads has both a main and a feeder that the rules accept"
}

// voltsAsked names the voltages that loads and circuits ask of an inverter.
func (b *bench) voltsAsked() string {
	var volts []string
	note := func(v string) {
		for _, known := range volts {
			if known == v {
				return
			}
		}
		volts = append(volts, v)
	}
	for i := range b.s.Circuits {
		note(figure(b.s.Circuits[i].Volts) + " V")
	}
	words := strings.Join(volts, " and ") + " for the circuits"
	if len(volts) == 0 {
		words = "the volts asked for"
	}
	if b.demand.NeedsBothLegs {
		words += ", and 240 V between two legs for loads"
	}
	return words
}

// noStack says which condition no battery meets, "" where it is told otherwise.
func (b *bench) noStack() string {
	s := b.s
	type fit struct {
		bat           *catalog.Battery
		series        int
		room, carried int // modules by the shelves' floors, and of these by their mass limits too
	}
	var left []fit
	for i := range b.c.Batteries {
		bat := &b.c.Batteries[i]
		series, ok := energy.Fits(s.Bus, bat)
		if !ok {
			continue
		}
		f := fit{bat: bat, series: series}
		for j := range s.Cart.Shelves {
			sh := &s.Cart.Shelves[j]
			room := chassis.ShelfCapacity(sh, bat)
			f.room += room
			if bat.MassKg > 0 && float64(room)*bat.MassKg > sh.MaxMassKg {
				room = int(sh.MaxMassKg/bat.MassKg + 1e-9) // against the rounding of a quotient, as on the bench
			}
			f.carried += room
		}
		left = append(left, f)
	}
	if len(left) == 0 {
		if len(b.c.Batteries) == 0 {
			return ""
		}
		return fmt.Sprintf("no battery of the catalogue, in the number in series its maker allows, makes up the bus of %s V between %s and %s V",
			figure(s.Bus.NominalV), figure(s.Bus.LowV), figure(s.Bus.HighV))
	}
	for _, step := range []struct {
		meets func(*fit) bool
		words string
	}{
		{func(f *fit) bool { return f.room >= f.series }, "the shelves have no room for a string of any battery that fits the bus: look at their length, depth and clear_height"},
		{func(f *fit) bool { return f.carried >= f.series }, "the shelves' max_mass is too little for a string of any battery that fits the bus and their floor"},
		{func(f *fit) bool { return energy.UsableWh(f.bat, s.Limits.Reserve) > 0 },
			fmt.Sprintf("a reserve of %s %% leaves nothing of a battery to draw", figure(100*s.Limits.Reserve))},
	} {
		var kept []fit
		for i := range left {
			if step.meets(&left[i]) {
				kept = append(kept, left[i])
			}
		}
		if len(kept) == 0 {
			return step.words
		}
		left = kept
	}
	least := left[0].bat
	for i := range left {
		if left[i].bat.MaxDischargeA < least.MaxDischargeA {
			least = left[i].bat
		}
	}
	of := " of " + least.ID
	if len(left) > 1 {
		of += " (the battery of least current that fits)"
	}
	d, _ := wiring.StringDuty(s, least)
	return b.noRun(d, "a string"+of)
}

// figure returns a number for a sentence: up to two decimals, more where it would be nothing.
func figure(v float64) string {
	for decimals := 2; ; decimals++ {
		scale := math.Pow(10, float64(decimals))
		if short := math.Round(v*scale) / scale; short != 0 || v == 0 || decimals == mostDecimals {
			return strconv.FormatFloat(short, 'f', -1, 64)
		}
	}
}

// mostDecimals is as far as a figure goes to be told from nothing.
const mostDecimals = 6
