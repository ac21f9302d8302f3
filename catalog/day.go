package catalog

import (
	"fmt"
	"regexp"
	"strconv"
	"time"
)

// day is a column of a calendar day, written year first. A day as a spreadsheet in the US writes it is read where it
// can't mean another.
func day[T any](name string, field func(*T) *time.Time) column[T] {
	return column[T]{
		name:     name,
		format:   isDay,
		expected: "a day, for example 2026-03-14",
		read: func(v *T, in entry) *flaw {
			const right = "write year, month and day, for example 2026-03-14"
			t, err := time.Parse(time.DateOnly, in.text)
			if err != nil && in.pos.Sheet != "" {
				t, err = serialDay(in.text)
			}
			if err != nil {
				us, other, ok := slashedDay(in.text)
				if ok && !other.IsZero() {
					return &flaw{fmt.Sprintf("%s %s may mean either of two days", in.header, quote(in.text)),
						fmt.Sprintf("write %s or %s", us.Format(time.DateOnly), other.Format(time.DateOnly))}
				}
				if ok {
					t, err = us, nil
				}
			}
			if err != nil || t.Year() < 1900 {
				return &flaw{fmt.Sprintf("%s %s is not a day of the calendar", in.header, quote(in.text)), right}
			}
			*field(v) = t
			return nil
		},
		write: func(v *T) string {
			if field(v).IsZero() {
				return ""
			}
			return field(v).Format(time.DateOnly)
		},
	}
}

// slashes matches month, day and year as a spreadsheet in the US writes them.
var slashes = regexp.MustCompile(`^([0-9]{1,2})/([0-9]{1,2})/([0-9]{4}|[0-9]{2})$`)

// slashedDay reads month/day/year. Where day/month/year would be another day of the calendar, it returns that as well.
func slashedDay(text string) (us, other time.Time, ok bool) {
	m := slashes.FindStringSubmatch(text)
	if m == nil {
		return us, other, false
	}
	year := m[3]
	if len(year) == 2 {
		year = "20" + year
	}
	const layout = "1/2/2006"
	us, err := time.Parse(layout, m[1]+"/"+m[2]+"/"+year)
	if err != nil {
		return us, other, false
	}
	if turned, err := time.Parse(layout, m[2]+"/"+m[1]+"/"+year); err == nil && turned != us {
		other = turned
	}
	return us, other, true
}

// dayZero is the day from which spreadsheets count. It is a day early, since they take 1900 for a leap year.
var dayZero = time.Date(1899, 12, 30, 0, 0, 0, 0, time.UTC)

// serialDay reads a day as a spreadsheet keeps it, in days.
func serialDay(text string) (time.Time, error) {
	days, err := strconv.Atoi(text)
	if err != nil || days < 1 || days > 1e5 {
		return time.Time{}, strconv.ErrSyntax
	}
	return dayZero.AddDate(0, 0, days), nil
}

// serialText writes a day, given year first, as a spreadsheet keeps it.
func serialText(text string) string {
	t, err := time.Parse(time.DateOnly, text)
	if err != nil {
		return text
	}
	return strconv.Itoa(int(t.Sub(dayZero).Hours() / 24))
}
