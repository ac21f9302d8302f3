// Package harness lists the cables of a plan one by one: the tag each carries on the drawing, on its label
// and in the cut list, where it goes, and the pieces it is cut from. It decides nothing; all of it follows
// from the plan's runs.
package harness

import (
	"fmt"

	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// Piece is one length of conductor that is cut and gets a crimped end on each side.
type Piece struct {
	Name    string // "+", "L1", "PE"; of parallel sets "+ a" and "+ b"
	Cable   string // part
	LengthM float64
	Ground  bool
}

// Cable is one path: everything between two places, with one tag.
type Cable struct {
	Tag      string
	Run      *plan.Run
	From, To string
	Pieces   []Piece
}

// letterOf returns the first letter of the tags of a kind of run.
func letterOf(run string) string {
	switch run {
	case "string":
		return "S"
	case "main":
		return "M"
	case "feeder":
		return "F"
	case "branch":
		return "B"
	case "dc":
		return "D"
	case "inlet":
		return "I"
	case "solar":
		return "P"
	case "bond":
		return "G"
	}
	return "X"
}

// Of returns the cables of a plan in the order of its runs.
func Of(s *scenarios.Scenario, p *plan.Plan) []Cable {
	var list []Cable
	count := map[string]int{}
	for i := range p.Runs {
		r := &p.Runs[i]
		for range max(r.Count, 1) {
			letter := letterOf(r.Run)
			count[letter]++
			n := count[letter]
			c := Cable{Tag: fmt.Sprint(letter, n), Run: r}
			c.From, c.To = ends(r, n)
			c.Pieces = pieces(s, r)
			list = append(list, c)
		}
	}
	return list
}

// Tags returns the tags of each run, in order.
func Tags(s *scenarios.Scenario, p *plan.Plan) [][]string {
	tags := make([][]string, len(p.Runs))
	for _, c := range Of(s, p) {
		for i := range p.Runs {
			if &p.Runs[i] == c.Run {
				tags[i] = append(tags[i], c.Tag)
			}
		}
	}
	return tags
}

// Span returns the tags of a run in words: "S1", or "S1 to S4".
func Span(tags []string) string {
	switch len(tags) {
	case 0:
		return ""
	case 1:
		return tags[0]
	case 2:
		return tags[0] + ", " + tags[1]
	}
	return tags[0] + " to " + tags[len(tags)-1]
}

// ends returns what the nth cable of its kind joins.
func ends(r *plan.Run, n int) (from, to string) {
	switch r.Run {
	case "string":
		return fmt.Sprintf("battery string %d, %s", n, r.Battery), "DC bus bars"
	case "main":
		return "DC bus bars", fmt.Sprintf("inverter %d", n)
	case "feeder":
		return fmt.Sprintf("inverter %d", n), "load centre"
	case "branch":
		return "load centre", r.Name
	case "dc":
		return "DC bus bars", r.Name
	case "inlet":
		return "inlet", "inverter's charger"
	case "solar":
		return fmt.Sprintf("solar modules, input %d", n), "inverter's solar input"
	case "bond":
		return "DC negative", "frame"
	}
	return r.Run, r.Name
}

// pieces returns the conductors of one path of a run.
func pieces(s *scenarios.Scenario, r *plan.Run) []Piece {
	length := r.LengthM
	if r.BoughtM > 0 {
		length = r.BoughtM
	}
	var list []Piece
	for set := range max(r.Sets, 1) {
		for _, name := range names(s, r) {
			if r.Cable == "" {
				break // a bond is a grounding conductor alone
			}
			if r.Sets > 1 {
				name += " " + string(rune('a'+set))
			}
			list = append(list, Piece{Name: name, Cable: r.Cable, LengthM: length})
		}
	}
	for k := range r.Links {
		list = append(list, Piece{Name: fmt.Sprint("link ", k+1), Cable: r.Cable, LengthM: r.LinkM})
	}
	if r.Ground != "" {
		list = append(list, Piece{Name: Ground(s), Cable: r.Ground, LengthM: length, Ground: true})
	}
	return list
}

// Ground returns the mark of a grounding conductor: PE in IEC 60445, G in the trade under nec.
func Ground(s *scenarios.Scenario) string {
	if s.Rules == scenarios.IEC {
		return "PE"
	}
	return "G"
}

// names returns the marks of one set's conductors.
func names(s *scenarios.Scenario, r *plan.Run) []string {
	switch {
	case r.Run == "bond":
		return []string{Ground(s)}
	case r.Run == "string" || r.Run == "main" || r.Run == "dc" || r.Run == "solar":
		return []string{"+", "-"}[:min(2, max(1, r.Conductors))]
	case r.Conductors == 3:
		return []string{"L1", "L2", "N"}
	case r.Run == "branch" && voltsOf(s, r.Name) == 240:
		return []string{"L1", "L2"}
	}
	return []string{"L", "N"}[:min(2, max(1, r.Conductors))]
}

func voltsOf(s *scenarios.Scenario, circuit string) float64 {
	for i := range s.Circuits {
		if s.Circuits[i].Name == circuit {
			return s.Circuits[i].Volts
		}
	}
	return 0
}
