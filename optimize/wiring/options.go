package wiring

import "cartwright/catalog"

// Options returns every option of the catalogue that serves the duty, the fault current left aside: all
// cables in one or two sets, with all devices, with all cables as ground, in that order of the
// catalogue. An option also serves behind a fault current that InterruptingA of its device reaches.
func Options(r Rules, d Duty, c *catalog.Catalog) []Option {
	devices := servingDevices(r, &d, c)
	if len(devices) == 0 {
		return nil
	}
	var options []Option
	var buf [mostChecks]Check
	for i := range c.Cables {
		for sets := 1; sets <= mostSets; sets++ {
			checks, w := r.path(buf[:0], &d, &c.Cables[i], sets)
			if !allPassed(checks) {
				continue
			}
			for _, dev := range devices {
				p := protectorOf(&d, dev)
				if checks, _ := r.pairChecks(buf[:0], &d, &w, p); !allPassed(checks) {
					continue
				}
				o := Option{Cable: &c.Cables[i], Sets: sets, Device: dev}
				if !d.Ground {
					options = append(options, o)
					continue
				}
				options = appendGrounded(options, r, &w, p, o, c)
			}
		}
	}
	return options
}

// servingDevices returns the devices that serve the duty as far as the cable has no say: one nil where
// the duty has an own breaker that serves.
func servingDevices(r Rules, d *Duty, c *catalog.Catalog) []*catalog.Device {
	var buf [mostChecks]Check
	if d.OwnBreakerA > 0 {
		if allPassed(r.ratingChecks(buf[:0], d, protectorOf(d, nil))) {
			return []*catalog.Device{nil}
		}
		return nil
	}
	var devices []*catalog.Device
	for i := range c.Devices {
		dev := &c.Devices[i]
		checks := r.ratingChecks(buf[:0], d, protectorOf(d, dev))
		if allPassed(deviceChecks(checks, d, dev, 0)) {
			devices = append(devices, dev)
		}
	}
	return devices
}

// appendGrounded adds the option with each cable that serves it as a ground.
func appendGrounded(options []Option, r Rules, w *path, p protector, o Option, c *catalog.Catalog) []Option {
	for i := range c.Cables {
		if groundCheck(r, w, p, &c.Cables[i]).Passed {
			o.Ground = &c.Cables[i]
			options = append(options, o)
		}
	}
	return options
}
