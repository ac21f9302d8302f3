package sun

import "math"

// Clearness is the distribution of the days' clearness indices, H / H0, within a month. Its parameters follow from
// the month's mean.
type Clearness struct {
	Least, Most float64 // of a day
	Gamma       float64 // shape between them: 0 even, above 0 more clear days
}

// leastClearness is the clearness of the darkest day.
//
// Source: Bendt, Collares-Pereira and Rabl, Solar Energy 27 (1981) 1; in five texts.
const leastClearness = 0.05

// The range of means for which the distribution was made. A mean outside it counts as its nearer end. Common practice,
// no source.
const (
	leastMean = 0.10
	mostMean  = 0.80
)

// ClearnessOf returns the distribution of the days of a month whose mean clearness is K, held between 0.10
// and 0.80.
//
//	Kmax = 0.6313 + 0.267 K - 11.9 (K - 0.75)^8        Hollands and Huget, Solar Energy 30 (1983) 195
//	xi = (Kmax - Kmin) / (Kmax - K)
//	gamma = -1.498 + (1.184 xi - 27.182 exp(-1.5 xi)) / (Kmax - Kmin)        Herzog (1985)
//
// Source: Duffie and Beckman, section 2.9, eq. 2.9.5, 2.9.6; in five texts.
func ClearnessOf(mean float64) Clearness {
	k := min(mostMean, max(leastMean, mean))
	most := 0.6313 + 0.267*k - 11.9*math.Pow(k-0.75, 8)
	width := most - leastClearness
	xi := width / (most - k)
	return Clearness{
		Least: leastClearness, Most: most,
		Gamma: -1.498 + (1.184*xi-27.182*math.Exp(-1.5*xi))/width,
	}
}

// Share returns the share of days whose clearness is below k.
//
//	F = (exp(gamma Kmin) - exp(gamma K)) / (exp(gamma Kmin) - exp(gamma Kmax))
//
// Source: Bendt, Collares-Pereira and Rabl, Solar Energy 27 (1981) 1; Duffie and Beckman, eq. 2.9.4.
func (c Clearness) Share(k float64) float64 {
	k = min(c.Most, max(c.Least, k))
	if c.Gamma == 0 {
		return (k - c.Least) / (c.Most - c.Least)
	}
	return math.Expm1(c.Gamma*(k-c.Least)) / math.Expm1(c.Gamma*(c.Most-c.Least))
}

// Day returns the clearness below which a share of the days lies: Share solved for K.
//
//	K = ln(exp(gamma Kmin) - F (exp(gamma Kmin) - exp(gamma Kmax))) / gamma
//
// Source: as for Share.
func (c Clearness) Day(share float64) float64 {
	if c.Gamma == 0 {
		return c.Least + share*(c.Most-c.Least)
	}
	return c.Least + math.Log1p(share*math.Expm1(c.Gamma*(c.Most-c.Least)))/c.Gamma
}
