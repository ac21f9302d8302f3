package quantity

import (
	"math"
	"strconv"
	"strings"
)

// Format writes an amount given in d's SI unit with that unit ("%" for a ratio), in the fewest digits that
// Parse reads back to the same float64. The amount must be finite.
func Format(si float64, d Dimension) string {
	text := strconv.FormatFloat(si, 'g', -1, 64)
	if a := math.Abs(si); a >= leastPlain && a < mostPlain {
		text = strconv.FormatFloat(si, 'f', -1, 64)
	}
	if d == Ratio && si != 0 {
		text = percent(si)
	}
	return text + " " + d.Units()[0]
}

// Amounts of this size are written without an exponent, which few people read: 10000000 W.
const leastPlain, mostPlain = 1e-4, 1e15

// percent moves the decimal point of a ratio's shortest spelling two places. Multiplying by 100 would
// round, and Parse would not come back to the same float64.
func percent(ratio float64) string {
	mantissa, exponent, _ := strings.Cut(strconv.FormatFloat(ratio, 'e', -1, 64), "e")
	e, _ := strconv.Atoi(exponent)
	e += 2
	mantissa, negative := strings.CutPrefix(mantissa, "-")
	sign := ""
	if negative {
		sign = "-"
	}
	digits := strings.Replace(mantissa, ".", "", 1)
	switch {
	case e < -4 || e > 20: // the bounds of strconv's 'g'
		return sign + mantissa + "e" + strconv.Itoa(e)
	case e < 0:
		return sign + "0." + strings.Repeat("0", -e-1) + digits
	case len(digits) <= e+1:
		return sign + digits + strings.Repeat("0", e+1-len(digits))
	}
	return sign + digits[:e+1] + "." + digits[e+1:]
}
