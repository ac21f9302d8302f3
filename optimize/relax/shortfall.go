package relax

import (
	"fmt"
	"math"

	"cartwright/optimize/bench"
	"cartwright/optimize/chassis"
	"cartwright/optimize/wiring"
)

// fallsShort says in which figures not even the most that the catalogue has reaches the least that every plan needs.
// It needs no search.
func fallsShort(b *bench.Bench, given bool) []string {
	var list []string
	barsA, bars := math.Inf(1), 0.0
	drawA := math.Inf(1)
	for i := range b.Supplies {
		v := &b.Supplies[i]
		barsA = math.Min(barsA, wiring.BusbarA(v.BusA))
		drawA = math.Min(drawA, v.DrawA)
	}
	for i := range b.Busbars {
		bars = math.Max(bars, b.Busbars[i].RatingA)
	}
	drawn, draws := "the smallest inverter that serves", "draws"
	if b.DcA > 0 {
		drawn, draws = fmt.Sprintf("%s and the direct-current loads' %s A", drawn, bench.Figure(b.DcA)), "draw"
	}
	deliver := "the strings that have room on the shelves, as many as their makers allow, deliver"
	if given {
		deliver = "these batteries deliver"
	}
	if bars < barsA {
		list = append(list, fmt.Sprintf("bus bars of %s A are needed for %s; the largest of the catalogue have %s A", bench.Figure(barsA), drawn, bench.Figure(bars)))
	}
	gives := 0.0
	for _, members := range b.Groups {
		sum := 0.0
		for _, at := range members {
			sum += float64(b.Stacks[at].Most) * b.Stacks[at].DischargeA
		}
		gives = math.Max(gives, sum)
	}
	if gives < drawA {
		list = append(list, fmt.Sprintf("%s %s %s A at bus.low; %s %s A at the most", drawn, draws, bench.Figure(drawA), deliver, bench.Figure(gives)))
	}
	carries := 0.0
	for i := range b.Casters {
		carries = math.Max(carries, b.Casters[i].CarriesKg)
	}
	if each := chassis.CasterLoadKg(b.FixedKg, b.Scenario.CasterFactor, b.Scenario.Cart.Casters); each > carries {
		list = append(list, fmt.Sprintf("frame and deck items alone, %s kg, ask %s kg of each of %d casters at a caster_factor of %s and one wheel in the air; the strongest of the catalogue carry %s kg each",
			bench.Figure(b.FixedKg), bench.Figure(each), b.Scenario.Cart.Casters, bench.Figure(b.Scenario.CasterFactor), bench.Figure(carries)))
	}
	return list
}
