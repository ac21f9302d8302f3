package wiring

import (
	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/optimize/wiring/nec"
	"cartwright/scenarios"
)

// Strung is the solar modules on one input: Series in a string, Parallel strings.
type Strung struct {
	Module           *catalog.Solar
	Series, Parallel int
	ColdV            float64 // open-circuit volts of a string in the coldest air
}

// SolarDuty returns the duty of the path from the modules of one input to the inverter, and whether the scenario names
// such a run. The modules can give 125 % of their rated short-circuit current, which is the design current; under nec
// device and cable are rated for 125 % of that (NEC 690.8(A)(1), 690.8(B)). Both poles open (NEC 690.13). The drop is
// taken at full power.
func SolarDuty(s *scenarios.Scenario, x Strung) (Duty, bool) {
	run := s.Run(scenarios.RunSolar)
	if run == nil || s.Sun == nil {
		return Duty{}, false
	}
	p := float64(x.Parallel)
	d := runDuty(s, run, nec.ContinuousA(p*x.Module.IscA))
	d.OwnBreakerA = 0
	d.AmbientC = max(run.AmbientC, s.Sun.HottestC)
	d.DropA, d.NominalV, d.DeviceV = p*x.Module.ImpA, float64(x.Series)*x.Module.VmpV, x.ColdV
	d.Poles, d.Conductors, d.Ground, d.Array = 2, 2, true, true
	return d, true
}

// mostUnfused is the most strings of modules in parallel that go without fuses where the maker states no largest fuse:
// common practice, no source.
const mostUnfused = 2

// StringFused reports whether each string of modules needs a fuse: whether the others together can feed it more than
// its maker allows.
//
//	(p - 1) · 1.25 · isc > max_fuse_a      NEC 690.9(A), 690.8(A)(1)
func StringFused(x Strung) bool {
	if x.Module.MaxFuseA == 0 {
		return x.Parallel > mostUnfused
	}
	return !plan.AtMost(nec.ContinuousA(float64(x.Parallel-1)*x.Module.IscA), x.Module.MaxFuseA)
}

// StringFuses returns the fuses of the catalogue that protect one string of modules: of a standard rating that is at
// least 1.5625 times the short-circuit current and at most what the maker allows, for the string's cold volts, and able
// to break what all strings together give. nil where no fuse is needed.
func StringFuses(r Rules, d Duty, x Strung, c *catalog.Catalog) []*catalog.Device {
	if !StringFused(x) {
		return nil
	}
	least := nec.ContinuousA(nec.ContinuousA(x.Module.IscA))
	var fuses []*catalog.Device
	for i := range c.Devices {
		f := &c.Devices[i]
		p := protectorOf(&d, f)
		alone := Duty{Kind: d.Kind, DeviceV: d.DeviceV, Poles: 1, MostDeviceA: x.Module.MaxFuseA}
		checks := deviceChecks(nil, &alone, f, d.DesignA, r.clauses())
		checks = limitCheck(append(checks, rated(f.RatingA, least), standardOfRules(r, p)), &alone, p)
		if f.Type == fuseType && allPassed(checks) {
			fuses = append(fuses, f)
		}
	}
	return fuses
}

// rated is the check of a string fuse's rating.
func rated(have, need float64) Check {
	return least("string fuse rating", have, need, "A", "NEC 690.8(B), 690.9")
}

// standardOfRules is the check that a rating is a standard one of a rule set.
func standardOfRules(r Rules, p protector) Check {
	if _, metric := r.(iecRules); metric {
		return standardCheck(iecStandard.of(p), p, "IEC 60269-1 and -2")
	}
	return standardCheck(necStandard.of(p), p, nec.StandardSource.Source)
}
