package proof

import "math/big"

// value returns z / 2^scale as the nearest double.
func value(z *big.Int, scale uint) float64 {
	v, _ := new(big.Rat).SetFrac(z, new(big.Int).Lsh(one, scale)).Float64()
	return v
}
