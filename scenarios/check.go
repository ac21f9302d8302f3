package scenarios

import (
	"fmt"
	"sort"
	"strings"

	"cartwright/catalog"
	"cartwright/catalog/problem"
)

// Check compares what the scenario names with what the catalogue holds: owned parts that no row has,
// owned cable not counted by length and other parts not counted by piece, and roles of needs and
// receptacles that no sundry plays. The error holds every mistake with its place.
func (s *Scenario) Check(c *catalog.Catalog) error {
	var list problem.List
	ids := c.IDs()
	for i, h := range s.Have {
		path := fmt.Sprintf("have[%d].", i)
		e, known := c.Find(h.PartID)
		switch {
		case !known:
			s.unknown(&list, path+"part", "part", h.PartID, ids)
		case e.Kind == catalog.KindCable && !h.ByLength:
			list.Add(s.Pos(path+"count"), fmt.Sprintf("cable %q is counted by length", h.PartID),
				`write a length, for example count: "12 ft"`)
		case e.Kind != catalog.KindCable && h.ByLength:
			list.Add(s.Pos(path+"count"), fmt.Sprintf("%s %q is counted by piece", e.Kind, h.PartID),
				"write a whole number, for example count: 2")
		}
		if known && e.Kind != catalog.KindCable && h.Ends > 0 {
			list.Add(s.Pos(path+"ends"), fmt.Sprintf("%s %q has no crimped ends", e.Kind, h.PartID), "leave ends out; only cable has them")
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
	return list.Err()
}

// unknown tells of a name that the catalogue does not have.
func (s *Scenario) unknown(list *problem.List, path, what, name string, known []string) {
	right := "add it to the catalogue, or name one that is there"
	if near := problem.Nearest(name, known); near != "" {
		right = fmt.Sprintf("did you mean %q?", near)
	} else if what == "role" && len(known) > 0 {
		right = "the roles there are " + strings.Join(known, ", ")
	}
	list.Add(s.Pos(path), fmt.Sprintf("the catalogue has no %s %q", what, name), right)
}

// rolesOf returns the roles that sundries of the catalogue play, sorted, each once.
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
