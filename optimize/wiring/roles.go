package wiring

import (
	"cartwright/catalog"
	"cartwright/optimize/wiring/nec"
)

// The roles of sundries whose rating depends on the current through them.
const (
	RoleShunt      = "shunt"
	RoleDisconnect = "disconnect"
	RoleLoadCentre = "load-centre"
)

// ThroughA returns the least rating in amperes of a shunt or a disconnect, through which busA flows.
//
//	1.25 · (u·I_m + dc)      by analogy with NEC 215.3; common practice, no source
func ThroughA(busA float64) float64 { return nec.ContinuousA(busA) }

// FitsCentre reports whether a branch's device may go with a load centre: a breaker must be of the centre's mount, if
// it states one. Fuses have holders of their own and take no space.
func FitsCentre(dev *catalog.Device, centreMount string) bool {
	return dev == nil || dev.Type != breakerType || centreMount == "" || dev.Mount == centreMount
}
