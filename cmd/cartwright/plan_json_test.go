package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"cartwright/cmd/cartwright/cli"
	"cartwright/scenarios"
)

// planShape is a plan's JSON as other programs rely on it: every key with a value of its type. A whole
// number stands for one that is always whole, 0.5 for one that need not be. An empty list may hold anything.
const planShape = `{"format":1,"command":"plan","scenario":"","currency":"","rules":"",
 "solver":{"name":"","version":"","status":"","seconds":0.5,"models":1},
 "plans":[{"rank":1,"cost":0.5,"spend":0.5,"shipping":0.5,"tax":0.5,"credit":0.5,
   "usable_kwh":0.5,"autonomy_h":0.5,"mass_kg":0.5,"cost_per_usable_kwh":0.5,
   "core":{"batteries":[{"part":"","strings":1,"series":1}],"inverter":{"part":"","units":1},"solar":[]},
   "bill":[{"part":"","kind":"","quantity":0.5,"unit":"","have":0.5,"buy":0.5,"sell":0.5,
     "vendor":"","unit_price":0.5,"line":0.5}],
   "runs":[{"run":"","cable":"","sets":1,"device":"","count":1,"length_m":0.5,"design_a":0.5,
     "required_a":0.5,"allowed_a":0.5,"device_a":0.5,"drop_pct":0.5,"fault_a":0.5,"interrupting_a":0.5}],
   "shelves":[{"shelf":"","batteries":[{"part":"","modules":1}],"mass_kg":0.5}],
   "casters":{"part":"","count":1,"load_each_kg":0.5,"rating_each_kg":0.5},
   "balance":{"cg_height_mm":0.5,"tilt_deg":0.5,"required_deg":0.5},
   "limits":[{"name":"","value":0.5,"limit":0.5,"unit":"","slack":0.5,"binding":true}],
   "audit":{"passed":true,"checks":[{"name":"","passed":true,"value":0.5,"limit":0.5,"source":""}]}}],
 "cautions":[""]}`

// planJSON runs the plan command on a demo.
func planJSON(t *testing.T, demo string) []byte {
	t.Helper()
	var stdout, stderr bytes.Buffer
	args := []string{"plan", demo, "--plans", "4", "--format", "json"}
	if code := (cli.Program{Manual: manual}).Run(context.Background(), args, strings.NewReader(""), &stdout, &stderr); code != 0 {
		t.Fatalf("exit %d: %s", code, stderr.String())
	}
	return stdout.Bytes()
}

// decoded returns what JSON holds, its numbers as they are written.
func decoded(t *testing.T, text []byte) any {
	t.Helper()
	d := json.NewDecoder(bytes.NewReader(text))
	d.UseNumber()
	var v any
	if err := d.Decode(&v); err != nil {
		t.Fatal(err)
	}
	return v
}

func TestPlanJSONHasItsShape(t *testing.T) {
	shape := decoded(t, []byte(planShape))
	for _, demo := range scenarios.DemoNames() {
		t.Run(demo, func(t *testing.T) {
			for _, wrong := range unlike(shape, decoded(t, planJSON(t, demo)), "") {
				t.Error(wrong)
			}
		})
	}
}

// The comparison itself finds what is missing or of another type.
func TestUnlike(t *testing.T) {
	for _, c := range []struct{ name, value, want string }{
		{"the same", `{"a":[{"b":2}],"c":0.25,"d":"x","e":false,"more":null}`, ""},
		{"a key is missing", `{"a":[{}],"c":1,"d":"","e":true}`, ".a[0].b is missing"},
		{"a part for a whole number", `{"a":[{"b":2.5}],"c":1,"d":"","e":true}`, ".a[0].b is 2.5, of another type than 1"},
		{"text for a number", `{"a":[],"c":"1","d":"","e":true}`, ".c is 1, of another type than 0.5"},
		{"nothing for a list", `{"a":null,"c":1,"d":"","e":true}`, ".a is <nil>, of another type than [map[b:1]]"},
	} {
		t.Run(c.name, func(t *testing.T) {
			shape := decoded(t, []byte(`{"a":[{"b":1}],"c":0.5,"d":"","e":true}`))
			if got := strings.Join(unlike(shape, decoded(t, []byte(c.value)), ""), "; "); got != c.want {
				t.Errorf("got %q, want %q", got, c.want)
			}
		})
	}
}

// unlike returns where a value lacks a key of the shape or has one of another type.
func unlike(shape, v any, path string) []string {
	var wrong []string
	odd := func() []string {
		return append(wrong, fmt.Sprintf("%s is %v, of another type than %v", path, v, shape))
	}
	switch shape := shape.(type) {
	case map[string]any:
		have, ok := v.(map[string]any)
		if !ok {
			return odd()
		}
		for key, inner := range shape {
			if _, ok := have[key]; !ok {
				wrong = append(wrong, path+"."+key+" is missing")
				continue
			}
			wrong = append(wrong, unlike(inner, have[key], path+"."+key)...)
		}
	case []any:
		have, ok := v.([]any)
		if !ok {
			return odd()
		}
		for i := range have {
			if len(shape) > 0 {
				wrong = append(wrong, unlike(shape[0], have[i], fmt.Sprintf("%s[%d]", path, i))...)
			}
		}
	case json.Number:
		have, ok := v.(json.Number)
		if !ok || shape == "1" && strings.ContainsAny(have.String(), ".eE") {
			return odd()
		}
	case string:
		if _, ok := v.(string); !ok {
			return odd()
		}
	case bool:
		if _, ok := v.(bool); !ok {
			return odd()
		}
	}
	return wrong
}

// The figures of a printed plan add up: to the cent, within half a unit of the last place elsewhere.
func TestPlanJSONAddsUp(t *testing.T) {
	type line struct{ Have, Buy, Quantity, Line, Credit float64 }
	type run struct {
		Run           string
		Device        string
		DeviceA       float64 `json:"device_a"`
		RequiredA     float64 `json:"required_a"`
		AllowedA      float64 `json:"allowed_a"`
		DesignA       float64 `json:"design_a"`
		DropPct       float64 `json:"drop_pct"`
		DropLimitPct  float64 `json:"drop_limit_pct"`
		FaultA        float64 `json:"fault_a"`
		InterruptingA float64 `json:"interrupting_a"`
	}
	for _, demo := range scenarios.DemoNames() {
		t.Run(demo, func(t *testing.T) {
			var answer struct {
				Plans []struct {
					Rank                               int
					Cost, Spend, Shipping, Tax, Credit float64
					Usable                             float64 `json:"usable_kwh"`
					PerKWh                             float64 `json:"cost_per_usable_kwh"`
					Bill                               []line
					Runs                               []run
				}
			}
			if err := json.Unmarshal(planJSON(t, demo), &answer); err != nil {
				t.Fatal(err)
			}
			last := math.Inf(-1)
			for _, p := range answer.Plans {
				equal := func(what string, got, want float64) {
					if math.Abs(got-want) > 1e-6 {
						t.Errorf("plan %d: %s is %v, want %v", p.Rank, what, got, want)
					}
				}
				var spend, credit float64
				for _, l := range p.Bill {
					spend, credit = spend+l.Line, credit+l.Credit
					if l.Have+l.Buy < l.Quantity-1e-9 {
						t.Errorf("plan %d: %+v installs more than is owned and bought", p.Rank, l)
					}
				}
				equal("the sum of the lines", spend, p.Spend)
				equal("the sum of the credits", credit, p.Credit)
				equal("cost", p.Cost, p.Spend+p.Shipping+p.Tax-p.Credit)
				equal("cost of a kWh", p.PerKWh, p.Cost/p.Usable)
				if p.Cost < last {
					t.Errorf("plan %d costs %v, less than the one before it", p.Rank, p.Cost)
				}
				last = p.Cost
				for _, r := range p.Runs {
					if r.DeviceA < r.RequiredA || r.AllowedA < r.DesignA || r.DropPct > r.DropLimitPct ||
						r.Device != "" && r.InterruptingA < r.FaultA {
						t.Errorf("plan %d: a run is not what it has to be: %+v", p.Rank, r)
					}
				}
			}
		})
	}
}
