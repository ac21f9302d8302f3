package plan

import "math"

// Tolerance is the relative difference up to which a limit that is met exactly is met. It guards sums that are
// added up in another order, and products that are not exact in binary (three modules of 4.2 V). It is far above
// what that does to a float64 (1e-16 for each operation) and far below the last digit of any rating.
const Tolerance = 1e-9

// AtLeast reports whether have reaches need, up to Tolerance. False if either is NaN.
func AtLeast(have, need float64) bool { return have >= need-Tolerance*math.Abs(need) }

// AtMost reports whether have does not exceed most, up to Tolerance. False if either is NaN.
func AtMost(have, most float64) bool { return have <= most+Tolerance*math.Abs(most) }

// Floor returns the largest whole number not above x; an x that is a whole number up to Tolerance counts as that.
func Floor(x float64) float64 { return math.Floor(x + Tolerance*math.Abs(x)) }

// Ceil returns the smallest whole number not below x; an x that is a whole number up to Tolerance counts as that.
func Ceil(x float64) float64 { return math.Ceil(x - Tolerance*math.Abs(x)) }
