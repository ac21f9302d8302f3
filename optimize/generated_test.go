package optimize_test

import (
	"fmt"
	"math"
	"math/rand/v2"

	"cartwright/catalog"
	"cartwright/optimize/question"
	"cartwright/scenarios"
)

// Generated returns a problem with a plan, of so many batteries, inverters and caster sets: a large market to choose
// from. The parts are invented, with the masses, sizes and prices that parts of their kind have; a third of
// the batteries are in parallel groups of four kinds. Cables, devices, bus bars and sundries are those that
// come with the program. The same numbers give the same problem for ever.
func Generated(batteries, inverters, casters int) question.Problem {
	const stream = 0xca27 // any fixed number: a second half of the generator's seed
	g := &generator{Rand: rand.New(rand.NewPCG(uint64(batteries), stream))}
	c := catalog.Embedded()
	c.Batteries, c.Inverters, c.Casters, c.Solar, c.Offers = nil, nil, nil, nil, nil
	for i := range batteries {
		c.Batteries = append(c.Batteries, g.battery(i))
	}
	for i := range inverters {
		c.Inverters = append(c.Inverters, g.inverter(i))
	}
	for i := range casters {
		c.Casters = append(c.Casters, g.casters(i))
	}
	s := workshop()
	s.Name = fmt.Sprintf("generated %d", batteries)
	// One of the first modules is there already, another may go.
	sell := c.Batteries[1%batteries].Price / 2
	s.Have = []scenarios.Holding{
		{PartID: c.Batteries[0].ID, Count: 1},
		{PartID: c.Batteries[1%batteries].ID, Count: 1, Sell: &sell},
	}
	return question.Problem{Scenario: s, Catalog: c}
}

// generator draws parts.
type generator struct{ *rand.Rand }

// between draws a number from low to high, to three digits.
func (g *generator) between(low, high float64) float64 {
	x := low + (high-low)*g.Float64()
	digit := math.Pow(10, math.Floor(math.Log10(x))-2)
	return math.Round(x/digit) * digit
}

// kindsInGroup is how many kinds of battery share a parallel group.
const kindsInGroup = 4

// chemistries are what modules are made of: for each kWh the mass in kg, the volume in litres and the price
// in currency units, low and high, and what else tells them apart. Plausible for 2026, from memory.
var chemistries = []struct {
	name                   string
	weight                 int // how common
	volts, maxRise, minRel float64
	kg, litres, price      [2]float64
	usable, roundTrip      [2]float64
	cycles                 [2]float64
	rate, charge           [2]float64 // amperes for each ampere-hour
	milliohm               [2]float64 // of a kWh at 51.2 V; larger modules have less
}{
	{"LFP", 14, 51.2, 1.14, 0.875, [2]float64{7.8, 11}, [2]float64{4.6, 7.5}, [2]float64{175, 240},
		[2]float64{0.8, 0.95}, [2]float64{0.92, 0.97}, [2]float64{2500, 8000}, [2]float64{0.7, 1.2}, [2]float64{0.4, 0.9}, [2]float64{90, 160}},
	{"LFP", 3, 25.6, 1.14, 0.875, [2]float64{8, 11}, [2]float64{5, 7.5}, [2]float64{170, 340},
		[2]float64{0.8, 0.95}, [2]float64{0.92, 0.97}, [2]float64{2500, 6000}, [2]float64{0.7, 1}, [2]float64{0.4, 0.6}, [2]float64{25, 45}},
	{"NMC", 2, 51.8, 1.108, 0.865, [2]float64{6, 8}, [2]float64{3.2, 4.6}, [2]float64{130, 200},
		[2]float64{0.7, 0.85}, [2]float64{0.93, 0.97}, [2]float64{600, 1500}, [2]float64{0.7, 1.5}, [2]float64{0.3, 0.5}, [2]float64{100, 200}},
	{"AGM lead", 1, 12, 1.2, 0.875, [2]float64{24, 30}, [2]float64{10, 13}, [2]float64{150, 220},
		[2]float64{0.5, 0.6}, [2]float64{0.8, 0.86}, [2]float64{400, 900}, [2]float64{0.3, 0.5}, [2]float64{0.2, 0.25}, [2]float64{4, 8}},
}

// battery draws the i-th battery.
func (g *generator) battery(i int) catalog.Battery {
	commonness := 0
	for _, k := range chemistries {
		commonness += k.weight
	}
	grouped := i%3 == 0 // a third of them
	draw := g.IntN(commonness)
	if grouped {
		draw = 0 // which are rack modules of 51.2 V
	}
	k := &chemistries[0]
	for at := range chemistries {
		if k = &chemistries[at]; draw < k.weight {
			break
		}
		draw -= k.weight
	}
	between := func(r [2]float64) float64 { return g.between(r[0], r[1]) }
	kwh := g.between(1.2, 11) * k.volts / 52
	b := catalog.Battery{
		Chemistry: k.name, NominalV: k.volts, MinV: k.volts * k.minRel, MaxV: k.volts * k.maxRise,
		CapacityWh: 1000 * kwh, UsableFraction: between(k.usable), RoundTrip: between(k.roundTrip),
		ResistanceOhm: between(k.milliohm) / 1000 / kwh, CycleLife: math.Round(between(k.cycles)),
		MaxParallel: 2 + g.IntN(7), MaxSeries: max(1, int(math.Round(52/k.volts))),
	}
	b.ID, b.Name = fmt.Sprintf("battery-%03d", i), fmt.Sprintf("%s %.2f kWh", k.name, kwh)
	b.Price, b.MassKg = catalog.CentsFrom(math.Round(between(k.price)*kwh)), math.Round(between(k.kg)*kwh*10)/10
	ampHours := b.CapacityWh / k.volts
	b.MaxDischargeA, b.MaxChargeA = math.Round(between(k.rate)*ampHours), math.Round(between(k.charge)*ampHours)
	b.PeakDischargeA, b.ShortCircuitA = b.MaxDischargeA*1.5, b.MaxV/b.ResistanceOhm
	// A box of the right volume, about as deep as wide.
	volume := between(k.litres) * kwh / 1000
	b.LengthM = g.between(0.3, 0.5)
	b.WidthM = math.Min(b.LengthM, math.Round(1000*math.Sqrt(volume/g.between(0.3, 0.7)))/1000)
	b.HeightM = math.Round(1000*volume/b.LengthM/b.WidthM) / 1000
	if grouped {
		b.Group = fmt.Sprintf("family-%d", i/3/kindsInGroup)
	}
	return b
}

// inverter draws the i-th inverter.
func (g *generator) inverter(i int) catalog.Inverter {
	kw := g.between(1.5, 9)
	v := catalog.Inverter{
		DCMinV: 42, DCMaxV: 62, ACV: []string{"120/240", "120/240", "120/240", "120", "230"}[g.IntN(5)],
		ContinuousW: math.Round(kw*10) * 100, Efficiency: g.between(0.88, 0.955), IdleW: math.Round(5 + kw*g.between(4, 11)),
		ChargerA: math.Round(kw * g.between(8, 18)), MaxUnits: 1 + g.IntN(3),
	}
	if g.IntN(8) == 0 { // for a 24 V bus
		v.DCMinV, v.DCMaxV = 20, 32
	}
	v.SurgeW, v.LegW, v.ChargerACV = v.ContinuousW*2, v.ContinuousW, v.ACV
	v.LegSurgeW = v.SurgeW
	if v.ACV == "120/240" {
		v.LegW, v.LegSurgeW = v.ContinuousW/2, v.SurgeW/2
	}
	v.ID, v.Name = fmt.Sprintf("inverter-%02d", i), fmt.Sprintf("Inverter %s V %.1f kW", v.ACV, v.ContinuousW/1000)
	v.Price, v.MassKg = catalog.CentsFrom(math.Round(120+kw*g.between(130, 270))), math.Round(10*(3+kw*g.between(3, 6)))/10
	return v
}

// casters draws the i-th set of casters.
func (g *generator) casters(i int) catalog.Casters {
	kg := 5 * math.Round(g.between(40, 400)/5)
	k := catalog.Casters{SetOf: 4, RatingKg: kg, Brakes: 2, Swivel: 2, WheelM: 0.1}
	k.ID, k.Name = fmt.Sprintf("casters-%02d", i), fmt.Sprintf("Casters %g kg", kg)
	k.Price, k.MassKg = catalog.CentsFrom(math.Round(8+kg*g.between(0.3, 0.7))), math.Round(10*(1+kg*g.between(0.03, 0.05)))/10
	return k
}

// workshop is a scenario of middling size, on a 48 V bus with both legs in use.
func workshop() *scenarios.Scenario {
	load := func(name string, watts float64, count int, leg scenarios.Leg, from, to int, duty, start float64) scenarios.Load {
		return scenarios.Load{Name: name, Watts: watts, Count: count, Leg: leg, AllDay: from == to,
			FromMin: 60 * from, ToMin: 60 * to, Duty: duty, PowerFactor: 1, Start: start}
	}
	circuit := func(name string, volts, amps, length float64) scenarios.Circuit {
		return scenarios.Circuit{Name: name, Volts: volts, DeviceA: amps, LengthM: length, Neutral: true,
			AmbientC: 30, Bundled: 2, Drop: 0.03,
			Receptacle: &scenarios.Receptacle{Role: "receptacle", RatingA: amps, Count: 1}}
	}
	run := func(kind scenarios.RunKind, length float64) scenarios.Run {
		return scenarios.Run{Kind: kind, LengthM: length, AmbientC: 30, Bundled: 2, Drop: 0.03}
	}
	return &scenarios.Scenario{
		Currency: "USD", Rules: scenarios.NEC, Bus: scenarios.Bus{NominalV: 48, LowV: 46, HighV: 58.4},
		Loads: []scenarios.Load{
			load("fridge", 180, 1, scenarios.LegAuto, 0, 0, 0.4, 4),
			load("saw", 1400, 1, scenarios.LegA, 9, 12, 0.3, 2.5),
			load("compressor", 1500, 1, scenarios.LegBoth, 13, 17, 0.3, 2.5),
			load("lamps", 20, 12, scenarios.LegAuto, 7, 19, 1, 1),
			load("chargers", 90, 4, scenarios.LegAuto, 8, 18, 0.6, 1),
		},
		AutonomyH: 16, Recharge: &scenarios.Recharge{WithinH: 9, From: "grid"},
		Cart: scenarios.Cart{
			Casters: 4, WheelbaseM: 1.1, TrackM: 0.6, CasterMassHeightM: 0.08, Rolling: 0.02, Grip: 0.5,
			Frame:     scenarios.Mass{Name: "frame", MassKg: 40, HeightM: 0.4},
			DeckItems: []scenarios.Mass{{Name: "tools", MassKg: 8, HeightM: 0.9, OffsetM: 0.1}},
			Shelves: []scenarios.Shelf{
				{Name: "low", ElevationM: 0.15, LengthM: 1.2, DepthM: 0.55, Stack: 1, ClearHeightM: 0.35, MaxMassKg: 180, GapM: 0.01},
				{Name: "high", ElevationM: 0.55, LengthM: 1.2, DepthM: 0.55, Stack: 1, ClearHeightM: 0.35, MaxMassKg: 120, GapM: 0.01},
			},
			Backboard: scenarios.Backboard{ElevationM: 0.9, OffsetM: 0.2},
		},
		Limits:  scenarios.Limits{MassKg: 320, Budget: catalog.CentsFrom(6000), TiltDeg: 10, Reserve: 0.1},
		UseDays: 365, CasterFactor: 1.25, ACFaultA: 5000,
		Runs:     []scenarios.Run{run(scenarios.RunString, 1), run(scenarios.RunMain, 1.25), run(scenarios.RunFeeder, 1)},
		Circuits: []scenarios.Circuit{circuit("bench", 120, 20, 4), circuit("lights", 120, 15, 5), circuit("press", 240, 30, 5)},
		Needs: []scenarios.Need{
			{Role: "shunt", Count: 1, RatingA: 200}, {Role: "disconnect", Count: 1, RatingA: 200},
			{Role: "load-centre", Count: 1, RatingA: 60},
		},
		Tax: 0.07, Solver: scenarios.Solver{TimeLimitS: 60, Plans: 10},
	}
}

// generatorOf returns a generator of its own numbers.
func generatorOf(seed uint64) *generator {
	const stream = 0x50a7
	return &generator{Rand: rand.New(rand.NewPCG(seed, stream))}
}

// module draws the i-th solar module.
func (g *generator) module(i int) catalog.Solar {
	watts := 5 * math.Round(g.between(100, 450)/5)
	m := catalog.Solar{Watts: watts, VmpV: g.between(18, 42), VocTempPctPerC: -0.28, PowerTempPctPerC: -0.35, NOCTC: 45,
		MaxFuseA: 25, MaxSystemV: 600}
	m.VocV, m.ImpA = m.VmpV*1.2, watts/m.VmpV
	m.IscA = m.ImpA * 1.06
	m.LengthM = 1.1 + watts/600
	m.WidthM = watts / 210 / m.LengthM
	m.ID, m.Name = fmt.Sprintf("module-%02d", i), fmt.Sprintf("Module %.0f W", watts)
	m.Price, m.MassKg = catalog.CentsFrom(math.Round(20+watts*g.between(0.25, 0.6))), math.Round(watts*0.55)/10
	return m
}
