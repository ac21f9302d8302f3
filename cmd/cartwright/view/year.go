package view

import (
	"fmt"
	"math"
	"time"

	"cartwright/optimize/plan"
)

// year shows what the sun's year comes to, and how the months share in it.
func (p Plans) year(one *plan.Plan) section {
	y := one.Year
	if !p.Full {
		return section{title: detailTitle(one, "the year"), table: monthsAcross(y), prose: p.yearText(y)}
	}
	t := &table{columns: []column{
		text("month"), number("sun\nkWh"), number("loads\nkWh"), number("served\n%"), number("short\nkWh"), number("spilled\nkWh"),
	}}
	for i, m := range y.Months {
		t.row(time.Month(i + 1).String()[:3], energy(m.Sun), energy(m.Load), served(m), energy(m.Short), energy(m.Spilled))
	}
	sum := sumOf(y.Months)
	t.row("year", energy(sum.Sun), energy(sum.Load), percent(y.Served), energy(sum.Short), energy(sum.Spilled))
	return section{title: detailTitle(one, "the year"), table: t, bullets: p.yearText(y)}
}

// monthsAcross shows the months side by side, which takes fewest lines.
func monthsAcross(y *plan.Year) *table {
	t := &table{columns: []column{text("kWh")}}
	rows := [][]string{{"sun"}, {"loads"}, {"short"}, {"spilled"}, {"served %"}}
	for i, m := range y.Months {
		t.columns = append(t.columns, number(time.Month(i + 1).String()[:3]))
		for r, kwh := range []float64{m.Sun, m.Load, m.Short, m.Spilled} {
			rows[r] = append(rows[r], fixed(kwh, 0))
		}
		share := none
		if m.Load > 0 {
			share = fixed(100*(1-m.Short/m.Load), 0)
		}
		rows[4] = append(rows[4], share)
	}
	for _, r := range rows {
		t.row(r...)
	}
	return t
}

// sumOf adds months up.
func sumOf(months []plan.Month) plan.Month {
	var sum plan.Month
	for _, m := range months {
		sum = plan.Month{Sun: sum.Sun + m.Sun, Load: sum.Load + m.Load, Short: sum.Short + m.Short, Spilled: sum.Spilled + m.Spilled}
	}
	return sum
}

// energy returns kWh of a month: a tenth where there are few.
func energy(kwh float64) string {
	if math.Abs(kwh) < 100 {
		return fixed(kwh, 1)
	}
	return fixed(kwh, 0)
}

// served returns the share of a month's loads that sun and store serve, in percent.
func served(m plan.Month) string {
	if m.Load <= 0 {
		return none
	}
	return percent(1 - m.Short/m.Load)
}

// yearText says in sentences what the table does not show.
func (p Plans) yearText(y *plan.Year) []string {
	currency := p.Scenario.Currency
	lines := []string{fmt.Sprintf("Short in %s of the year, at most %s in a row; then %s kWh come from the wall. %s kWh of the sun are spilled.",
		hours(y.ShortH), hours(y.LongestShortH), energy(y.WallKWh), energy(y.SpilledKWh))}
	if y.ShortH == 0 {
		lines[0] = fmt.Sprintf("Never short: nothing comes from the wall. %s kWh of the sun are spilled.", energy(y.SpilledKWh))
	}
	clipped := ""
	if y.ClippedKWh > 0 {
		clipped = fmt.Sprintf(" %s kWh are above what the inverter takes and are lost.", energy(y.ClippedKWh))
	}
	lines = append(lines, fmt.Sprintf("The store goes through %s full cycles a year.%s", fixed(y.Cycles, 0), clipped))
	switch {
	case y.Saved == nil:
	case y.PaybackYears == nil:
		lines = append(lines, "It saves nothing against energy from the wall.")
	default:
		lines = append(lines, fmt.Sprintf("It saves %s %s a year against energy from the wall, and has paid for itself after %s years.",
			money(*y.Saved), currency, fixed(*y.PaybackYears, 1)))
	}
	return lines
}

// hours returns a number of whole hours.
func hours(h float64) string { return count(int(math.Round(h)), "hour", "hours") }
