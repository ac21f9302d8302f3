package audit

import "cartwright/catalog"

// stock finds the catalogue's parts by id and kind, its offers by part.
type stock struct {
	kinds     map[string]catalog.Kind
	masses    map[string]float64       // kg of one; of what is bought by length, of a metre
	metres    map[string]float64       // of what is bought by length, cents of a metre
	ends      map[string]catalog.Cents // of what has ends, the price of one
	batteries map[string]*catalog.Battery
	inverters map[string]*catalog.Inverter
	cables    map[string]*catalog.Cable
	devices   map[string]*catalog.Device
	busbars   map[string]*catalog.Busbar
	casters   map[string]*catalog.Casters
	sundries  map[string]*catalog.Sundry
	solar     map[string]*catalog.Solar
	conduits  map[string]*catalog.Conduit
	sections  map[string]*catalog.Section
	parts     map[string]*catalog.Part
	offers    map[string][]catalog.Offer
}

func stockOf(c *catalog.Catalog) *stock {
	s := &stock{
		kinds:     map[string]catalog.Kind{},
		masses:    map[string]float64{},
		metres:    map[string]float64{},
		ends:      map[string]catalog.Cents{},
		batteries: byID(c.Batteries, func(b *catalog.Battery) string { return b.ID }),
		inverters: byID(c.Inverters, func(i *catalog.Inverter) string { return i.ID }),
		cables:    byID(c.Cables, func(g *catalog.Cable) string { return g.ID }),
		devices:   byID(c.Devices, func(d *catalog.Device) string { return d.ID }),
		busbars:   byID(c.Busbars, func(b *catalog.Busbar) string { return b.ID }),
		casters:   byID(c.Casters, func(w *catalog.Casters) string { return w.ID }),
		sundries:  byID(c.Sundries, func(x *catalog.Sundry) string { return x.ID }),
		solar:     byID(c.Solar, func(x *catalog.Solar) string { return x.ID }),
		conduits:  byID(c.Conduits, func(x *catalog.Conduit) string { return x.ID }),
		sections:  byID(c.Sections, func(x *catalog.Section) string { return x.ID }),
		parts:     map[string]*catalog.Part{},
		offers:    map[string][]catalog.Offer{},
	}
	for _, e := range c.All() {
		s.kinds[e.ID], s.masses[e.ID], s.parts[e.ID] = e.Kind, e.MassKg, e.Part
	}
	for id, x := range s.cables {
		s.masses[id], s.metres[id], s.ends[id] = x.KgPerM, x.CentsPerM, x.EndPrice
	}
	for id, x := range s.conduits {
		s.masses[id], s.metres[id], s.ends[id] = x.KgPerM, x.CentsPerM, x.EndPrice
	}
	for id, x := range s.sections {
		s.masses[id], s.metres[id] = x.KgPerM, x.CentsPerM
	}
	for _, o := range c.Offers {
		s.offers[o.PartID] = append(s.offers[o.PartID], o)
	}
	return s
}

// byID indexes parts of one kind.
func byID[P any](parts []P, id func(*P) string) map[string]*P {
	found := make(map[string]*P, len(parts))
	for i := range parts {
		found[id(&parts[i])] = &parts[i]
	}
	return found
}

// has reports whether the catalogue has a part of a kind.
func (s *stock) has(id string, kind catalog.Kind) bool { return s.kinds[id] == kind && kind != "" }

// byLength reports whether a part is bought by the metre.
func (s *stock) byLength(id string) bool {
	_, ok := s.metres[id]
	return ok
}
