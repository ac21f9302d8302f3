package wiring

import "cartwright/catalog"

// DeviceAlone returns the checks of a device for a duty that do not depend on the cable, without the fault current:
// those by which Options leaves devices out.
func DeviceAlone(r Rules, d Duty, dev *catalog.Device) []Check {
	return deviceChecks(r.ratingChecks(nil, &d, protectorOf(&d, dev)), &d, dev, 0, r.clauses())
}

// CableAlone returns the checks of a cable in so many sets for a duty that do not depend on the device: those by which
// Options leaves cables out.
func CableAlone(r Rules, d Duty, cable *catalog.Cable, sets int) []Check {
	checks, _ := pathOf(r, nil, &d, cable, sets)
	return checks
}
