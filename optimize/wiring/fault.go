package wiring

import "cartwright/catalog"

// ShortCircuitA returns the short-circuit current in amperes of one string of a battery: what the maker
// states, or else the module's highest voltage over its resistance. Modules in series add voltage and
// resistance alike, so their number changes nothing.
//
//	I_sc = E / R = (n·e) / (n·r) = e / r      electrical fundamentals; two independent texts
func ShortCircuitA(b *catalog.Battery) float64 {
	if b.ShortCircuitA > 0 {
		return b.ShortCircuitA
	}
	return b.MaxV / b.ResistanceOhm
}

// BusFaultA returns the prospective fault current in amperes on the bus bars, the sum over all strings:
// strings[i] strings of batteries[i]. It is what the device of a main must break.
func BusFaultA(batteries []*catalog.Battery, strings []int) float64 {
	sum := 0.0
	for i, b := range batteries {
		sum += float64(strings[i]) * ShortCircuitA(b)
	}
	return sum
}

// StringFaultA returns the prospective fault current in amperes that the device of one string must break,
// where own is that string's short-circuit current and total the sum over all strings, own included. A
// fault on the bus bars draws own through the device; a fault on the string's side draws that of all the others.
func StringFaultA(own, total float64) float64 { return max(own, total-own) }
