package optimize_test

import (
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// Adding a part never raises the best cost. But for a receptacle of just the rating that a circuit asks
// for, with which larger ones no longer will do: none of those is added.
func TestLawAddingAPart(t *testing.T) {
	law(t, 6, func(t *testing.T, d dice, p func() question.Problem) {
		more := p()
		c := more.Catalog
		what := pick(d, "battery", "inverter", "cable", "device", "busbar", "casters", "sundry")
		switch what {
		case "battery":
			c.Batteries = append(c.Batteries, c.Batteries[0])
			b := &c.Batteries[len(c.Batteries)-1]
			b.ID, b.Price, b.MassKg, b.Group = "new", b.Price*3/4, b.MassKg*1.1, pick(d, "", "red", "blue")
			b.MaxDischargeA *= pick(d, 0.5, 1.5)
		case "inverter":
			c.Inverters = append(c.Inverters, c.Inverters[0])
			v := &c.Inverters[len(c.Inverters)-1]
			v.ID, v.Price, v.ContinuousW, v.IdleW = "new", v.Price*3/4, v.ContinuousW*pick(d, 0.75, 1.5), v.IdleW/2
			v.LegW = v.ContinuousW / 2
		case "cable":
			c.Cables = append(c.Cables, c.Cables[0])
			k := &c.Cables[len(c.Cables)-1]
			k.ID, k.CentsPerM, k.KgPerM = "new", k.CentsPerM*pick(d, 0.5, 1.5), k.KgPerM*0.9
		case "device":
			c.Devices = append(c.Devices, c.Devices[0])
			v := &c.Devices[len(c.Devices)-1]
			v.ID, v.Price, v.InterruptingDCA = "new", v.Price*catalog.Cents(d.from(1, 3))/2, v.InterruptingDCA*pick(d, 0.5, 2)
		case "busbar":
			c.Busbars = append(c.Busbars, catalog.Busbar{Part: catalog.Part{ID: "new", Name: "New", Price: d.cents(5, 60), MassKg: 1}, RatingA: 100, Studs: 5})
		case "casters":
			c.Casters = append(c.Casters, catalog.Casters{Part: catalog.Part{ID: "new", Name: "New", Price: d.cents(5, 90), MassKg: 3}, SetOf: 4, RatingKg: 60})
		case "sundry":
			c.Sundries = append(c.Sundries, catalog.Sundry{Part: catalog.Part{ID: "new", Name: "New", Price: d.cents(5, 60), MassKg: 1},
				Role: pick(d, "load-centre", "receptacle"), RatingA: pick(d, 30.0, 60), Spaces: pick(d, 0, 1, 4)})
		}
		notDearer(t, p(), more, "one more "+what)
	})
}

// Owning more never raises the best cost, nor does keeping less of it on the cart.
func TestLawOwningMore(t *testing.T) {
	law(t, 7, func(t *testing.T, d dice, p func() question.Problem) {
		more := p()
		s := more.Scenario
		if len(s.Have) > 0 && d.chance(50) {
			h := &s.Have[d.IntN(len(s.Have))]
			h.Count++
			h.Keep = false // which would ask for one more on the cart
			notDearer(t, p(), more, "one more of what is owned")
			return
		}
		all := more.Catalog.All()
		e := all[d.IntN(len(all))]
		for _, h := range s.Have {
			if h.PartID == e.ID {
				return
			}
		}
		h := scenarios.Holding{PartID: e.ID, Count: 1, ByLength: e.Kind == catalog.KindCable}
		if d.chance(30) {
			sell := e.Price / 2
			h.Sell = &sell
		}
		s.Have = append(s.Have, h)
		notDearer(t, p(), more, "owning a "+e.ID)
	})
}
