// Package year runs a store through a year of hours: what the sun gives and the loads do not take charges it,
// what they take beyond the sun empties it, what it cannot give is short and comes from the wall. It answers
// how much of a year is served, and how large the least store is that serves a share of it.
//
// The year goes round: it ends with the store it began with. Each hour takes a store s to
// min(hi, max(lo, s + a)), and so does a whole year; one pass finds a, lo and hi, and the year that counts
// starts at lo where a < 0, else at hi.
//
// What is short is the least of a linear program (the store may do nothing better than give at once), so it is
// convex and falling in the store and the charging limit together, and one year gives a plane below it
// everywhere that touches it there: see Shortage. It is not monotone over banks: one more battery of a kind that
// charges slowly can lower the whole bank's charging limit.
//
// Left out: what a store loses by standing, a battery's fall of capacity with age and cold, charging that tapers
// off. The loads are the same every day.
//
// Energy is in Wh, power in W; an hour's mean power and its energy are the same number.
package year

// Store is a bank of batteries as the year sees it.
type Store struct {
	CapacityWh float64 // usable energy
	ChargeW    float64 // the most it is charged with; +Inf: no limit
	RoundTrip  float64 // 0..1, energy out per energy in
}
