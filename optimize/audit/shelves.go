package audit

import (
	"math"

	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

const (
	ruleShelves      = "shelves"
	ruleStands       = "modules on shelves"
	ruleShelfHeight  = "shelf height"
	ruleShelfRoom    = "shelf room"
	ruleShelfMass    = "shelf mass"
	ruleShelfFigures = "shelf figures"
)

var shelfRules = []Rule{
	{ruleShelves, "", "every shelf named is in the scenario, once", fromParts},
	{ruleStands, "", "every module of the core stands on a shelf, and no others do", fromParts},
	{ruleShelfHeight, "m", "a module is no taller than the shelf's clear height", fromScenario},
	{ruleShelfRoom, "", "the modules stand in whole columns across the depth, each kind turned one way, stacked as far as the shelf allows; the columns and gaps take <= the length", "plane geometry"},
	setDownRule,
	{ruleShelfMass, "kg", "the modules' mass <= what the shelf bears: as stated, and by its rails", "the scenario's own limit; a beam on two supports under an even load, 0.6 of yield and 1/240 of the span: " + practice},
	{ruleShelfFigures, "kg", "the stated mass on each shelf is true", fromParts},
}

// shelf returns the scenario's shelf of a name, nil for none.
func (a *auditor) shelf(name string) *scenarios.Shelf {
	for i := range a.s.Cart.Shelves {
		if a.s.Cart.Shelves[i].Name == name {
			return &a.s.Cart.Shelves[i]
		}
	}
	return nil
}

// shelves checks whether every module stands, and on a shelf that holds it.
func (a *auditor) shelves() {
	var faults []string
	seen := map[string]bool{}
	for _, stated := range a.p.Shelves {
		if a.shelf(stated.Shelf) == nil {
			faults = append(faults, "no shelf "+stated.Shelf)
		}
		if seen[stated.Shelf] {
			faults = append(faults, "shelf "+stated.Shelf+" is listed twice")
		}
		seen[stated.Shelf] = true
	}
	a.none(ruleShelves, faults)
	var misplaced []string
	for i := range a.s.Cart.Shelves {
		a.holds(&a.s.Cart.Shelves[i])
		misplaced = append(misplaced, a.setDown(&a.s.Cart.Shelves[i])...)
	}
	a.none(ruleSetDown, misplaced)
	a.allStand()
}

// allStand checks whether as many modules of each battery stand as the core has.
func (a *auditor) allStand() {
	for _, part := range a.modulesNamed() {
		needed, standing := 0.0, 0.0
		for _, b := range a.strings {
			if b.ID == part {
				needed += b.modules()
			}
		}
		for _, sh := range a.p.Shelves {
			for _, m := range sh.Batteries {
				if m.Part == part {
					standing += float64(m.Modules)
				}
			}
		}
		a.exactly(ruleStands, standing, needed, part)
	}
}

// modulesNamed returns the batteries of core and shelves, each once.
func (a *auditor) modulesNamed() (parts []string) {
	seen := map[string]bool{}
	add := func(part string) {
		if !seen[part] {
			seen[part] = true
			parts = append(parts, part)
		}
	}
	for _, b := range a.strings {
		add(b.ID)
	}
	for _, sh := range a.p.Shelves {
		for _, m := range sh.Batteries {
			add(m.Part)
		}
	}
	return parts
}

// holds checks whether a shelf holds what stands on it: by height, by floor and by mass.
func (a *auditor) holds(sh *scenarios.Shelf) {
	taken, mass := 0.0, 0.0
	for _, stated := range a.p.Shelves {
		for _, m := range stated.Batteries {
			b := a.stock.batteries[m.Part]
			if b == nil || m.Modules == 0 || stated.Shelf != sh.Name {
				continue
			}
			a.atMost(ruleShelfHeight, b.HeightM, sh.ClearHeightM, b.ID+" on "+sh.Name)
			taken += columnsM(sh, b, float64(m.Modules))
			mass += float64(m.Modules) * b.MassKg
		}
	}
	a.limited(ruleShelfRoom, plan.LimitShelfRoom+sh.Name, taken/(sh.LengthM+sh.GapM), 1, false, sh.Name)
	if bears := a.bearsKg(sh); !math.IsInf(bears, 1) {
		a.limited(ruleShelfMass, plan.LimitShelfMass+sh.Name, mass, bears, false, sh.Name)
	}
}

// columnsM returns how much of a shelf's length some modules of one kind take, gaps included, turned the way
// that takes least; infinite where not even one stands across its depth.
//
//	ceil(n / (rows · layers)) · (length + gap)      plane geometry
func columnsM(sh *scenarios.Shelf, b *catalog.Battery, modules float64) float64 {
	least := math.Inf(1)
	for _, turned := range [][2]float64{{b.LengthM, b.WidthM}, {b.WidthM, b.LengthM}} {
		along, across := turned[0], turned[1]
		rows := plan.Floor((sh.DepthM + sh.GapM) / (across + sh.GapM))
		if rows < 1 || along <= 0 || across <= 0 {
			continue
		}
		least = math.Min(least, math.Ceil(modules/(rows*layersOf(sh, b)))*(along+sh.GapM))
	}
	return least
}

// layersOf returns how many modules of a kind may be stacked on a shelf, at least one: a module that is too tall fails
// the check of its height.
func layersOf(sh *scenarios.Shelf, b *catalog.Battery) float64 {
	return math.Max(1, math.Min(float64(sh.Stack), plan.Floor(sh.ClearHeightM/b.HeightM)))
}

// figuresOfShelves checks whether the stated mass on each shelf is true.
func (a *auditor) figuresOfShelves() {
	for _, sh := range a.p.Shelves {
		mass := 0.0
		for _, m := range sh.Batteries {
			if a.stock.has(m.Part, catalog.KindBattery) {
				mass += float64(m.Modules) * a.stock.masses[m.Part]
			}
		}
		a.truly(ruleShelfFigures, sh.MassKg, mass, sh.Shelf)
	}
}
