package compare

import (
	"slices"

	"cartwright/catalog"
	"cartwright/optimize/energy/array"
	"cartwright/scenarios"
)

// pinModules requires exactly the solar modules of a choice: those named with the owned ones of their kind or, where none
// are named, the owned ones. The share of the year served is then an outcome, like the autonomy. Where there are none, or
// several kinds, the array is chosen at least cost to serve what limits.served asks for.
func pinModules(s *scenarios.Scenario, c *catalog.Catalog, owned map[string]float64, buy []Line, stand map[string]float64) {
	named := map[string]float64{}
	for _, l := range buy {
		if e, _ := c.Find(l.Part); e.Kind == catalog.KindSolar {
			named[l.Part] += float64(l.Count)
		}
	}
	var kinds []*catalog.Solar
	for i := range c.Solar {
		id := c.Solar[i].ID
		if named[id] > 0 || len(named) == 0 && owned[id] > 0 {
			kinds = append(kinds, &c.Solar[i])
		}
	}
	if s.Sun == nil || len(kinds) != 1 {
		return
	}
	m := *kinds[0]
	n := int(owned[m.ID] + named[m.ID])
	stand[m.ID] = float64(n)
	if array.Room(s.Sun, &m) >= n {
		place := *s.Sun
		place.Room, place.Most = nil, n
		s.Sun = &place
	}
	s.Limits.Served = 0
	c.Solar = slices.DeleteFunc(c.Solar, func(x catalog.Solar) bool { return x.ID != m.ID })
}
