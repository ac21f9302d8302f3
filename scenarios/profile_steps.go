package scenarios

import (
	"fmt"
	"math"
	"strconv"

	"cartwright/catalog/problem"
)

// steps checks that the times go on in a constant step and cover whole days.
func (p *profile) steps() {
	n := len(p.rows)
	if n < 2 {
		rows := "one row"
		if n == 0 {
			rows = "no rows"
		}
		p.problems.Add(problem.Pos{File: p.file}, "a load profile of "+rows+" covers no whole day",
			"write a row for every step of one or more days")
		return
	}
	for i := 1; i < n; i++ {
		if p.rows[i].dated != p.rows[0].dated {
			is, not := "with", "is not"
			if p.rows[0].dated {
				is, not = "without", "has one"
			}
			p.problems.Add(p.rows[i].pos, fmt.Sprintf("the time is %s a date, the one above %s", is, not), "write all times one way")
			return
		}
	}
	for i := 0; i+1 < n; i++ {
		if p.rows[i].minute == p.rows[i+1].minute {
			p.problems.Add(p.rows[i+1].pos, fmt.Sprintf("the time %s stands in two rows", p.rows[i].text), "give each step one row")
			return
		}
	}
	step := p.between(0)
	if step < 1 || step > 60 || dayMin%step != 0 {
		p.problems.Add(p.rows[1].pos, fmt.Sprintf("the step from %s to %s is %d min", p.rows[0].text, p.rows[1].text, step),
			"use a constant step of 1 to 60 min that divides the day")
		return
	}
	for i := 1; i+1 < n; i++ {
		if got := p.between(i); got != step {
			p.problems.Add(p.rows[i+1].pos, fmt.Sprintf("the step from %s to %s is %d min", p.rows[i].text, p.rows[i+1].text, got),
				fmt.Sprintf("go on in steps of %d min as above, without gaps or a change to or from summer time", step))
			return
		}
	}
	if n*step%dayMin != 0 {
		whole := n * step / dayMin
		p.problems.Add(p.rows[n-1].pos, fmt.Sprintf("the load profile ends here after %s", hoursText(n*step)),
			fmt.Sprintf("write whole days: %d rows in steps of %d min are %s", (whole+1)*dayMin/step, step, daysText(whole+1)))
		return
	}
	if !anyPositive(p.measured.LegA) && !anyPositive(p.measured.LegB) {
		p.problems.Add(problem.Pos{File: p.file}, "the load profile is zero throughout", "write what the loads draw")
	}
	p.measured.StepMin = step
	p.measured.StartMin = p.rows[0].minute % dayMin
}

// between returns the minutes from row i to the next; times without a date go round at midnight.
func (p *profile) between(i int) int {
	a, b := p.rows[i], p.rows[i+1]
	d := b.minute - a.minute
	if !a.dated && d <= 0 {
		d += dayMin
	}
	return d
}

func hoursText(minutes int) string {
	return strconv.FormatFloat(math.Round(float64(minutes)/6)/10, 'f', -1, 64) + " h"
}

func daysText(days int) string {
	if days == 1 {
		return "one day"
	}
	return strconv.Itoa(days) + " days"
}

func anyPositive(watts []float64) bool {
	for _, w := range watts {
		if w > 0 {
			return true
		}
	}
	return false
}
