package catalog

import "time"

// StaleAfter is the age in days beyond which a price should be asked for again: about half a year. Common
// practice, no source.
const StaleAfter = 180

// Stale reports whether the part's price is more than StaleAfter days old on the given day. A price of no
// stated day has no known age and is not stale.
func (p Part) Stale(day time.Time) bool { return stale(p.AsOf, day) }

// Stale reports whether the offer is more than StaleAfter days old on the given day, as Part.Stale does.
func (o Offer) Stale(day time.Time) bool { return stale(o.AsOf, day) }

// stale compares days of the calendar, whatever the time of day and the zone.
func stale(asOf, day time.Time) bool {
	return !asOf.IsZero() && date(asOf).AddDate(0, 0, StaleAfter).Before(date(day))
}

// date returns midnight UTC of the day of the calendar that t is in.
func date(t time.Time) time.Time {
	year, month, day := t.Date()
	return time.Date(year, month, day, 0, 0, 0, 0, time.UTC)
}
