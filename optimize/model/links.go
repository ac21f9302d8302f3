package model

import (
	"fmt"
	"math"

	"cartwright/optimize/bench"
	"cartwright/optimize/milp"
)

// In the program of a whole catalogue very many rows share the same long sums: the fault current of a bus, its
// conductance, what the inverters draw. Written out in each row, the program would grow with the square of the number of
// parts, so such a sum becomes a variable of its own. In a single core the sums are short and are written out.

// shortSum is the most terms of a sum that is written out.
const shortSum = 2

// linked returns a sum between 0 and most as a variable of its own, as a share of most so that its row is scaled like
// others; in a single core, or where it is short, the sum itself.
func (p *program) linked(name string, e milp.Expr, most float64) milp.Expr {
	if p.fixed() || e.Len() <= shortSum || !(most > 0) {
		return e
	}
	v := p.Model.Continuous(name, 0, 1)
	var row milp.Expr
	row.AddExpr(1/most, e)
	row.Add(-1, v)
	p.Model.Row("sum: "+name, row, milp.Equal, 0)
	return milp.Sum(milp.T(most, v))
}

// bus is the strings of the space that may share one bus.
type bus struct {
	strings              []int     // indices into the space's strings
	fault                milp.Expr // prospective fault current, A
	conduct              milp.Expr // S
	leastA, mostA, mostS float64   // bounds of fault current and conductance
}

// layBuses sorts the strings of the space by the bus they may share. A plan has only one of these buses.
func (p *program) layBuses() {
	at := map[int]int{} // group -> bus
	for i, r := range p.Space.strings {
		g, known := at[p.Bench.Stacks[r.stack].Group]
		if !known {
			g = len(p.buses)
			at[p.Bench.Stacks[r.stack].Group] = g
			p.buses = append(p.buses, &bus{})
		}
		b, k := p.buses[g], p.stack(i)
		b.strings = append(b.strings, i)
		b.fault.Add(k.ShortA, p.strings[i])
		b.conduct.Add(k.Conductance, p.strings[i])
		b.leastA += float64(r.lo) * k.ShortA
		b.mostA += float64(r.hi) * k.ShortA
		b.mostS += float64(r.hi) * k.Conductance
		p.busOf = append(p.busOf, b)
	}
	for g, b := range p.buses {
		b.fault = p.linked("fault current of bus "+number(g), b.fault, b.mostA)
		b.conduct = p.linked("conductance of bus "+number(g), b.conduct, b.mostS)
	}
}

// fault returns the least and the most that the prospective fault current of the bus can be.
func (p *program) fault() (least, most float64) {
	for _, b := range p.buses {
		least += b.leastA // strings that are always there are all on one bus
		most = math.Max(most, b.mostA)
	}
	return least, most
}

// wholeFault returns the prospective fault current of whichever bus is built.
func (p *program) wholeFault() milp.Expr {
	var e milp.Expr
	for _, b := range p.buses {
		e.AddExpr(1, b.fault)
	}
	_, most := p.fault()
	return p.linked("fault current", e, most)
}

// layCurrents sorts the supplies of the space by their bus current.
func (p *program) layCurrents() {
	at := map[float64]int{}
	for i, supply := range p.Space.supplies {
		busA := p.Bench.Supplies[supply].BusA
		k, known := at[busA]
		if !known {
			k = len(p.byCurrent)
			at[busA] = k
			p.byCurrent = append(p.byCurrent, nil)
		}
		p.byCurrent[k] = append(p.byCurrent[k], i)
	}
}

// busA returns the bus current that some supplies have in common.
func (p *program) busA(alike []int) float64 {
	return p.Bench.Supplies[p.Space.supplies[alike[0]]].BusA
}

// anyOf returns an expression that is 1 if the supply is one of some, else 0.
func (p *program) anyOf(supplies []int) milp.Expr {
	key := fmt.Sprint(supplies)
	e, known := p.oneOf[key]
	if !known {
		for _, i := range supplies {
			e.Add(1, p.supply[i])
		}
		e = p.linked("supply is one of "+number(len(p.oneOf)), e, 1)
		p.oneOf[key] = e
	}
	return e
}

// drawn returns a current of the chosen supply, and the most it can be.
func (p *program) drawn(name string, asked func(v *bench.Supply) float64) (e milp.Expr, most float64) {
	most = p.largestSupply(asked)
	return p.linked(name, p.bySupply(asked), most), most
}
