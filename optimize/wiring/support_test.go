package wiring_test

import (
	"slices"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// copperCable returns a cable of copper, invented.
func copperCable(size catalog.Size, insulationC float64) *catalog.Cable {
	return &catalog.Cable{Size: size, Material: "copper", InsulationC: insulationC}
}

// aluminiumCable returns a cable of aluminium, invented.
func aluminiumCable(size catalog.Size, insulationC float64) *catalog.Cable {
	return &catalog.Cable{Size: size, Material: "aluminium", InsulationC: insulationC}
}

// device returns a fuse or breaker of one pole for direct current, invented.
func device(kind string, ratingA float64) *catalog.Device {
	return &catalog.Device{Type: kind, Class: "T", RatingA: ratingA, Poles: 1, MaxDCV: 80, InterruptingDCA: 20000,
		TerminalC: 75}
}

// acBreaker returns a breaker for 240 V of alternating current, invented.
func acBreaker(ratingA float64, poles int) *catalog.Device {
	return &catalog.Device{Type: "breaker", RatingA: ratingA, Poles: poles, MaxACV: 240, InterruptingACA: 10000,
		TerminalC: 75}
}

// busDuty returns the duty of a short two-wire path on a 48 V bus.
func busDuty(kind scenarios.RunKind, designA float64) wiring.Duty {
	return wiring.Duty{Kind: kind, DesignA: designA, DropA: designA, NominalV: 51.2, DeviceV: 58.4, Poles: 1, Conductors: 2,
		LengthM: 1, AmbientC: 30, Bundled: 2, Drop: 0.03}
}

// feederDuty returns the duty of a short 120/240 V feeder.
func feederDuty(designA float64) wiring.Duty {
	return wiring.Duty{Kind: scenarios.RunFeeder, AC: true, DesignA: designA, DropA: designA, NominalV: 240, DeviceV: 240, Poles: 2,
		Conductors: 3, Ground: true, LengthM: 3, AmbientC: 30, Bundled: 3, Drop: 0.03}
}

// branchDuty returns the duty of a short branch circuit.
func branchDuty(deviceA, volts float64, poles int) wiring.Duty {
	return wiring.Duty{Kind: scenarios.RunBranch, Name: "outlet", AC: true, DesignA: deviceA, DropA: deviceA, DeviceA: deviceA,
		NominalV: volts, DeviceV: volts, Poles: poles, Conductors: 2, Ground: true, LengthM: 2, AmbientC: 30,
		Bundled: 2, Drop: 0.03}
}

// failed returns the names of the checks that an option does not pass.
func failed(r wiring.Result) []string {
	names := []string{}
	for _, c := range r.Checks {
		if !c.Passed {
			names = append(names, c.Name)
		}
	}
	return names
}

// verdict is one option for one duty and the checks it must fail: all of them, in order.
type verdict struct {
	name   string
	duty   wiring.Duty
	option wiring.Option
	faultA float64
	want   []string
}

func runVerdicts(t *testing.T, r wiring.Rules, verdicts []verdict) {
	t.Helper()
	for _, v := range verdicts {
		t.Run(v.name, func(t *testing.T) {
			res := r.Check(v.duty, v.option, v.faultA)
			if got := failed(res); !slices.Equal(got, v.want) {
				t.Errorf("failed %q, want %q\nduty %+v\nchecks %+v", got, v.want, v.duty, res.Checks)
			}
			if res.OK() != (len(v.want) == 0) {
				t.Errorf("OK() = %v with failed %q", res.OK(), v.want)
			}
		})
	}
}

// changed returns a copy of a value with a change made to it.
func changed[T any](v T, change func(*T)) T {
	change(&v)
	return v
}
