package audit

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"cartwright/optimize/plan"
)

// isFree reports whether a plan may state a number or text as it likes: its rank, and the price and vendor
// of what is not bought.
func isFree(p *plan.Plan, path string) bool {
	if path == ".Rank" {
		return true
	}
	for i, l := range p.Bill {
		if l.Buy == 0 {
			at := fmt.Sprintf(".Bill[%d].", i)
			if path == at+"UnitPrice" || path == at+"Vendor" {
				return true
			}
		}
	}
	return false
}

// A plan has no number that could be another one: a little more or less of any of them is found out.
func TestEveryNumberMatters(t *testing.T) {
	changes := map[string]func(float64) float64{
		"one less":    func(x float64) float64 { return x - math.Max(1, math.Abs(x)*1e-5) },
		"a hair more": func(x float64) float64 { return x*(1+2e-5) + 2e-5 },
	}
	// A hair more of cable may be bought than is needed and cost no cent more; and what is left of a limit
	// is a small difference of numbers that may be rounded.
	hairless := func(path string) bool { return strings.HasSuffix(path, ".Buy") || strings.HasSuffix(path, ".Slack") }
	for name, fresh := range map[string]func() *cart{"nec": newBarn, "iec": newFair} {
		for how, change := range changes {
			t.Run(name+" "+how, func(t *testing.T) {
				k := fresh()
				eachNumber(k.p, func(path string, n number) {
					old := n.get()
					n.set(change(old))
					if n.get() == old || isFree(k.p, path) || how == "a hair more" && hairless(path) {
						n.set(old)
						return
					}
					if k.auditor().Plan(k.p).Passed {
						t.Errorf("%s: %v instead of %v passes", path, n.get(), old)
					}
					n.set(old)
				})
			})
		}
	}
}

// Nor a text that could be another one.
func TestEveryTextMatters(t *testing.T) {
	for name, fresh := range map[string]func() *cart{"nec": newBarn, "iec": newFair} {
		t.Run(name, func(t *testing.T) {
			k := fresh()
			eachText(k.p, func(path string, get func() string, set func(string)) {
				old := get()
				for _, other := range []string{old + "x", "slab", ""} {
					set(other)
					if other != old && !isFree(k.p, path) && k.auditor().Plan(k.p).Passed {
						t.Errorf("%s: %q instead of %q passes", path, other, old)
					}
				}
				set(old)
			})
		})
	}
}

// Whatever numbers a plan holds, the audit ends, and finds what no plan can have.
func TestAbsurdPlans(t *testing.T) {
	absurd := []float64{math.NaN(), math.Inf(1), -1, 1e300}
	for name, fresh := range map[string]func() *cart{"nec": newBarn, "iec": newFair} {
		for _, x := range absurd {
			t.Run(fmt.Sprint(name, " ", x), func(t *testing.T) {
				k := fresh()
				eachNumber(k.p, func(path string, n number) {
					old := n.get()
					if !n.float() && (math.IsNaN(x) || math.Abs(x) > 1e18) {
						n.set(math.Copysign(1e18, x))
					} else {
						n.set(x)
					}
					a := k.auditor().Plan(k.p)
					if a.Passed && !isFree(k.p, path) {
						t.Errorf("%s: %v passes", path, n.get())
					}
					mustJSON(a)
					n.set(old)
				})
			})
		}
	}
	if a := Plan(newBarn().s, newBarn().c, nil); a.Passed {
		t.Error("no plan at all passes")
	}
	if a := Plan(newBarn().s, newBarn().c, &plan.Plan{}); a.Passed {
		t.Error("an empty plan passes")
	}
}

// The largest number that is not absurd is left to the other checks.
func TestLargestFigures(t *testing.T) {
	for name, do := range map[string]func(p *plan.Plan){
		"figure": func(p *plan.Plan) { p.Runs[0].LengthM = mostFigure },
		"count":  func(p *plan.Plan) { p.Runs[0].Count = mostCount },
		"money":  func(p *plan.Plan) { p.Cost = -mostCents },
	} {
		t.Run(name, func(t *testing.T) {
			k := newBarn()
			do(k.p)
			if got := failed(k.auditor().Plan(k.p)); len(got) == 0 || got[0] == ruleFigures {
				t.Errorf("failed checks %q", got)
			}
		})
	}
}

// Plans with many things wrong at once end the audit too, and fail it.
func TestScrambledPlans(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom([]func() *cart{newBarn, newFair}).Draw(t, "cart")()
		changed := 0
		eachNumber(k.p, func(path string, n number) {
			if rapid.IntRange(0, 19).Draw(t, path) == 0 && !isFree(k.p, path) {
				old := n.get()
				n.set(rapid.SampledFrom([]float64{0, 1, 2, 7, 0.5, 1e6, 123456}).Draw(t, path+" to"))
				if math.Abs(n.get()-old) > 1e-3*math.Abs(old) {
					changed++
				}
			}
		})
		if a := k.auditor().Plan(k.p); a.Passed != (changed == 0) {
			t.Fatalf("passed is %t with %d numbers changed; failed: %q", a.Passed, changed, failed(a))
		}
	})
}

// mustJSON marshals what every printer of plans must be able to.
func mustJSON(v any) []byte {
	text, err := json.Marshal(v)
	if err != nil {
		panic(err)
	}
	return text
}
