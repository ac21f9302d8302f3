package wiring

import "cartwright/catalog"

// Options returns every option of the catalogue that serves the duty, the fault current left aside: all
// cables in one or two sets, with all devices, with all cables as ground, in that order of the
// catalogue. An option also serves behind a fault current that InterruptingA of its device reaches.
func Options(r Rules, d Duty, c *catalog.Catalog) []Option {
	if !d.Ground {
		return Ungrounded(r, d, c)
	}
	grounds := listedGrounds(r, c)
	var options []Option
	eachUngrounded(r, &d, c, func(o Option, w *path, p protector) {
		options = grounds.append(options, r, w, p, o)
	})
	return options
}

// Ungrounded is Options with the ground left nil, for a search that chooses the grounds by themselves:
// an option serves with each of Grounds. It may have none.
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
	var cables []*catalog.Cable
	for _, grounded := range listedGrounds(r, c).append(nil, r, &w, protectorOf(&d, o.Device), o) {
		cables = append(cables, grounded.Ground)
	}
	return cables
}

// eachUngrounded calls serve for every cable, number of sets and device that serve together, in
// catalogue order.
func eachUngrounded(r Rules, d *Duty, c *catalog.Catalog, serve func(o Option, w *path, p protector)) {
	devices := servingDevices(r, d, c)
	if len(devices) == 0 {
		return
	}
	buf := make([]Check, 0, mostChecks)
	var w path // one for all, as it is handed on by address
	for i := range c.Cables {
		for sets := 1; sets <= mostSets; sets++ {
			var checks []Check
			if checks, w = pathOf(r, buf, d, &c.Cables[i], sets); !allPassed(checks) {
				continue
			}
			for _, dev := range devices {
				p := protectorOf(d, dev)
				if checks, _ := r.pairChecks(buf, d, &w, p); allPassed(checks) {
					serve(Option{Cable: &c.Cables[i], Sets: sets, Device: dev}, &w, p)
				}
			}
		}
	}
}

// servingDevices returns the devices that serve the duty as far as the cable has no say: one nil where
// the duty has an own breaker that serves.
func servingDevices(r Rules, d *Duty, c *catalog.Catalog) []*catalog.Device {
	buf := make([]Check, 0, mostChecks)
	if d.OwnBreakerA > 0 {
		if allPassed(r.ratingChecks(buf, d, protectorOf(d, nil))) {
			return []*catalog.Device{nil}
		}
		return nil
	}
	var devices []*catalog.Device
	for i := range c.Devices {
		dev := &c.Devices[i]
		checks := r.ratingChecks(buf, d, protectorOf(d, dev))
		if allPassed(deviceChecks(checks, d, dev, 0, r.clauses())) {
			devices = append(devices, dev)
		}
	}
	return devices
}

// grounds are the cables that may be a ground, with their areas, which cost a power to compute.
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

// append adds the option with each ground that serves it. The least area is asked once for each run of
// cables of one material.
func (g grounds) append(options []Option, r Rules, w *path, p protector, o Option) []Option {
	material, least, ok := "", 0.0, false
	for i := range g {
		if g[i].cable.Material != material {
			material = g[i].cable.Material
			least, ok = r.groundMM2(w, p, material)
		}
		if ok && groundSize(g[i].mm2, least, "").Passed {
			o.Ground = g[i].cable
			options = append(options, o)
		}
	}
	return options
}
