package audit

import "math"

// sixDigits is the relative difference up to which a stated figure is true: figures may be rounded to
// six significant digits, which moves the smallest such number, 1.00000, by half of its last digit.
const sixDigits = 5e-6

// halfCent is how far whole cents may be from the amount they are the rounding of. The little above one half lets an
// amount of exactly half a cent be rounded either way, since a tax rate or a price per metre is not exact in binary.
const halfCent = 0.5 + 1e-6

// scale returns the size of the numbers that are compared.
func scale(a, b float64) float64 { return math.Max(math.Abs(a), math.Abs(b)) }

// tells reports whether a stated figure is the true one, up to its rounding. False if either is NaN or infinite.
func tells(stated, truth float64) bool {
	size := scale(stated, truth)
	return math.Abs(stated-truth) <= sixDigits*size && !math.IsInf(size, 1)
}

// rounds reports whether whole cents are the rounding of an amount in cents.
func rounds(cents, amount float64) bool { return math.Abs(cents-amount) <= halfCent }
