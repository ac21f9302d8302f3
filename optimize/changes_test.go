package optimize_test

import (
	"context"
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"cartwright/optimize"
	"cartwright/optimize/question"
	"cartwright/optimize/search"
)

// changeCases is how many random problems without a plan are looked at, of each sort.
const changeCases = 60

// Where no plan is possible, each change that is listed makes one possible, and a step less of it does not;
// a limit that is not told makes none possible however far it gives.
func TestChanges(t *testing.T) {
	s := &changeSurvey{T: t, single: map[string]int{}}
	seed := uint64(6e6)
	for cases := 0; cases < changeCases**times; seed++ { // such as come, most of them hopeless
		if !s.possible(func() question.Problem { return randomProblem(seed) }, nil) {
			s.look(func() question.Problem { return randomProblem(seed) })
			cases++
		}
	}
	for cases := 0; cases < changeCases**times; seed++ { // such as have one limit too many
		problem := func() question.Problem { p, _ := tightened(seed); return p }
		if s.possible(func() question.Problem { return randomProblem(seed) }, nil) && !s.possible(problem, nil) {
			s.look(problem)
			cases++
		}
	}
	for _, seed := range []uint64{
		6000473, // push and autonomy together, once told as hopeless
		6000587, // less autonomy, which the recharging current still did not allow
	} {
		s.look(func() question.Problem { return randomProblem(seed) })
	}
	s.look(func() question.Problem { p, _ := tightened(6000027); return p }) // a push no cart keeps
	t.Logf("single changes %v, %d joint, %d hopeless", s.single, s.joint, s.hopeless)
	for name := range hard {
		if s.single[name] == 0 {
			t.Errorf("no case in which %s has to give", name)
		}
	}
}

// changeSurvey looks at problems without a plan and counts what has to give.
type changeSurvey struct {
	*testing.T
	single          map[string]int
	joint, hopeless int
}

// look looks at one problem, which it may make as often as it likes.
func (s *changeSurvey) look(problem func() question.Problem) {
	s.Helper()
	name := problem().Scenario.Name
	r, err := optimize.Rank(context.Background(), problem(), question.Options{})
	if err != nil {
		s.Errorf("%s: %v", name, err)
		return
	}
	switch {
	case r.Solver.Status != question.Infeasible:
		s.Errorf("%s: %s, but there is no plan", name, r.Solver.Status)
	case len(r.Changes) == 0:
		s.hopeless++
		s.checkHopeless(problem)
	case len(r.Changes[0].Limits) > 1:
		s.joint++
		s.checkJoint(problem, r.Changes)
	default:
		for _, c := range r.Changes {
			s.single[c.Limits[0].Name]++
		}
		s.checkSingle(problem, r.Changes)
	}
}

// possible reports whether a problem has a plan once some limits are set to values.
func (s *changeSurvey) possible(problem func() question.Problem, values map[string]float64) bool {
	s.Helper()
	p := problem()
	all := knobs(p.Scenario)
	for name, v := range values {
		k, known := all[name]
		if !known {
			s.Fatalf("%s: there is no limit %q to change", p.Scenario.Name, name)
		}
		k.set(p.Scenario, v)
	}
	return len(enumerate(s.T, p, question.ByCost)) > 0
}

// stepLess returns a value one step nearer to where a limit was.
func stepLess(k knob, c question.LimitChange) float64 {
	if math.Abs(c.To-c.From) <= k.step {
		return c.From
	}
	return c.To + math.Copysign(k.step, c.From-c.To)
}

// checkSingle checks the changes of single limits.
func (s *changeSurvey) checkSingle(problem func() question.Problem, changes []question.Change) {
	s.Helper()
	all := knobs(problem().Scenario)
	var told []string
	for _, change := range changes {
		if len(change.Limits) != 1 {
			s.Errorf("%s: a joint change beside single ones: %+v", problem().Scenario.Name, change)
			continue
		}
		c := change.Limits[0]
		told = append(told, c.Name)
		k := all[c.Name]
		if !s.possible(problem, map[string]float64{c.Name: c.To + k.rounding}) {
			s.Errorf("%s: no plan with %s %g -> %g %s", problem().Scenario.Name, c.Name, c.From, c.To, c.Unit)
		}
		changed := problem()
		k.set(changed.Scenario, c.To)
		if found, err := search.Feasible(context.Background(), changed); found == nil {
			s.Errorf("%s: the engine finds no plan with its own change of %s to %g: %v", changed.Scenario.Name, c.Name, c.To, err)
		}
		if v := stepLess(k, c); s.possible(problem, map[string]float64{c.Name: v - k.rounding}) {
			s.Errorf("%s: a plan with %s %g already, told is %g -> %g %s", problem().Scenario.Name, c.Name, v, c.From, c.To, c.Unit)
		}
	}
	for name, k := range all {
		if !slices.Contains(told, name) && s.possible(problem, map[string]float64{name: k.open}) {
			s.Errorf("%s: a plan with %s open, but the changes told are of %s", problem().Scenario.Name, name, strings.Join(told, ", "))
		}
	}
}

// checkJoint checks a change of several limits together: it is enough, a step less of any of them is not,
// and no fewer limits would do.
func (s *changeSurvey) checkJoint(problem func() question.Problem, changes []question.Change) {
	s.Helper()
	all := knobs(problem().Scenario)
	for _, change := range changes {
		enough := map[string]float64{}
		for _, c := range change.Limits {
			enough[c.Name] = c.To + all[c.Name].rounding
		}
		if !s.possible(problem, enough) {
			s.Errorf("%s: no plan with %+v", problem().Scenario.Name, change)
		}
		for _, c := range change.Limits {
			less := maps.Clone(enough)
			less[c.Name] = stepLess(all[c.Name], c) - all[c.Name].rounding
			if s.possible(problem, less) {
				s.Errorf("%s: a plan with %s %g already, told is %+v", problem().Scenario.Name, c.Name, less[c.Name], change)
			}
		}
		if smaller := s.openSet(problem, len(change.Limits)-1); smaller != nil {
			s.Errorf("%s: a plan with %v open, told is %+v", problem().Scenario.Name, smaller, change)
		}
	}
}

// openSet returns limits, so many of them or fewer, that make a plan possible when they are open; nil for
// none.
func (s *changeSurvey) openSet(problem func() question.Problem, size int) []string {
	s.Helper()
	all := knobs(problem().Scenario)
	var names []string
	for name := range all {
		names = append(names, name)
	}
	slices.Sort(names)
	var try func(from int, chosen []string) []string
	try = func(from int, chosen []string) []string {
		values := map[string]float64{}
		for _, name := range chosen {
			values[name] = all[name].open
		}
		if s.possible(problem, values) {
			return chosen
		}
		for i := from; i < len(names) && len(chosen) < size; i++ {
			if found := try(i+1, append(slices.Clone(chosen), names[i])); found != nil {
				return found
			}
		}
		return nil
	}
	return try(0, nil)
}

// checkHopeless checks that not even all limits open make a plan possible.
func (s *changeSurvey) checkHopeless(problem func() question.Problem) {
	s.Helper()
	values := map[string]float64{}
	for name, k := range knobs(problem().Scenario) {
		values[name] = k.open
	}
	if s.possible(problem, values) {
		s.Errorf("%s: a plan with every limit open, but no change is told", problem().Scenario.Name)
	}
}
