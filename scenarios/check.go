package scenarios

import (
	"fmt"
	"slices"
	"sort"
	"strings"

	"cartwright/catalog"
	"cartwright/catalog/problem"
)

// Check compares what the scenario names with what the catalogue holds: owned parts that are in no row, parts
// bought by length not counted by length and others not counted by piece, roles of needs and receptacles that no
// sundry has, sections and types of conduit that are not there. The error holds every mistake with its place.
func (s *Scenario) Check(c *catalog.Catalog) error {
	var list problem.List
	ids := c.IDs()
	for i, h := range s.Have {
		path := fmt.Sprintf("have[%d].", i)
		e, known := c.Find(h.PartID)
		switch {
		case !known:
			s.unknown(&list, path+"part", "part", h.PartID, ids)
		case e.Kind.ByLength() && !h.ByLength:
			list.Add(s.Pos(path+"count"), fmt.Sprintf("%s %q is counted by length", e.Kind, h.PartID),
				`write a length, for example count: "12 ft"`)
		case !e.Kind.ByLength() && h.ByLength:
			list.Add(s.Pos(path+"count"), fmt.Sprintf("%s %q is counted by piece", e.Kind, h.PartID),
				"write a whole number, for example count: 2")
		}
		if known && e.Kind != catalog.KindCable && e.Kind != catalog.KindConduit && h.Ends > 0 {
			list.Add(s.Pos(path+"ends"), fmt.Sprintf("%s %q has no crimped ends", e.Kind, h.PartID), "leave ends out; only cable and conduit have them")
		}
	}
	roles := rolesOf(c)
	for i, n := range s.Needs {
		if !contains(roles, n.Role) {
			s.unknown(&list, fmt.Sprintf("needs[%d].role", i), "role", n.Role, roles)
		}
	}
	for i, circuit := range s.Circuits {
		if r := circuit.Receptacle; r != nil && !contains(roles, r.Role) {
			s.unknown(&list, fmt.Sprintf("circuits[%d].receptacle.role", i), "role", r.Role, roles)
		}
	}
	s.checkStock(c, &list)
	s.checkConduits(c, &list)
	return list.Err()
}

// checkStock reports pieces and rails of a section that is not there, and rails of ply or of what is not steel.
func (s *Scenario) checkStock(c *catalog.Catalog, list *problem.List) {
	var ids []string
	for _, x := range c.Sections {
		ids = append(ids, x.ID)
	}
	find := func(id, path string) *catalog.Section {
		i := slices.Index(ids, id)
		if i < 0 {
			s.unknown(list, path, "section", id, ids)
			return nil
		}
		return &c.Sections[i]
	}
	for i, p := range s.Cart.Pieces {
		find(p.Section, fmt.Sprintf("cart.frame.pieces[%d].section", i))
	}
	for i, shelf := range s.Cart.Shelves {
		if shelf.Rails == nil {
			continue
		}
		path := fmt.Sprintf("cart.shelves[%d].rails.section", i)
		switch x := find(shelf.Rails.Section, path); {
		case x == nil:
		case x.Shape == catalog.Ply:
			list.Add(s.Pos(path), fmt.Sprintf("%q is ply, which cannot be a rail", x.ID), "name a square tube, a flat or an angle of steel")
		case !x.OfSteel():
			list.Add(s.Pos(path), fmt.Sprintf("%q does not weigh as much as steel of its sides, and rails are calculated for steel", x.ID),
				"name a section of steel, or state max_mass instead of rails")
		}
	}
}

// checkConduits reports runs and circuits in a type of conduit that is not there and, under the iec rules, cables
// whose outer diameter is needed for conduit and not stated.
func (s *Scenario) checkConduits(c *catalog.Catalog, list *problem.List) {
	var types []string
	for _, x := range c.Conduits {
		if !contains(types, x.Type) {
			types = append(types, x.Type)
		}
	}
	sort.Strings(types)
	needed := ""
	check := func(path, name string) {
		if name == "" {
			return
		}
		if !contains(types, name) {
			s.unknown(list, path, "conduit of type", name, types)
			return
		}
		needed = path
	}
	for i, r := range s.Runs {
		check(fmt.Sprintf("runs[%d].conduit", i), r.Conduit)
	}
	for i, x := range s.Circuits {
		check(fmt.Sprintf("circuits[%d].conduit", i), x.Conduit)
	}
	if s.Rules != IEC || needed == "" {
		return
	}
	for _, x := range c.Cables {
		if x.OuterM == 0 && x.Material == "copper" && x.Size.Metric() {
			list.Add(x.Pos, fmt.Sprintf("cable %q states no outer diameter, which %s needs", x.ID, needed), "fill outer_mm")
		}
	}
}

// unknown reports a name that the catalogue does not have.
func (s *Scenario) unknown(list *problem.List, path, what, name string, known []string) {
	right := "add it to the catalogue, or name one that is there"
	if near := problem.Nearest(name, known); near != "" {
		right = fmt.Sprintf("did you mean %q?", near)
	} else if what == "role" && len(known) > 0 {
		right = "the roles there are " + strings.Join(known, ", ")
	} else if what == "conduit of type" && len(known) > 0 {
		right = "the types there are " + strings.Join(known, ", ")
	}
	list.Add(s.Pos(path), fmt.Sprintf("the catalogue has no %s %q", what, name), right)
}

// rolesOf returns the roles of the catalogue's sundries, sorted, each once.
func rolesOf(c *catalog.Catalog) []string {
	var roles []string
	for i := range c.Sundries {
		if r := c.Sundries[i].Role; !contains(roles, r) {
			roles = append(roles, r)
		}
	}
	sort.Strings(roles)
	return roles
}
