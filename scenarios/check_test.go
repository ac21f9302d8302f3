package scenarios_test

import (
	"testing"

	"cartwright/catalog"
)

// parts is a catalogue of two parts and two roles.
var parts = &catalog.Catalog{
	Batteries: []catalog.Battery{{Part: catalog.Part{ID: "lfp-rack-5"}}},
	Cables:    []catalog.Cable{{Part: catalog.Part{ID: "flex-2-0"}}},
	Sundries:  []catalog.Sundry{{Role: "shunt"}, {Role: "receptacle"}, {Role: "shunt"}},
}

func TestCheck(t *testing.T) {
	for _, tt := range []struct{ name, text, want string }{
		{"all known", "have: [{part: lfp-rack-5, count: 1}, {part: flex-2-0, count: 12 ft}]\nneeds: [{role: shunt}]", ""},
		{"part misspelt", "have: [{part: lfp-rak-5, count: 1}]", `cart/scenario.yaml:14:15: the catalogue has no part "lfp-rak-5"; did you mean "lfp-rack-5"?`},
		{"part unknown", "have: [{part: zzz, count: 1}]", `cart/scenario.yaml:14:15: the catalogue has no part "zzz"; add it to the catalogue, or name one that is there`},
		{"cable by piece", "have:\n  - part: flex-2-0\n    count: 12", `cart/scenario.yaml:16:12: cable "flex-2-0" is counted by length; write a length, for example count: "12 ft"`},
		{"battery by length", "have: [{part: lfp-rack-5, count: 2 m}]", `cart/scenario.yaml:14:34: battery "lfp-rack-5" is counted by piece; write a whole number, for example count: 2`},
		{"ends of a battery", "have: [{part: lfp-rack-5, count: 2, ends: 4}]", `cart/scenario.yaml:14:43: battery "lfp-rack-5" has no crimped ends; leave ends out; only cable and conduit have them`},
		{"ends of a cable", "have: [{part: flex-2-0, count: 2 m, ends: 4}]", ""},
		{"role misspelt, role unknown", "needs: [{role: shnut}]\ncircuits: [{name: a, volts: 120 V, length: 3 ft, device: 20 A, receptacle: {role: zzz}}]",
			`cart/scenario.yaml:14:16: the catalogue has no role "shnut"; did you mean "shunt"?
cart/scenario.yaml:15:83: the catalogue has no role "zzz"; the roles there are receptacle, shunt`},
	} {
		t.Run(tt.name, func(t *testing.T) {
			s, err := openText(changed(t, "", tt.text))
			if err != nil {
				t.Fatal(err)
			}
			if err = s.Check(parts); tt.want != "" || err != nil {
				expect(t, err, tt.want)
			}
		})
	}
}
