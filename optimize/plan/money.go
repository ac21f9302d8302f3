package plan

import (
	"encoding/json"
	"fmt"
	"math"
	"strconv"

	"cartwright/catalog"
)

// Money is an amount in whole cents that reads and writes as currency units with two decimals in JSON.
type Money catalog.Cents

// Units returns the amount in currency units.
func (m Money) Units() float64 { return float64(m) / 100 }

// String returns the amount in currency units with two decimals, "-3.05" for -305 cents.
func (m Money) String() string {
	sign := ""
	if m < 0 {
		sign, m = "-", -m
	}
	return fmt.Sprintf("%s%d.%02d", sign, m/100, m%100)
}

// MarshalJSON writes the amount as a number with two decimals.
func (m Money) MarshalJSON() ([]byte, error) { return []byte(m.String()), nil }

// UnmarshalJSON reads a number of currency units; more than two decimals are rounded to the cent.
func (m *Money) UnmarshalJSON(data []byte) error {
	var number json.Number
	if err := json.Unmarshal(data, &number); err != nil {
		return err
	}
	v, err := strconv.ParseFloat(string(number), 64)
	if err != nil || math.Abs(v) > 1e13 {
		return fmt.Errorf("plan: %q is no amount of money", number)
	}
	*m = Money(math.Round(v * 100))
	return nil
}
