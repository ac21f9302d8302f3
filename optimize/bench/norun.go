package bench

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// NoRun says why no cable and device of the catalogue serve a path; what names the path in the sentence. "" where the
// catalogue has no cables or no devices at all, which is said elsewhere. The device is looked at first, as far as it
// does not depend on the cable.
func (b *Bench) NoRun(d wiring.Duty, what string) string {
	if len(b.Catalog.Cables) == 0 || d.OwnBreakerA <= 0 && len(b.Catalog.Devices) == 0 {
		return ""
	}
	if d.OwnBreakerA <= 0 {
		if words := b.noDevice(&d, what); words != "" {
			return words
		}
	}
	metric := b.Scenario.Rules == scenarios.IEC
	if words := noSizes(b.Catalog, metric, what); words != "" {
		return words
	}
	if len(wiring.Ungrounded(b.Rules, d, b.Catalog)) > 0 {
		return "no cable of the catalogue serves as the ground of " + what
	}
	if need := b.Rules.Check(d, wiring.Option{Cable: &b.Catalog.Cables[0], Sets: 1}, 0).RequiredA; d.OwnBreakerA > 0 && !plan.AtLeast(d.OwnBreakerA, need) {
		return fmt.Sprintf("the own_breaker of %s A is too small for %s, which needs %s A", Figure(d.OwnBreakerA), what, Figure(need))
	}
	if eased := b.eased(d); len(eased) > 0 {
		return fmt.Sprintf("no cable of the catalogue serves %s at %s A; one would with %s", what, Figure(d.DesignA), strings.Join(eased, ", or with "))
	}
	return fmt.Sprintf("no cable of the catalogue, in one or two sets, is large enough for %s at %s A and its device", what, Figure(d.DesignA))
}

// noSizes says that the catalogue has no conductor sizes of the rule set (AWG and kcmil, or mm2 where metric); "" where
// it has some.
func noSizes(c *catalog.Catalog, metric bool, what string) string {
	for i := range c.Cables {
		if x := &c.Cables[i]; x.Size.Metric() == metric && !x.GroundOnly {
			return ""
		}
	}
	if metric {
		return "no cable of the catalogue serves " + what + ": the iec rules take sizes in mm2, and it has none"
	}
	return "no cable of the catalogue serves " + what + ": the nec rules take sizes in AWG or kcmil, and it has none"
}

// noDevice says why no device serves a path whatever its cable; "" where one does.
func (b *Bench) noDevice(d *wiring.Duty, what string) string {
	var stand []*catalog.Device
	for i := range b.Catalog.Devices {
		dev := &b.Catalog.Devices[i]
		volts := dev.MaxDCV
		if d.AC {
			volts = dev.MaxACV
		}
		if volts >= d.DeviceV && dev.Poles >= d.Poles {
			stand = append(stand, dev)
		}
	}
	kind := fmt.Sprintf("%s V of direct current", Figure(d.DeviceV))
	if d.AC {
		kind = fmt.Sprintf("%s V of alternating current", Figure(d.DeviceV))
	}
	if d.Poles > 1 {
		kind += fmt.Sprintf(" with %d poles", d.Poles)
	}
	if len(stand) == 0 {
		return fmt.Sprintf("no fuse or breaker of the catalogue is rated for %s, as %s needs", kind, what)
	}
	need := d.DeviceA
	if need == 0 {
		need = b.Rules.Check(*d, wiring.Option{Cable: &b.Catalog.Cables[0], Sets: 1}, 0).RequiredA
	}
	most, fits, breaks := 0.0, false, 0.0
	for _, dev := range stand {
		most = math.Max(most, dev.RatingA)
		if d.DeviceA > 0 && dev.RatingA == need || d.DeviceA == 0 && plan.AtLeast(dev.RatingA, need) {
			fits = true
			breaks = math.Max(breaks, wiring.InterruptingA(*d, dev))
		}
	}
	switch {
	case !fits && d.DeviceA > 0:
		return fmt.Sprintf("the catalogue has no fuse or breaker of exactly %s A for %s, as %s asks for", Figure(need), kind, what)
	case !fits:
		return fmt.Sprintf("no fuse or breaker of the catalogue for %s has the %s A that %s needs; the largest has %s A", kind, Figure(need), what, Figure(most))
	case d.AC && !plan.AtLeast(breaks, b.Scenario.ACFaultA):
		return fmt.Sprintf("no fuse or breaker of the catalogue that suits %s breaks the ac_fault of %s A; the best breaks %s A", what, Figure(b.Scenario.ACFaultA), Figure(breaks))
	}
	return b.barred(d, what, stand, need)
}

// barred says why no device that is large enough may protect a path, although its volts and rating do; "" where one may.
func (b *Bench) barred(d *wiring.Duty, what string, stand []*catalog.Device, need float64) string {
	bars := map[string]string{
		"device limit":            fmt.Sprintf("is at most the %s A that the battery's maker allows (batteries.csv, max_fuse_a)", Figure(d.MostDeviceA)),
		"device polarised":        "lets current run both ways (devices.csv, polarised)",
		"device not listed":       "is listed (devices.csv, listed)",
		"device of partial range": "protects alone: they are of partial range (devices.csv, class)",
	}
	var words []string
	for _, dev := range stand {
		if d.DeviceA > 0 && dev.RatingA != need || !plan.AtLeast(dev.RatingA, need) {
			continue
		}
		served := true
		for _, c := range wiring.DeviceAlone(b.Rules, *d, dev) {
			bar := bars[c.Name]
			if served = served && (c.Passed || bar == ""); !c.Passed && bar != "" && !slices.Contains(words, bar) {
				words = append(words, bar)
			}
		}
		if served {
			return ""
		}
	}
	return fmt.Sprintf("no fuse or breaker of the catalogue with the %s A that %s needs %s", Figure(need), what, strings.Join(words, ", or "))
}

// eased lists the conditions of a path of which one alone, if it were easier, would let some cable serve.
func (b *Bench) eased(d wiring.Duty) []string {
	var list []string
	try := func(words string, change func(*wiring.Duty)) {
		easier := d
		change(&easier)
		if easier != d && len(wiring.Options(b.Rules, easier, b.Catalog)) > 0 {
			list = append(list, words)
		}
	}
	try(fmt.Sprintf("a shorter run than %s m or more drop than %s %%", Figure(d.LengthM), Figure(100*d.Drop)), func(d *wiring.Duty) { d.Drop = 1e9 })
	try(fmt.Sprintf("cooler air than %s C", Figure(d.AmbientC)), func(d *wiring.Duty) { d.AmbientC = math.Min(d.AmbientC, mildAmbientC) })
	try(fmt.Sprintf("fewer conductors bundled than %d", d.Bundled), func(d *wiring.Duty) { d.Bundled = min(d.Bundled, leastBundled) })
	try(fmt.Sprintf("terminals of more than %s C", Figure(d.TerminalC)), func(d *wiring.Duty) {
		if d.TerminalC > 0 {
			d.TerminalC = 0
		}
	})
	if d.Fine {
		try("cable of any strand", func(d *wiring.Duty) { d.Fine = false })
	}
	if d.Conduit != "" {
		try("no conduit or a larger one than the catalogue has of type "+d.Conduit, func(d *wiring.Duty) { d.Conduit = "" })
	}
	if d.OwnBreakerA > 0 {
		try(fmt.Sprintf("a bought fuse or breaker instead of an own_breaker of %s A", Figure(d.OwnBreakerA)), func(d *wiring.Duty) { d.OwnBreakerA = 0 })
	}
	return list
}

const (
	mildAmbientC = 30 // of the air that ampacity tables are made for: NEC table 310.16, IEC 60364-5-52 table B.52.2
	leastBundled = 2  // conductors of a single circuit
)
