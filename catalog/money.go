package catalog

import (
	"encoding/json"
	"fmt"
	"math"
	"strconv"
)

// Cents is an amount of money in hundredths of the scenario's currency. A sum on a bill is never a float.
// In JSON it is a number of currency units with two decimals.
type Cents int64

// halfHair, in cents, makes half cents round up although most have no exact binary float.
const halfHair = 1e-7

// RoundCents returns the whole cent nearest to an amount in cents; an exact half rounds away from zero. No money is
// rounded elsewhere.
func RoundCents(cents float64) Cents {
	if cents < 0 {
		return -RoundCents(-cents)
	}
	return Cents(math.Floor(cents + 0.5 + halfHair))
}

// CentsFrom returns the whole cent nearest to an amount in currency units.
func CentsFrom(amount float64) Cents { return RoundCents(amount * 100) }

// Units returns the amount in currency units.
func (c Cents) Units() float64 { return float64(c) / 100 }

// String returns the amount in currency units with two decimals, "-3.05" for -305 cents.
func (c Cents) String() string {
	sign := ""
	if c < 0 {
		sign, c = "-", -c
	}
	return fmt.Sprintf("%s%d.%02d", sign, c/100, c%100)
}

// MarshalJSON writes the amount as a number with two decimals.
func (c Cents) MarshalJSON() ([]byte, error) { return []byte(c.String()), nil }

// UnmarshalJSON reads a number of currency units; more than two decimals are rounded to the cent.
func (c *Cents) UnmarshalJSON(data []byte) error {
	var number json.Number
	if err := json.Unmarshal(data, &number); err != nil {
		return err
	}
	v, err := strconv.ParseFloat(string(number), 64)
	if err != nil || math.Abs(v) > 1e13 {
		return fmt.Errorf("%q is no amount of money", number)
	}
	*c = CentsFrom(v)
	return nil
}
