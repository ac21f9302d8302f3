package view

import (
	"strings"
	"testing"

	"cartwright/optimize/plan"
	"cartwright/optimize/question"
	"cartwright/optimize/why"
)

// someWhy is a hand-made explanation: a change that saves, one that leaves no plan, two that do nothing.
func someWhy() Why {
	best, other := first(), second()
	return Why{
		Scenario: sample().Scenario, Cautions: []string{"Arcs can kill."},
		Explanation: &why.Explanation{Complete: true, Best: &best, Effects: []why.Effect{
			{Limit: "autonomy", From: 24, To: 23, Unit: "h", Looser: true, Plan: &best},
			{Limit: "autonomy", From: 24, To: 25, Unit: "h", Plan: &other, Saves: -164.33},
			{Limit: "mass", From: 211, To: 221, Unit: "kg", Looser: true, Plan: &other, Saves: 12.5},
			{Limit: "mass", From: 211, To: 201, Unit: "kg"},
			{Limit: "tilt", From: 10, To: 9, Unit: "deg", Looser: true, Plan: &best},
			{Limit: "tilt", From: 10, To: 11, Unit: "deg", Plan: &best},
		}},
	}
}

// noWhy is a hand-made explanation of why there is no plan.
func noWhy() Why {
	w := someWhy()
	cheap, dear := first(), second()
	w.Explanation = &why.Explanation{
		Complete: true,
		Conflict: []question.LimitChange{{Name: "autonomy", From: 24, To: 24, Unit: "h"}, {Name: "mass", From: 90, To: 90, Unit: "kg"}},
		WaysOut: []why.WayOut{
			{Change: question.Change{Limits: []question.LimitChange{{Name: "mass", From: 90, To: 96.54, Unit: "kg"}}}, Plan: &cheap},
			{Change: question.Change{Limits: []question.LimitChange{{Name: "autonomy", From: 24, To: 11.25, Unit: "h"},
				{Name: "budget", From: 900, To: 1000.001, Unit: "USD"}}}, Plan: &dear},
		},
	}
	return w
}

func TestWhyInEveryFormat(t *testing.T) {
	calm := someWhy()
	e := *calm.Explanation
	best := first()
	best.Limits = nil
	e.Best, e.Effects = &best, e.Effects[4:]
	calm.Explanation = &e
	stopped := someWhy()
	stopped.Explanation.Complete, stopped.Explanation.Effects = false, stopped.Explanation.Effects[4:]
	alone := noWhy()
	e = *alone.Explanation
	e.Conflict, e.WaysOut = e.Conflict[1:], e.WaysOut[:1]
	alone.Explanation = &e
	hopeless := noWhy()
	hopeless.Explanation = &why.Explanation{Complete: true, Reasons: []string{"no inverter for 240 V"}}
	for _, c := range []struct {
		file   string
		answer Why
		format Format
	}{
		{"why.txt", someWhy(), Table},
		{"why.md", someWhy(), Markdown},
		{"why.csv", someWhy(), CSV},
		{"why.json", someWhy(), JSON},
		{"why-calm.txt", calm, Table},
		{"why-stopped.txt", stopped, Table},
		{"why-none.txt", noWhy(), Table},
		{"why-none.csv", noWhy(), CSV},
		{"why-none.json", noWhy(), JSON},
		{"why-alone.txt", alone, Table},
		{"why-hopeless.txt", hopeless, Table},
	} {
		t.Run(c.file, func(t *testing.T) { shownAs(t, c.file, c.answer, c.format) })
	}
}

// somePart is a hand-made answer about a fuse that is not in the best plan.
func somePart() WhyPart {
	s := sample()
	best, with, at := second(), first(), first()
	for _, p := range []*plan.Plan{&with, &at} {
		p.Bill = append(p.Bill[:len(p.Bill):len(p.Bill)], plan.Line{Part: "fuse-t-175", Kind: "device", Quantity: 3, Unit: "each", Buy: 3, UnitPrice: 40, Line: 12000})
	}
	with.Cost, at.Cost = 260000, 251000
	s.Scenario.Limits.Budget = 255000
	return WhyPart{Scenario: s.Scenario, Catalog: s.Catalog, Cautions: []string{"Arcs can kill."},
		Answer: &why.PartAnswer{Part: "fuse-t-175", Best: &best, With: &with, Costs: 90, Price: 40, EntersAt: 12.34, Priced: true, At: &at}}
}

func TestWhyPartInEveryFormat(t *testing.T) {
	changed := func(change func(*why.PartAnswer)) WhyPart {
		w := somePart()
		a := *w.Answer
		change(&a)
		w.Answer = &a
		return w
	}
	unpriced := func(a *why.PartAnswer) { a.EntersAt, a.Priced, a.At = 0, false, nil }
	out := changed(func(a *why.PartAnswer) { unpriced(a); a.StaysOut = true })
	cable := changed(func(a *why.PartAnswer) { unpriced(a); a.Part, a.Costs = "cu-4-0", 0 })
	in := changed(func(a *why.PartAnswer) { unpriced(a); a.Best, a.InBest = a.With, true })
	poor := changed(func(a *why.PartAnswer) { unpriced(a); a.Best, a.Costs = nil, 0 })
	nowhere := func(change func(*why.PartAnswer)) WhyPart {
		return changed(func(a *why.PartAnswer) { unpriced(a); a.With = nil; change(a) })
	}
	for _, c := range []struct {
		file   string
		answer WhyPart
		format Format
	}{
		{"why-part.txt", somePart(), Table},
		{"why-part.md", somePart(), Markdown},
		{"why-part.csv", somePart(), CSV},
		{"why-part.json", somePart(), JSON},
		{"why-part-out.txt", out, Table},
		{"why-part-out.json", out, JSON},
		{"why-part-cable.txt", cable, Table},
		{"why-part-in.txt", in, Table},
		{"why-part-poor.txt", poor, Table},
		{"why-part-unfit.txt", nowhere(func(a *why.PartAnswer) { a.Unfit = true }), Table},
		{"why-part-kept.txt", nowhere(func(a *why.PartAnswer) { a.KeptOutBy = []string{"mass", "push"} }), Table},
		{"why-part-one.txt", nowhere(func(a *why.PartAnswer) { a.KeptOutBy = []string{"mass"} }), Table},
		{"why-part-many.txt", nowhere(func(a *why.PartAnswer) { a.Best = nil }), Table},
		{"why-part-many.json", nowhere(func(a *why.PartAnswer) { a.Best = nil }), JSON},
	} {
		t.Run(c.file, func(t *testing.T) { shownAs(t, c.file, c.answer, c.format) })
	}
}

// Long names stay within the width of a screen.
func TestWhyWithLongNames(t *testing.T) {
	w, p := someWhy(), somePart()
	long := strings.Repeat("very-long-name-", 8)
	w.Scenario.Name, p.Scenario.Name = long, long
	for i := range w.Explanation.Effects {
		w.Explanation.Effects[i].Limit = "drop of circuit " + long
	}
	for _, q := range []*plan.Plan{w.Explanation.Best, p.Answer.Best, p.Answer.With, p.Answer.At} {
		q.Core.Inverter.Part = long
		for i := range q.Core.Batteries {
			q.Core.Batteries[i].Part = long
		}
	}
	for _, answer := range []Document{w, p} {
		got, err := Render(answer, Table, Width)
		if err != nil {
			t.Fatal(err)
		}
		fits(t, string(got))
	}
}
