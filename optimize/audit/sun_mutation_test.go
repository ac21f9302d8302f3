package audit

import (
	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/scenarios"
)

// sun changes the fair's sun, which other carts share.
func (k *cart) sun(change func(s *scenarios.Sun)) {
	s := *k.s.Sun
	room := *s.Room
	s.Room = &room
	change(&s)
	k.s.Sun = &s
}

// leaf is the fair's module.
func (k *cart) leaf() *catalog.Solar { return &k.c.Solar[0] }

var sunMutations = []mutation{
	mutated("two arrays", newFair, func(k *cart) { k.p.Core.Solar = append(k.p.Core.Solar, k.p.Core.Solar[0]) }, ruleArray),
	mutated("modules without sun", newFair, func(k *cart) { k.s.Sun = nil }, ruleArray, ruleRunKinds),
	mutated("a module that is not in the catalogue", newFair, func(k *cart) { k.p.Core.Solar[0].Part = "reed" },
		ruleKnown, ruleArray, ruleServed, ruleRunKinds),
	mutated("an array of nothing", newFair, func(k *cart) { k.p.Core.Solar[0].Parallel = 0 }, ruleArray, ruleServed, ruleRunKinds),
	mutated("an inverter that does not state its inputs", newFair, func(k *cart) { k.inverter("sine-2").MPPTMinV = 0 }, ruleArray),
	mutated("modules above the inverter's volts in the cold", newFair, func(k *cart) { k.inverter("sine-2").SolarMaxVocV = 80.6 }, ruleSolarCold),
	mutated("a colder place", newFair, func(k *cart) {
		k.sun(func(s *scenarios.Sun) { s.ColdestC = -110 }) // 101.2 V
		k.device("pv-25").MaxDCV, k.device("pv-10").MaxDCV = 200, 200
	}, ruleSolarSystem),
	mutated("modules below the inverter's volts in the heat", newFair, func(k *cart) { k.inverter("sine-2").MPPTMinV = 50.3 }, ruleSolarHot),
	mutated("volts that fall more steeply than power", newFair, func(k *cart) {
		k.leaf().VocTempPctPerC, k.inverter("sine-2").MPPTMinV = -0.4, 49 // 48.9 V
		k.leaf().MaxSystemV = 200
	}, ruleSolarHot),
	mutated("modules above the inverter's volts at full power", newFair, func(k *cart) { k.inverter("sine-2").MPPTMaxV = 59.9 }, ruleSolarHighV),
	mutated("modules above the inverter's current", newFair, func(k *cart) { k.inverter("sine-2").MPPTMaxA = 14.9 }, ruleSolarA),
	mutated("more inputs than there are", newFair, func(k *cart) { k.inverter("sine-2").MPPTInputs = 0 }, ruleSolarInputs),
	mutated("modules above their own volts", newFair, func(k *cart) { k.leaf().MaxSystemV = 80.6 }, ruleSolarSystem),
	mutated("no room for the modules", newFair, func(k *cart) { k.sun(func(s *scenarios.Sun) { s.Room.WidthM = 1.4 }) }, ruleSolarRoom),
	mutated("modules of no stated size", newFair, func(k *cart) { k.leaf().WidthM = 0 }, ruleSolarRoom),
	mutated("more modules than there may be", newFair, func(k *cart) { k.sun(func(s *scenarios.Sun) { s.Most = 8 }) }, ruleSolarRoom),
	mutated("too little served", newFair, func(k *cart) { k.s.Limits.Served = 0.69 }, ruleServed),
	mutated("a darker place", newFair, func(k *cart) {
		k.sun(func(s *scenarios.Sun) {
			for m := range s.MonthlyKWhM2 {
				s.MonthlyKWhM2[m] /= 2
			}
		})
	}, ruleServed),
	mutated("modules in the shade", newFair, func(k *cart) { k.sun(func(s *scenarios.Sun) { s.Losses = 0.5 }) }, ruleServed),
	mutated("modules cut off by the inverter", newFair, func(k *cart) { k.inverter("sine-2").SolarMaxW = 200 }, ruleServed),
	mutated("a bank that charges slowly", newFair, func(k *cart) {
		k.battery("block").MaxChargeA = 5 // 240 W
		k.s.Recharge = nil
		k.unlist("inlet")
	}, ruleServed),

	mutated("a main too thin for what the sun gives", newFair, func(k *cart) {
		k.inverter("sine-2").SolarMaxW = 5000 // what three of the modules of 1000 W give
		k.leaf().Watts, k.inverter("sine-2").SolarMaxVocV = 1000, 200
	}, "main device rating", "main terminal ampacity", "main corrected ampacity", ruleBusbarCurrent),
	mutated("a solar cable in the heat", newFair, func(k *cart) {
		k.sun(func(s *scenarios.Sun) { s.HottestC = 80 })
	}, "solar corrected ampacity", "solar cable protected", "solar fuse overload"),
	mutated("three sets of a solar run", newFair, func(k *cart) { k.run("solar", "").Sets = 3 }, "solar parallel sets", "solar ground size"),
	mutated("no fuses of strings", newFair, func(k *cart) { k.run("solar", "").StringFuse, k.run("solar", "").StringFuses = "", 0 },
		"solar string fuses", "solar string fuse present"),
	mutated("a fuse of a string less", newFair, func(k *cart) { k.run("solar", "").StringFuses = 2 }, "solar string fuses"),
	mutated("fuses of strings that need none", newFair, func(k *cart) { k.leaf().MaxFuseA = 13.25 },
		"solar string fuses", "solar string fuse present"),
	mutated("fuses of two strings whose maker states none", newFair, func(k *cart) {
		k.leaf().MaxFuseA = 0
		k.p.Core.Solar[0].Series, k.p.Core.Solar[0].Parallel = 4, 2
		k.leaf().MaxSystemV = 200
		k.inverter("sine-2").MPPTMaxV = 200
		k.run("solar", "").StringFuses = 2
		k.device("pv-25").MaxDCV = 200
	}, "solar string fuses", "solar string fuse present"),
	mutated("fuse of a string too small", newFair, func(k *cart) { k.device("pv-10").RatingA = 6 }, "solar string fuse rating"),
	mutated("fuse of a string of no standard rating", newFair, func(k *cart) { k.device("pv-10").RatingA = 9 }, "solar string fuse standard"),
	mutated("fuse of a string above its modules", newFair, func(k *cart) { k.leaf().MaxFuseA = 9 }, "solar string fuse limit"),
	mutated("fuse of a string of too few volts", newFair, func(k *cart) { k.device("pv-10").MaxDCV = 80 }, "solar string fuse voltage"),
	mutated("fuse of a string that can't break the fault", newFair, func(k *cart) { k.device("pv-10").InterruptingDCA = 19 }, "solar string fuse interrupting"),
	mutated("fuse of a string of partial range", newFair, func(k *cart) { k.device("pv-10").Class = "aR" }, "solar string fuse kind"),
	mutated("breaker for a fuse of a string", newFair, func(k *cart) { k.device("pv-10").Type = breakerType }, "solar string fuse kind"),
}

// yearMutations break what the plan states of the year.
var yearMutations = stated([]mutation{
	mutated("no year told", newFair, func(k *cart) { k.p.Year = nil }, ruleYearFigures),
	mutated("a year without sun", newBarn, func(k *cart) { k.p.Year = &plan.Year{} }, ruleYearFigures),
	mutated("a month less", newFair, func(k *cart) { k.p.Year.Months = k.p.Year.Months[:11] }, ruleYearFigures),
	mutated("an hour of shortage less", newFair, func(k *cart) { k.p.Year.ShortH-- }, ruleYearFigures),
	mutated("spilled in a month misstated", newFair, func(k *cart) { k.p.Year.Months[0].Spilled = 0.001 }, ruleYearFigures),
	mutated("saving misstated", newFair, func(k *cart) { *k.p.Year.Saved++ }, ruleYearFigures),
	mutated("no saving told", newFair, func(k *cart) { k.p.Year.Saved = nil }, ruleYearFigures),
	mutated("no payback told", newFair, func(k *cart) { k.p.Year.PaybackYears = nil }, ruleYearFigures),
	mutated("saving of no price", newFair, func(k *cart) { k.s.GridCentsPerKWh = 0 }, ruleYearFigures),
	mutated("payback misstated", newFair, func(k *cart) { *k.p.Year.PaybackYears *= 1.0001 }, ruleYearFigures),
	mutated("modules carried along and not counted", newFair, func(k *cart) { k.sun(func(s *scenarios.Sun) { s.OnCart = false }) },
		ruleMassFigure, ruleCasterFigures, ruleBalanceFigures, ruleLimits),
})

var harmlessSun = []mutation{
	mutated("modules on the ground", newFair, func(k *cart) { k.sun(func(s *scenarios.Sun) { s.OnCart = false }) }),
	mutated("as many modules as there may be", newFair, func(k *cart) { k.sun(func(s *scenarios.Sun) { s.Most, s.Room = 9, nil }) }),
	mutated("no array", newFair, func(k *cart) {
		k.p.Core.Solar, k.s.Limits.Served = nil, 0
		k.p.Runs = append(k.p.Runs[:6], k.p.Runs[7:]...)
	}),
	mutated("no price of a kWh", newFair, func(k *cart) { k.s.GridCentsPerKWh = 0 }),
	mutated("nothing saved", newFair, func(k *cart) { k.s.GridCentsPerKWh = 0.0001 }),
	mutated("the sun alone", newFair, func(k *cart) { k.inverter("sine-2").IdleW = 0 }),
}
