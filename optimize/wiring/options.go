package wiring

import (
	"cartwright/catalog"
	"cartwright/optimize/plan"
	"cartwright/optimize/wiring/raceway"
)

// Options returns every option of the catalogue that serves the duty, apart from the fault current: all cables in one
// or two sets, with all devices, all grounds and all conduits that hold them, in the catalogue's order of each. An
// option serves where its InterruptingA is at least the fault current.
func Options(r Rules, d Duty, c *catalog.Catalog) []Option {
	var options []Option
	EachOption(r, d, c, func(o Option) { options = append(options, o) })
	return options
}

// EachOption calls keep for each of the Options: there may be thousands, of which few are worth their memory.
func EachOption(r Rules, d Duty, c *catalog.Catalog, keep func(Option)) {
	serve := keep
	if d.Conduit != "" {
		pipes := conduitsOf(d.Conduit, c)
		serve = func(o Option) { pipes.each(r, &d, o, keep) }
	}
	if !d.Ground {
		eachUngrounded(r, &d, c, func(o Option, _ *path, _ protector) { serve(o) })
		return
	}
	grounds := listedGrounds(r, c)
	eachUngrounded(r, &d, c, func(o Option, w *path, p protector) {
		grounds.each(r, &d, w, p, o, serve)
	})
}

// Ungrounded is Options without choosing ground and conduit, which are nil.
func Ungrounded(r Rules, d Duty, c *catalog.Catalog) []Option {
	var options []Option
	eachUngrounded(r, &d, c, func(o Option, _ *path, _ protector) { options = append(options, o) })
	return options
}

// Grounds returns the cables, in catalogue order, that serve as the ground of an option; none where the
// duty has no ground.
func Grounds(r Rules, d Duty, o Option, c *catalog.Catalog) []*catalog.Cable {
	if !d.Ground {
		return nil
	}
	_, w := pathOf(r, nil, &d, o.Cable, o.Sets)
	guards := protectors(&d, &o)
	var cables []*catalog.Cable
	listedGrounds(r, c).each(r, &d, &w, guards[len(guards)-1], o, func(g Option) { cables = append(cables, g.Ground) })
	return cables
}

// guarding is one way to protect a path: a device (or nil) and how many of it, and whether the battery's own serves too.
type guarding struct {
	device  *catalog.Device
	devices int
	builtIn bool
}

// guardings lists the ways to protect a duty's path that pass every check that does not depend on the cable.
func guardings(r Rules, d *Duty, c *catalog.Catalog) []guarding {
	buf := make([]Check, 0, mostChecks)
	if d.OwnBreakerA > 0 {
		if allPassed(r.ratingChecks(buf, d, protectorOf(d, nil))) {
			return []guarding{{}}
		}
		return nil
	}
	need := max(1, d.Devices)
	builtIn := d.BuiltInA > 0 && allPassed(r.ratingChecks(buf, d, protectorOf(d, nil)))
	var list []guarding
	if builtIn && need == 1 {
		list = append(list, guarding{builtIn: true})
	}
	for i := range c.Devices {
		dev := &c.Devices[i]
		if !allPassed(deviceChecks(r.ratingChecks(buf, d, protectorOf(d, dev)), d, dev, 0, r.clauses())) {
			continue
		}
		if builtIn && need > 1 {
			list = append(list, guarding{dev, need - 1, true})
		}
		list = append(list, guarding{dev, need, false})
	}
	return list
}

// eachUngrounded calls serve for every cable, number of sets and protection that serve together, in
// catalogue order.
func eachUngrounded(r Rules, d *Duty, c *catalog.Catalog, serve func(o Option, w *path, p protector)) {
	ways := guardings(r, d, c)
	if len(ways) == 0 {
		return
	}
	buf := make([]Check, 0, mostChecks)
	var w path // declared once: serve gets its address, which would allocate one per cable
	for i := range c.Cables {
		for sets := 1; sets <= mostSets; sets++ {
			var checks []Check
			if checks, w = pathOf(r, buf, d, &c.Cables[i], sets); !allPassed(checks) {
				continue
			}
			for _, way := range ways {
				o := Option{Cable: &c.Cables[i], Sets: sets, Device: way.device, Devices: way.devices, BuiltIn: way.builtIn}
				fits := true
				var last protector
				for _, p := range protectors(d, &o) {
					checks, _ := r.pairChecks(buf, d, &w, p)
					fits, last = fits && allPassed(checks), p
				}
				if fits {
					serve(o, &w, last)
				}
			}
		}
	}
}

// grounds are the cables that may be a ground, with their areas, which are slow to compute (a power).
type grounds []struct {
	cable *catalog.Cable
	mm2   float64
}

func listedGrounds(r Rules, c *catalog.Catalog) grounds {
	var g grounds
	for i := range c.Cables {
		if cable := &c.Cables[i]; r.groundListed(cable) {
			g = append(g, struct {
				cable *catalog.Cable
				mm2   float64
			}{cable, cable.Size.AreaMM2()})
		}
	}
	return g
}

// each calls keep for the option with each ground that serves it. The least area is computed once for neighbouring
// cables of one material.
func (g grounds) each(r Rules, d *Duty, w *path, p protector, o Option, keep func(Option)) {
	material, least, ok := "", 0.0, false
	for i := range g {
		if g[i].cable.Material != material {
			material = g[i].cable.Material
			least, ok = r.groundMM2(d, w, p, material)
		}
		if ok && groundSize(g[i].mm2, least, "").Passed {
			o.Ground = g[i].cable
			keep(o)
		}
	}
}

// conduits are the catalogue's conduits of one type.
type conduits []*catalog.Conduit

func conduitsOf(kind string, c *catalog.Catalog) conduits {
	var list conduits
	for i := range c.Conduits {
		if c.Conduits[i].Type == kind {
			list = append(list, &c.Conduits[i])
		}
	}
	return list
}

// each calls keep for the option with each conduit that holds its conductors.
func (p conduits) each(r Rules, d *Duty, o Option, keep func(Option)) {
	for _, pipe := range p {
		if Holds(r, d, &o, pipe) {
			o.Conduit = pipe
			keep(o)
		}
	}
}

// Holds reports whether a conduit holds all conductors of an option, sets and ground included.
func Holds(r Rules, d *Duty, o *Option, pipe *catalog.Conduit) bool {
	taken, conductors := 0.0, 0
	add := func(c *catalog.Cable, n int) bool {
		if c == nil || n == 0 {
			return true
		}
		mm2, ok := raceway.AreaMM2(c)
		taken += float64(n) * mm2
		conductors += n
		return ok
	}
	if !add(o.Cable, o.Sets*d.Conductors) || !add(o.Ground, 1) {
		return false
	}
	_, metric := r.(iecRules)
	return plan.AtMost(taken, raceway.Fill(conductors, metric)*pipe.InsideMM2)
}

// Bond returns the options of the bond of frame and bus: every cable that may be a ground, in every conduit that holds
// it. Their size is not judged here; see BondMM2.
func Bond(r Rules, d Duty, c *catalog.Catalog) []Option {
	var options []Option
	pipes := conduitsOf(d.Conduit, c)
	for i := range c.Cables {
		if !r.groundListed(&c.Cables[i]) {
			continue
		}
		o := Option{Sets: 1, Ground: &c.Cables[i]}
		if d.Conduit == "" {
			options = append(options, o)
		} else {
			pipes.each(r, &d, o, func(o Option) { options = append(options, o) })
		}
	}
	return options
}

// BondMM2 returns the least area in mm2 that a main, built by an option, asks of a bond of a material: under nec by the
// rating of its device, under iec by its line area. ok is false where no size is large enough.
func BondMM2(r Rules, main Duty, o Option, material string) (mm2 float64, ok bool) {
	if _, metric := r.(iecRules); metric {
		return r.groundMM2(&main, &path{cable: o.Cable, sets: o.Sets}, protector{}, material)
	}
	return bondNECMM2(main, o, material)
}
