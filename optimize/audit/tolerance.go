package audit

import "math"

// roundoff is the relative difference up to which a value that should reach a limit still does. It
// guards sums that are added up in another order here than where the plan was made, and products that
// are not exact in binary (three modules of 4.2 V); it is far above what that does to a float64 (1e-16
// for each operation) and far below any rating's last digit.
const roundoff = 1e-9

// sixDigits is the relative difference up to which a stated figure is true: figures may be rounded to
// six significant digits, which moves the smallest such number, 1.00000, by half of its last digit.
const sixDigits = 5e-6

// halfCent is how far a whole number of cents may be from the amount it is the rounding of. The little
// above one half lets an amount of exactly half a cent be rounded either way, since a tax rate or a
// price of a metre is not exact in binary.
const halfCent = 0.5 + 1e-6

// scale returns the size of the numbers that are compared.
func scale(a, b float64) float64 { return math.Max(math.Abs(a), math.Abs(b)) }

// reaches reports whether value >= limit, up to roundoff. False for what is no number.
func reaches(value, limit float64) bool { return value >= limit-roundoff*math.Abs(limit) }

// tells reports whether a stated figure is the true one, up to its rounding. False for what is no number
// or infinite: no figure tells that.
func tells(stated, truth float64) bool {
	size := scale(stated, truth)
	return math.Abs(stated-truth) <= sixDigits*size && !math.IsInf(size, 1)
}

// rounds reports whether whole cents are the rounding of an amount in cents.
func rounds(cents, amount float64) bool { return math.Abs(cents-amount) <= halfCent }
