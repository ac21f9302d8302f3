package bench

import (
	"math"
	"strconv"
)

// Figure returns a number for a sentence: up to two decimals, more where two would make it 0.
func Figure(v float64) string {
	for decimals := 2; ; decimals++ {
		scale := math.Pow(10, float64(decimals))
		if short := math.Round(v*scale) / scale; short != 0 || v == 0 || decimals == mostDecimals {
			return strconv.FormatFloat(short, 'f', -1, 64)
		}
	}
}

// mostDecimals is how many decimals a figure has at most.
const mostDecimals = 6
