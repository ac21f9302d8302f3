package harness

import (
	"reflect"
	"testing"

	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

func runs() (*scenarios.Scenario, *plan.Plan) {
	s := &scenarios.Scenario{Rules: scenarios.NEC, Circuits: []scenarios.Circuit{{Name: "pump", Volts: 240}, {Name: "lamps", Volts: 120}}}
	p := &plan.Plan{Runs: []plan.Run{
		{Run: "string", Battery: "slab", Cable: "w", Count: 2, Sets: 1, Conductors: 2, LengthM: 1, Links: 1, LinkM: 0.3},
		{Run: "main", Cable: "w", Count: 1, Sets: 2, Conductors: 2, LengthM: 1.5},
		{Run: "branch", Name: "pump", Cable: "t", Ground: "g", Count: 1, Sets: 1, Conductors: 2, LengthM: 3, BoughtM: 3.5},
		{Run: "branch", Name: "lamps", Cable: "t", Ground: "g", Count: 1, Sets: 1, Conductors: 2, LengthM: 3},
		{Run: "bond", Ground: "g", Count: 1, Sets: 1, LengthM: 1},
	}}
	return s, p
}

func TestEveryCableHasItsTagAndPieces(t *testing.T) {
	s, p := runs()
	type told struct {
		tag, to string
		pieces  []string
	}
	var got []told
	for _, c := range Of(s, p) {
		x := told{c.Tag, c.To, nil}
		for _, piece := range c.Pieces {
			x.pieces = append(x.pieces, piece.Name)
		}
		got = append(got, x)
	}
	want := []told{
		{"S1", "DC bus bars", []string{"+", "-", "link 1"}},
		{"S2", "DC bus bars", []string{"+", "-", "link 1"}},
		{"M1", "inverter 1", []string{"+ a", "- a", "+ b", "- b"}},
		{"B1", "pump", []string{"L1", "L2", "G"}},
		{"B2", "lamps", []string{"L", "N", "G"}},
		{"G1", "frame", []string{"G"}},
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("%v\nwant %v", got, want)
	}
	if tags := Tags(s, p); Span(tags[0]) != "S1, S2" || Span(tags[3]) != "B2" || Span([]string{"S1", "S2", "S3"}) != "S1 to S3" {
		t.Errorf("tags %v", tags)
	}
}

func TestCutsAddUpToWhatIsBought(t *testing.T) {
	s, p := runs()
	cuts := Cuts(Of(s, p))
	length := map[string]float64{}
	count := map[string]int{}
	for _, c := range cuts {
		length[c.Of] += c.LengthM * float64(c.Count)
		count[c.Of] += c.Count
		if len(c.For) != c.Count {
			t.Errorf("%+v: a piece has no place", c)
		}
	}
	// Two strings of two conductors of 1 m and a link of 0.3 m; a main of two sets of two of 1.5 m.
	if got, want := length["w"], 2*(2*1+0.3)+4*1.5; got != want {
		t.Errorf("%v m of w, want %v m", got, want)
	}
	if count["w"] != 10 || count["t"] != 4 || count["g"] != 3 {
		t.Errorf("pieces %v", count)
	}
}
