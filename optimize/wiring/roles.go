package wiring

import (
	"cartwright/catalog"
	"cartwright/optimize/wiring/nec"
)

// The roles of sundries that carry what flows through them.
const (
	RoleShunt      = "shunt"
	RoleDisconnect = "disconnect"
	RoleLoadCentre = "load-centre"
)

// ThroughA returns the least rating in amperes of what the whole bus current flows through: a shunt, a disconnect.
//
//	1.25 · (u·I_m + dc)      NEC 215.3 in likeness; common practice, no source
func ThroughA(busA float64) float64 { return nec.ContinuousA(busA) }

// FitsCentre reports whether a branch's device can be in a load centre: a breaker of the mount it states. Fuses have
// holders of their own and take no space.
func FitsCentre(dev *catalog.Device, centreMount string) bool {
	return dev == nil || dev.Type != breakerType || centreMount == "" || dev.Mount == centreMount
}
