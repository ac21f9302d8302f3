package optimize_test

import (
	"fmt"
	"math"
	"math/rand/v2"

	"cartwright/catalog"
	"cartwright/optimize/question"
)

// family is a kind of large catalogue: what makes its choice hard.
type family struct {
	name, hard string
	change     func(g *generator, p *question.Problem)
}

// families are what catalogues of thousands of batteries are drawn from. The parts of all are those of Generated.
var families = []family{
	{"scattered", "a third in parallel groups of four, prices as they come", func(*generator, *question.Problem) {}},
	{"one group", "every battery of the bus voltage may share a bus with every other", func(_ *generator, p *question.Problem) {
		for i := range p.Catalog.Batteries {
			if b := &p.Catalog.Batteries[i]; b.NominalV == 51.2 {
				b.Group = "all"
			}
		}
	}},
	{"groups of thirty", "many parallel groups, each with a choice of its own", func(_ *generator, p *question.Problem) {
		for i := range p.Catalog.Batteries {
			if b := &p.Catalog.Batteries[i]; b.NominalV == 51.2 {
				b.Group = fmt.Sprintf("thirty-%d", i/30)
			}
		}
	}},
	{"clustered", "one group, and prices that are all but the same for a kWh", func(g *generator, p *question.Problem) {
		for i := range p.Catalog.Batteries {
			b := &p.Catalog.Batteries[i]
			if b.NominalV != 51.2 {
				continue
			}
			b.Group = "all"
			each := 195 + float64(g.IntN(5)) // currency units for a usable kWh
			usable := b.CapacityWh / 1000 * b.UsableFraction * math.Sqrt(b.RoundTrip)
			b.Price = catalog.CentsFrom(math.Round(each * usable))
		}
	}},
	{"noisy", "one group; mass, current and price hang together loosely, so that little is beaten in every way", func(g *generator, p *question.Problem) {
		for i := range p.Catalog.Batteries {
			b := &p.Catalog.Batteries[i]
			if b.NominalV != 51.2 {
				continue
			}
			b.Group = "all"
			b.Price = catalog.CentsFrom(math.Round(b.Price.Units() * g.between(0.7, 1.4)))
			b.MassKg = math.Round(b.MassKg*g.between(0.7, 1.3)*10) / 10
		}
	}},
}

// Family returns a problem of a family, of so many batteries, inverters and caster sets. The same numbers give the same
// problem for ever.
func Family(f *family, batteries, inverters, casters int) question.Problem {
	const stream = 0xfa71
	p := Generated(batteries, inverters, casters)
	f.change(&generator{Rand: rand.New(rand.NewPCG(uint64(batteries), stream))}, &p)
	p.Scenario.Name = fmt.Sprintf("%s %d", f.name, batteries)
	return p
}
