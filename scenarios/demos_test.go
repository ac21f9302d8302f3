package scenarios_test

import (
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"cartwright/catalog"
	"cartwright/scenarios"
)

func TestDemoNames(t *testing.T) {
	want := []string{"cider-shed", "goat-dairy", "lantern-market", "star-party"}
	if got := scenarios.DemoNames(); !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
}

// Every demo reads, names only parts of the catalogue that comes with the program, and tells its story.
func TestDemos(t *testing.T) {
	for _, name := range scenarios.DemoNames() {
		t.Run(name, func(t *testing.T) {
			s, err := scenarios.Demo(name)
			if err != nil {
				t.Fatal(err)
			}
			if err := s.Check(catalog.Embedded()); err != nil {
				t.Error(err)
			}
			if len(s.Warnings) > 0 {
				t.Errorf("the demo is doubted: %v", s.Warnings)
			}
			for _, l := range s.Loads {
				if l.Circuit == "" && l.Name != "transfer pump" && l.Name != "ice chest" { // those the program puts on one
					t.Errorf("%s is on no circuit", l.Name)
				}
			}
			if s.File != name+"/scenario.yaml" || s.Dir != "" || s.CatalogDir != "" {
				t.Errorf("file %q, folder %q, catalogue %q", s.File, s.Dir, s.CatalogDir)
			}
			if s.Sun == nil && (len(s.Cart.Shelves) < 2 || len(s.Runs) < 4 || len(s.Circuits) < 3 || len(s.Needs) < 3 || len(s.Have) < 3 || s.Tax == 0) {
				t.Errorf("the demo leaves out much that it should show: %+v", s)
			}
			for _, role := range []string{"shunt", "disconnect", "load-centre"} {
				if !slices.ContainsFunc(s.Needs, func(n scenarios.Need) bool { return n.Role == role }) {
					t.Errorf("no %s is needed", role)
				}
			}
			story, err := fs.ReadFile(scenarios.DemoFS(), name+"/README.md")
			if err != nil || len(story) < 800 || !strings.HasPrefix(string(story), "# ") {
				t.Errorf("the story has %d bytes, %v", len(story), err)
			}
		})
	}
}

// What each demo is there to show.
func TestDemosShow(t *testing.T) {
	cider, err := scenarios.Demo("cider-shed")
	if err != nil {
		t.Fatal(err)
	}
	if cider.Rules != scenarios.NEC || cider.Bus.NominalV != 48 || cider.Sold != 115000 || cider.Have[0].PartID != "lfp-rack-5" || cider.Have[0].Count != 1 || cider.Savings == nil {
		t.Errorf("cider-shed: %+v", cider)
	}
	market, err := scenarios.Demo("lantern-market")
	if err != nil {
		t.Fatal(err)
	}
	// The push limit and the mass limit lie within 2 % of one another: (rolling + slope) * M * g <= push.
	pushKg := market.Limits.PushN / ((market.Cart.Rolling + market.Limits.Slope) * 9.80665)
	if market.Rules != scenarios.IEC || market.Bus.NominalV != 48 || pushKg/market.Limits.MassKg < 0.98 || pushKg/market.Limits.MassKg > 1.02 {
		t.Errorf("lantern-market: %+v, push allows %g kg", market, pushKg)
	}
	party, err := scenarios.Demo("star-party")
	if err != nil {
		t.Fatal(err)
	}
	if party.Rules != scenarios.NEC || party.Bus.NominalV != 24 || party.Measured == nil || party.Measured.StepMin != 15 || len(party.Measured.LegA) != 192 || party.AutonomyH <= 24 {
		t.Errorf("star-party: %+v", party)
	}
}

// The goat dairy is there for the sun: an array, a share of the year, what the wall would have cost.
func TestDemoOfSun(t *testing.T) {
	dairy, err := scenarios.Demo("goat-dairy")
	if err != nil {
		t.Fatal(err)
	}
	if x := dairy.Sun; x == nil || x.Most < 4 || dairy.Limits.Served == 0 || dairy.GridCentsPerKWh == 0 || dairy.Run(scenarios.RunSolar) == nil {
		t.Errorf("goat-dairy: %+v", dairy)
	}
}

func TestDemoUnknown(t *testing.T) {
	_, err := scenarios.Demo("zoo")
	expect(t, err, `there is no demo "zoo"; the demos are cider-shed, goat-dairy, lantern-market, star-party`)
	_, err = scenarios.Demo("star-part")
	expect(t, err, `there is no demo "star-part"; did you mean "star-party"?`)
}

// The starter is read as it stands beside a copy of the catalogue, and shows every key there is.
func TestStarter(t *testing.T) {
	for _, rules := range []scenarios.Rules{scenarios.NEC, scenarios.IEC} {
		t.Run(string(rules), func(t *testing.T) { testStarter(t, rules) })
	}
}

func testStarter(t *testing.T, rules scenarios.Rules) {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "cart")
	if err := os.CopyFS(dir, scenarios.Starter(rules)); err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(filepath.Join(dir, "parts"), 0o777); err != nil {
		t.Fatal(err)
	}
	s, err := scenarios.Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	if err := s.Check(catalog.Embedded()); err != nil {
		t.Error(err)
	}
	text, err := os.ReadFile(s.File)
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range scenarios.Keys() {
		if key := path[strings.LastIndexAny(path, ".")+1:]; !strings.Contains(string(text), key+":") {
			t.Errorf("the starter does not mention %q", path)
		}
	}
}

// The sun that the starter shows in comments is read as it stands there, without them.
func TestStarterSun(t *testing.T) {
	for _, rules := range []scenarios.Rules{scenarios.NEC, scenarios.IEC} {
		data, err := fs.ReadFile(scenarios.Starter(rules), "scenario.yaml")
		if err != nil {
			t.Fatal(err)
		}
		text := string(data)
		from := strings.Index(text, "# sun:")
		to := from + strings.Index(text[from:], "#   # or,")
		text = text[:from] + strings.ReplaceAll(strings.TrimPrefix(text[from:to], "# "), "\n# ", "\n") + text[to:]
		text = strings.Replace(text, "\nuse:", "\n# use:", 1)
		s, err := openText(text)
		if err != nil || s.Sun == nil || s.Sun.Room == nil || len(s.Warnings) > 0 {
			t.Errorf("%s: %v, %+v", rules, err, s)
		}
	}
}
