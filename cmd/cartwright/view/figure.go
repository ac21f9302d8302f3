package view

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"cartwright/optimize/plan"
)

// none stands for a figure that there is not.
const none = "-"

// endless is a figure beyond any that a cart can have; where no number can say "no limit", the largest
// one does.
const endless = 1e15

// fixed returns v with a number of decimals; never "-0.0", and words for what is not finite.
func fixed(v float64, decimals int) string {
	switch {
	case math.IsNaN(v):
		return "?"
	case v >= endless:
		return "no limit"
	case v <= -endless:
		return "-no limit"
	}
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Trim(s, "-0.") == "" {
		return strings.TrimPrefix(s, "-")
	}
	return s
}

// signed returns v like fixed, with a plus where it is positive and "=" where it rounds to nothing.
func signed(v float64, decimals int) string {
	s := fixed(v, decimals)
	switch {
	case strings.Trim(s, "-0.") == "":
		return "="
	case v > 0:
		return "+" + s
	}
	return s
}

// short returns v with up to the given decimals, without trailing zeros: 24, 19.5.
func short(v float64, decimals int) string {
	s := fixed(v, decimals)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

// stated returns v like short, or a dash where it is zero and that means "not stated".
func stated(v float64, decimals int) string {
	if v == 0 {
		return none
	}
	return short(v, decimals)
}

// decimalsOf returns to how many decimals a figure of a unit is shown: as many as its instruments give.
func decimalsOf(unit string) int {
	switch unit {
	case "W", "N", "each", "mm":
		return 0
	case "h", "kg", "lb", "A", "deg", "in", "lbf", "kg/kWh", "lb/kWh", "l/kWh":
		return 1
	}
	return 2 // money, kWh, %, and shares without unit
}

// lenient returns v to the decimals of its unit, rounded away from old, so that a limit changed to the
// figure as printed is changed far enough. A figure that would round to nothing gets more decimals.
func lenient(v, old float64, unit string) string {
	decimals := decimalsOf(unit)
	rounded := roundedAway(v, old, decimals)
	for rounded == 0 && v > 0 && decimals < mostDecimals {
		decimals++
		rounded = roundedAway(v, old, decimals)
	}
	return short(rounded, decimals)
}

// mostDecimals is the most a figure is shown with, so that something small is told from nothing.
const mostDecimals = 6

// roundedAway returns v rounded to some decimals, away from old.
func roundedAway(v, old float64, decimals int) float64 {
	scale := math.Pow(10, float64(decimals))
	// A figure is whole where floating point misses a whole one by less than this part of a last digit.
	const whole = 1e-6
	scaled := v * scale
	switch near := math.Round(scaled); {
	case math.Abs(scaled-near) < whole:
		scaled = near
	case v < old:
		scaled = math.Floor(scaled)
	default:
		scaled = math.Ceil(scaled)
	}
	return scaled / scale
}

// enough returns a quantity to buy or a length to cut, with up to two decimals: rounded up, so that who reads
// it has enough.
func enough(quantity float64) string { return short(roundedAway(quantity, 0, 2), 2) }

// visible returns v like short, with more decimals where it would be shown as zero and is not.
func visible(v float64, decimals int) string {
	for decimals < mostDecimals && v != 0 && strings.Trim(short(v, decimals), "-0.") == "" {
		decimals++
	}
	return short(v, decimals)
}

// money returns an amount with two decimals.
func money(m plan.Money) string { return m.String() }

// Count returns a noun with its number: "1 plan", "10 plans".
func Count(n int, one, many string) string { return count(n, one, many) }

func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// percent returns a share in percent, to a tenth; of all or none without decimals, and never rounded to
// these.
func percent(share float64) string {
	switch s := fixed(100*share, 1); {
	case share == 0 || share == 1:
		return fixed(100*share, 0)
	case s == "0.0":
		return "<0.1"
	case s == "100.0":
		return ">99.9"
	default:
		return s
	}
}
