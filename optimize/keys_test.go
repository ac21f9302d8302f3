package optimize_test

import (
	"context"
	"fmt"
	"io/fs"
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize"
	"cartwright/optimize/question"
	"cartwright/optimize/relax"
	"cartwright/scenarios"
)

// moved is a text of a demo's scenario and what takes its place: then a key has another value, and the best plan, or
// what is left of its limits, is another. Lever is the limit that the key then is for why and for changes.
type moved struct {
	demo, from, to, lever string
	base                  [2]string // another text, and what stands in its place before and after
}

const (
	lantern, cider, goat, star = "lantern-market", "cider-shed", "goat-dairy", "star-party"
)

// none is no base.
var none [2]string

// moving are the keys that move a plan.
var moving = map[string]moved{
	"measured":                     {star, "measured: loads.csv", "loads: [{name: lamp, watts: 20 W}]", "", none},
	"one_at_a_time":                {goat, "  - [milking pump, evening pump]", "  - [milking pump, milk cooler]", "", none},
	"autonomy":                     {lantern, "autonomy: 9 h", "autonomy: 11 h", "autonomy", none},
	"caster_factor":                {lantern, "caster_factor: 1.5", "caster_factor: 2.5", "", none},
	"ac_fault":                     {lantern, "ac_fault: 5 kA", "ac_fault: 50 kA", "", none},
	"sold":                         {cider, "sold: 1150", "sold: 10", "", none},
	"bus.nominal":                  {cider, "nominal: 48 V", "nominal: 51.2 V", "", none},
	"bus.low":                      {cider, "low: 46 V", "low: 44 V", "", none},
	"bus.high":                     {cider, "high: 58.4 V", "high: 57 V", "", none},
	"loads[].watts":                {lantern, "watts: 1350 W", "watts: 1900 W", "", none},
	"loads[].count":                {lantern, "count: 60", "count: 160", "", none},
	"loads[].power_factor":         {lantern, "power_factor: 0.7", "power_factor: 0.3", "", none},
	"loads[].leg":                  {cider, "leg: A", "leg: B", "", none},
	"loads[].circuit":              {cider, "watts: 1200 W, circuit: kettle", "watts: 1200 W, circuit: mill", "", none},
	"loads[].from":                 {lantern, `from: "16:00"`, `from: "03:00"`, "", none},
	"loads[].to":                   {lantern, `to: "22:30"`, `to: "16:30"`, "", none},
	"loads[].duty":                 {lantern, "duty: 55 %", "duty: 95 %", "", none},
	"loads[].start":                {lantern, "start: 5", "start: 30", "", none},
	"loads[].dc":                   {lantern, "circuit: ramp, from: \"17:00\", to: \"01:00\", dc: true", "circuit: stage, from: \"17:00\", to: \"01:00\"", "", none},
	"recharge.within":              {cider, "within: 10 h", "within: 5 h", "recharge within", none},
	"recharge.supply.volts":        {cider, "supply: {volts: 240 V", "supply: {volts: 120 V", "", none},
	"recharge.supply.device":       {cider, "240 V, device: 30 A}} #", "240 V, device: 20 A}} #", "", none},
	"use.days":                     {lantern, "days: 18", "days: 300", "", none},
	"cart.casters":                 {lantern, "casters: 4", "casters: 3", "", none},
	"cart.wheelbase":               {lantern, "wheelbase: 95 cm", "wheelbase: 70 cm", "", none},
	"cart.track":                   {lantern, "track: 52 cm", "track: 45 cm", "", none},
	"cart.caster_mass_height":      {lantern, "caster_mass_height: 70 mm", "caster_mass_height: 170 mm", "", none},
	"cart.rolling":                 {lantern, "rolling: 2 %", "rolling: 3 %", "", none},
	"cart.grip":                    {lantern, "rolling: 2 %", "grip: 0.01\n  rolling: 2 %", "", none},
	"cart.frame.mass":              {goat, "mass: 38 kg", "mass: 98 kg", "", none},
	"cart.frame.height":            {goat, "height: 0.45 m", "height: 0.95 m", "", none},
	"cart.frame.pieces[].section":  {lantern, "section: tube-40, length: 105 cm", "section: tube-30, length: 105 cm", "", none},
	"cart.frame.pieces[].length":   {lantern, "tube-40, length: 105 cm", "tube-40, length: 155 cm", "", none},
	"cart.frame.pieces[].count":    {lantern, "length: 105 cm, count: 2", "length: 105 cm, count: 3", "", none},
	"cart.frame.pieces[].height":   {lantern, "count: 2, height: 14 cm", "count: 2, height: 34 cm", "", none},
	"cart.deck_items[].mass":       {lantern, "mass: 6 kg", "mass: 16 kg", "", none},
	"cart.deck_items[].height":     {lantern, "height: 150 cm", "height: 100 cm", "", none},
	"cart.deck_items[].offset":     {lantern, "offset: -12 cm", "offset: -2 cm", "", none},
	"cart.shelves[].elevation":     {lantern, "bottom, elevation: 14 cm", "bottom, elevation: 34 cm", "", none},
	"cart.shelves[].length":        {lantern, "bottom, elevation: 14 cm, length: 105 cm", "bottom, elevation: 14 cm, length: 5 cm", "", none},
	"cart.shelves[].depth":         {lantern, "length: 105 cm, depth: 48 cm, clear_height: 28 cm", "length: 105 cm, depth: 8 cm, clear_height: 28 cm", "", none},
	"cart.shelves[].clear_height":  {lantern, "clear_height: 28 cm", "clear_height: 8 cm", "", none},
	"cart.shelves[].max_mass":      {lantern, "max_mass: 110 kg", "max_mass: 30 kg", "mass on shelf bottom", none},
	"cart.shelves[].gap":           {lantern, "max_mass: 110 kg, gap: 1 cm", "max_mass: 110 kg, gap: 80 cm", "", none},
	"cart.shelves[].stack":         {goat, "stack: 2", "stack: 1", "", none},
	"cart.shelves[].rails.section": {demo: star, base: [2]string{"max_mass: 150 lb, rails: {section: angle-30, span: 16 in}", "rails: {section: angle-30, span: 60 in}"}, from: "section: angle-30, span: 60 in", to: "section: flat-30, span: 60 in"},
	"cart.shelves[].rails.span":    {star, "span: 16 in", "span: 76 in", "", none},
	"cart.shelves[].rails.count":   {demo: star, base: [2]string{"max_mass: 150 lb, rails: {section: angle-30, span: 16 in}", "rails: {section: angle-30, span: 60 in}"}, from: "span: 60 in}", to: "span: 60 in, count: 6}"},
	"cart.backboard.elevation":     {lantern, "elevation: 78 cm", "elevation: 118 cm", "", none},
	"cart.backboard.offset":        {lantern, "offset: 14 cm}", "offset: 24 cm}", "", none},
	"limits.mass":                  {lantern, "mass: 172 kg", "mass: 165 kg", "mass", none},
	"limits.budget":                {lantern, "budget: 6500", "budget: 3000", "budget", none},
	"limits.tilt":                  {lantern, "tilt: 10 deg", "tilt: 14 deg", "tilt", none},
	"limits.reserve":               {lantern, "reserve: 10 %", "reserve: 40 %", "reserve", none},
	"limits.push":                  {lantern, "push: 200 N", "push: 196 N", "push", none},
	"limits.slope":                 {lantern, "slope: 9.8 %", "slope: 9.9 %", "slope", none},
	"limits.served":                {goat, "served: 85 %", "served: 97 %", "served", none},
	"cable.slack":                  {lantern, "slack: 5 %", "slack: 50 %", "", none},
	"cable.step":                   {cider, "step: 1 ft", "step: 9 ft", "", none},
	"cable.strand":                 {lantern, "slack: 5 %", "slack: 5 %, strand: fine", "", none},
	"runs[].run":                   {goat, "  - {run: bond,   length: 1 m}\n", "", "", none},
	"runs[].length":                {lantern, "main,   length: 1.2 m", "main,   length: 3.2 m", "", none},
	"runs[].ambient":               {cider, "main,   length: 4 ft, ambient: 95 F", "main,   length: 4 ft, ambient: 135 F", "", none},
	"runs[].bundled":               {cider, "bundled: 3, conduit", "bundled: 30, conduit", "", none},
	"runs[].terminal":              {cider, "main,   length: 4 ft", "main,   terminal: 60 C, length: 4 ft", "", none},
	"runs[].drop":                  {lantern, "length: 1.2 m, drop: 2 %", "length: 1.2 m, drop: 0.2 %", "drop of the main", none},
	"runs[].conduit":               {cider, "bundled: 3, conduit: flexible", "bundled: 3", "", none},
	"runs[].own_breaker":           {star, "own_breaker: 15 A", "own_breaker: 30 A", "", none},
	"circuits[].volts":             {cider, "press,     volts: 240 V", "press,     volts: 120 V", "", none},
	"circuits[].device":            {lantern, "volts: 230 V, device: 16 A, length: 1.5 m", "volts: 230 V, device: 10 A, length: 1.5 m", "", none},
	"circuits[].length":            {lantern, "device: 16 A, length: 1.5 m", "device: 16 A, length: 9.5 m", "", none},
	"circuits[].neutral":           {cider, "neutral: false", "neutral: true", "", none},
	"circuits[].terminal":          {cider, "lamps,     volts: 120 V", "lamps,     terminal: 60 C, ambient: 150 F, volts: 120 V", "", none},
	"circuits[].ambient":           {cider, "lamps,     volts: 120 V", "lamps,     ambient: 150 F, volts: 120 V", "", none},
	"circuits[].bundled":           {cider, "bundled: 3, receptacle", "bundled: 40, receptacle", "", none},
	"circuits[].drop":              {lantern, "device: 16 A, length: 1.5 m", "drop: 0.2 %, device: 16 A, length: 1.5 m", "drop of circuit kitchen", none},
	"circuits[].conduit":           {lantern, ", conduit: rigid-plastic", "", "", none},
	"circuits[].receptacle.role":   {lantern, "length: 1.5 m, receptacle: {role: round-outlet", "length: 1.5 m, receptacle: {role: extinguisher", "", none},
	"circuits[].receptacle.rating": {lantern, "length: 2.5 m, receptacle: {role: round-outlet, rating: 16 A", "length: 2.5 m, receptacle: {role: round-outlet, rating: 32 A", "", none},
	"circuits[].receptacle.count":  {lantern, "length: 2.5 m, receptacle: {role: round-outlet, rating: 16 A", "length: 2.5 m, receptacle: {role: round-outlet, count: 4, rating: 16 A", "", none},
	"needs[].role":                 {lantern, "  - {role: emergency-stop}\n", "", "", none},
	"needs[].count":                {lantern, "{role: extinguisher}", "{role: extinguisher, count: 2}", "", none},
	"needs[].rating":               {lantern, "role: shunt, rating: 100 A", "role: shunt, rating: 500 A", "", none},
	"have[].part":                  {lantern, "part: rcd-40, count: 1", "part: stop-button, count: 1", "", none},
	"have[].count":                 {lantern, "part: outlet-16, count: 4", "part: outlet-16, count: 1", "", none},
	"have[].ends":                  {lantern, "count: 3 m, sell: 4.50", "count: 3 m, ends: 2, sell: 4.50", "", none},
	"have[].keep":                  {lantern, "lfp-rack-2, count: 1, sell: 420", "lfp-rack-2, count: 1, keep: true", "", none},
	"have[].sell":                  {lantern, "sell: 420", "sell: 20", "", none},
	"sun.latitude":                 {goat, "latitude: 45.3 deg", "latitude: 44 deg", "", none},
	"sun.tilt":                     {goat, "tilt: 40 deg", "tilt: 60 deg", "", none},
	"sun.azimuth":                  {goat, "tilt: 40 deg", "azimuth: 90 deg\n  tilt: 40 deg", "", none},
	"sun.ground":                   {goat, "tilt: 40 deg", "ground: 80 %\n  tilt: 40 deg", "", none},
	"sun.losses":                   {goat, "tilt: 40 deg", "losses: 20 %\n  tilt: 40 deg", "", none},
	"sun.coldest":                  {goat, "coldest: -18 C", "coldest: -49 C", "", none},
	"sun.hottest":                  {goat, "hottest: 34 C", "hottest: 60 C", "", none},
	"sun.most":                     {goat, "most: 8", "most: 5", "", none},
	"sun.on":                       {goat, "most: 8", "on: cart\n  height: 1 m\n  most: 8", "", none},
	"sun.height":                   {goat, "most: 8", "on: cart\n  height: 2 m\n  most: 8", "", none},
	"sun.monthly":                  {goat, "[1.5, 2.4", "[0.9, 2.4", "", none},
	"sun.warmth":                   {goat, "warmth: [-2 C", "warmth: [-12 C", "", none},
	"sun.room.length":              {goat, "most: 8", "room: {length: 3 m, width: 2 m}", "", none},
	"sun.room.width":               {goat, "most: 8", "room: {length: 6 m, width: 1.2 m}", "", none},
	"money.tax":                    {lantern, "tax: 21 %", "tax: 6 %", "", none},
	"money.grid":                   {goat, "grid: 0.34", "grid: 0.94", "", none},
}

// unmoving tells of each other key why it moves no plan.
var unmoving = map[string]string{
	"name": "a name", "currency": "a name", "units": "what answers are told in", "catalog": "names the parts",
	"loads[].name": "a name", "cart.deck_items[].name": "a name", "cart.shelves[].name": "a name", "circuits[].name": "a name",
	"rules":            "changes what may be written besides; both rule sets have tests of their own",
	"limits.protocols": "the demos' best plans keep it anyway: see the tests of conditions",
	"recharge.from":    "there is the grid only",
	"runs[].link":      "only between modules in series, which no demo's best plan has: see the tests of wiring",
	"sun.file":         "the light from a file: see the tests of weather files",
	"sun.longitude":    "goes with a file", "sun.zone": "goes with a file",
	"savings.now": "in which month, not what: see next", "savings.per_month": "in which month, not what: see next",
	"solver.time_limit": "how long it is looked", "solver.plans": "how many are told",
}

// notLevers says for each limit that is not a lever why the program never proposes to change it.
var notLevers = map[string]string{
	"caster_factor":    "a margin of safety; where it keeps every plan out, relax.Facts says so",
	"cart.rolling":     "a fact about the floor; told likewise",
	"cart.grip":        "a fact about the floor; told by the casters that do not hold",
	"limits.protocols": "no number; told as what stands in the way",
}

// Every key of a scenario moves a plan, or it is told why not; and every limit among those that do is a lever, or it is
// told why not.
func TestEveryKeyIsTold(t *testing.T) {
	keys := scenarios.Keys()
	for _, list := range [][]string{slices.Collect(maps.Keys(moving)), slices.Collect(maps.Keys(unmoving)), slices.Collect(maps.Keys(notLevers))} {
		for _, key := range list {
			if !slices.Contains(keys, key) {
				t.Errorf("%s: there is no such key", key)
			}
		}
	}
	before := map[string]string{}
	for _, key := range keys {
		m, moves := moving[key]
		switch {
		case moves == (unmoving[key] != ""):
			t.Errorf("%s: moves a plan: %t; told why not: %t", key, moves, unmoving[key] != "")
		case strings.HasPrefix(key, "limits.") && (m.lever != "") == (notLevers[key] != ""):
			t.Errorf("%s: a lever: %q; told why not: %q", key, m.lever, notLevers[key])
		}
		if !moves {
			continue
		}
		base := m.demo + m.base[1]
		if before[base] == "" {
			before[base], _ = told(t, m.demo, m.base)
		}
		now, levers := told(t, m.demo, m.base, [2]string{m.from, m.to})
		if now == before[base] {
			t.Errorf("%s: %q in the place of %q moves nothing", key, m.to, m.from)
		}
		if m.lever != "" && !slices.Contains(levers, m.lever) {
			t.Errorf("%s: no lever is called %q: %q", key, m.lever, levers)
		}
	}
}

// told returns what the best plans of a demo come to with texts in the place of others, and the levers there are.
func told(t *testing.T, demo string, edits ...[2]string) (figures string, levers []string) {
	t.Helper()
	file := demo + "/" + scenarios.FileName
	bytes, err := fs.ReadFile(scenarios.DemoFS(), file)
	if err != nil {
		t.Fatal(err)
	}
	text := string(bytes)
	for _, e := range edits {
		if !strings.Contains(text, e[0]) {
			t.Errorf("%s has no %q", demo, e[0])
		}
		if e[0] != "" {
			text = strings.Replace(text, e[0], e[1], 1)
		}
	}
	s, err := scenarios.OpenText(file, []byte(text), scenarios.DemoFS())
	if err != nil {
		t.Errorf("%s with %q: %v", demo, edits, err)
		return "", nil
	}
	for _, l := range relax.Levers(s) {
		levers = append(levers, l.Name)
	}
	p := question.Problem{Scenario: s, Catalog: catalog.Embedded()}
	if err := optimize.Check(p); err != nil {
		t.Errorf("%s with %q: %v", demo, edits, err)
		return "", levers
	}
	s.Solver.TimeLimitS = math.Inf(1)
	r, err := optimize.Rank(context.Background(), p, question.Options{Plans: 2})
	if err != nil {
		t.Fatal(err)
	}
	if len(r.Plans) == 0 {
		return fmt.Sprint("none: ", r.Changes, r.Reasons), levers
	}
	for i := range r.Plans {
		one := &r.Plans[i]
		figures += fmt.Sprint(one.Cost, one.Credit, one.MassKg, one.UsableKWh, one.AutonomyH, one.CostPerLifetimeKWh, one.Core,
			one.Balance, one.Limits, one.Runs, one.Legs)
		if one.Year != nil {
			figures += fmt.Sprintf(" %+v", *one.Year)
		}
	}
	return figures, levers
}
