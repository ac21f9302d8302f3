package energy

import (
	"math"
	"slices"
	"strings"
	"testing"

	"cartwright/scenarios"
)

func TestDemandErrors(t *testing.T) {
	steps := func(n int) []float64 { return make([]float64, n) }
	with := func(change func(*scenarios.Load)) *scenarios.Scenario {
		l := between("lamp", 10, 60, 120)
		change(&l)
		return &scenarios.Scenario{Loads: []scenarios.Load{allDay("hub", 1), l}}
	}
	measured := func(m scenarios.Measured) *scenarios.Scenario { return &scenarios.Scenario{Measured: &m} }
	for _, c := range []struct {
		name string
		s    *scenarios.Scenario
		want string // "" for none
	}{
		{"watts negative", with(func(l *scenarios.Load) { l.Watts = -1 }), `load "lamp": watts`},
		{"watts not a number", with(func(l *scenarios.Load) { l.Watts = math.NaN() }), "watts"},
		{"watts infinite", with(func(l *scenarios.Load) { l.Watts = math.Inf(1) }), "watts"},
		{"watts zero", with(func(l *scenarios.Load) { l.Watts = 0 }), ""},
		{"count negative", with(func(l *scenarios.Load) { l.Count = -1 }), "count"},
		{"count zero", with(func(l *scenarios.Load) { l.Count = 0 }), ""},
		{"duty above 1", with(func(l *scenarios.Load) { l.Duty = 1.01 }), "duty"},
		{"duty negative", with(func(l *scenarios.Load) { l.Duty = -0.01 }), "duty"},
		{"duty not a number", with(func(l *scenarios.Load) { l.Duty = math.NaN() }), "duty"},
		{"duty 0", with(func(l *scenarios.Load) { l.Duty = 0 }), ""},
		{"start negative", with(func(l *scenarios.Load) { l.Start = -1 }), "start"},
		{"start 0", with(func(l *scenarios.Load) { l.Start = 0 }), ""},
		{"from negative", with(func(l *scenarios.Load) { l.FromMin = -1 }), "minutes of one day"},
		{"to past the day", with(func(l *scenarios.Load) { l.ToMin = 1441 }), "minutes of one day"},
		{"to at the end of the day", with(func(l *scenarios.Load) { l.ToMin = 1440 }), ""},
		{"no time at all", with(func(l *scenarios.Load) { l.ToMin = l.FromMin }), "must differ"},
		{"no time, all day", with(func(l *scenarios.Load) { l.AllDay = true; l.FromMin = -5; l.ToMin = -5 }), ""},
		{"no leg", with(func(l *scenarios.Load) { l.Leg = "C" }), `leg "C"`},
		{"no leg on the bus", with(func(l *scenarios.Load) { l.Leg, l.DC = "", true }), ""},
		{"leg B", with(func(l *scenarios.Load) { l.Leg = scenarios.LegB }), ""},
		{"leg both", with(func(l *scenarios.Load) { l.Leg = scenarios.LegBoth }), ""},
		{"leg auto", with(func(l *scenarios.Load) { l.Leg = scenarios.LegAuto }), ""},

		{"measured", measured(scenarios.Measured{StepMin: 60, LegA: steps(24)}), ""},
		{"step 1", measured(scenarios.Measured{StepMin: 1, LegA: steps(1440)}), ""},
		{"step 0", measured(scenarios.Measured{StepMin: 0, LegA: steps(24)}), "step of 0 min"},
		{"step 61", measured(scenarios.Measured{StepMin: 61, LegA: steps(24)}), "step of 61 min"},
		{"step above an hour", measured(scenarios.Measured{StepMin: 72, LegA: steps(20)}), "step of 72 min"},
		{"step that does not divide the day", measured(scenarios.Measured{StepMin: 50, LegA: steps(144)}), "step of 50 min"},
		{"no steps", measured(scenarios.Measured{StepMin: 60}), "whole days"},
		{"part of a day", measured(scenarios.Measured{StepMin: 60, LegA: steps(25)}), "whole days"},
		{"ragged", measured(scenarios.Measured{StepMin: 60, LegA: steps(24), LegB: steps(23), ByLeg: true}), "on leg B"},
		{"negative on A", measured(scenarios.Measured{StepMin: 60, LegA: slices.Concat(steps(23), []float64{-1})}), "step 24"},
		{"negative on B", measured(scenarios.Measured{
			StepMin: 60, ByLeg: true, LegA: steps(24), LegB: slices.Concat([]float64{-1}, steps(23)),
		}), "step 1:"},
		{"both kinds", &scenarios.Scenario{
			Loads: []scenarios.Load{allDay("hub", 1)}, Measured: &scenarios.Measured{StepMin: 60, LegA: steps(24)},
		}, "both listed and measured"},
	} {
		t.Run(c.name, func(t *testing.T) {
			d, err := DemandOf(c.s)
			switch {
			case c.want == "" && err != nil:
				t.Errorf("unexpected error: %v", err)
			case c.want == "" && d == nil:
				t.Error("no demand and no error")
			case c.want != "" && (err == nil || !strings.Contains(err.Error(), c.want)):
				t.Errorf("error %v, want one with %q", err, c.want)
			}
		})
	}
}
