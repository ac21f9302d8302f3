// Package scenarios reads what a person wants of a cart: a folder with a scenario.yaml, and a load profile
// loads.csv where the loads were measured.
//
// Quantities are text with a unit ("450 lb", "18 h"), converted here once: past this package everything
// is in SI units and money is in whole cents. Reading is strict. An unknown key, a bare number where a
// unit is needed or a value out of range is a mistake; all are reported at once as file:line:column with
// what would be right. What can be known only with a catalogue at hand is reported by Check.
//
// Of YAML the package reads mappings, lists and single values; anchors, aliases, merge keys, tags and
// further documents are refused. Reading goes text -> yaml.go and tree.go (nodes with their places) -> section.go and
// values.go (one key, checked) -> read.go, loads.go, cart.go, runs.go, owning.go (the sections). The
// places of all values stay with the scenario, see Scenario.Pos.
package scenarios
