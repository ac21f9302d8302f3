package symbol

// Disconnect is a switch that disconnects.
//
// Source: IEC 60617-7 07-13-08, switch-disconnector, a contact with a ring and a bar; IEEE 315 clause 4.6,
// knife switch.
func Disconnect(s Standard) Symbol {
	if s == IEC {
		return Symbol{
			Name: "switch-disconnector", Source: "IEC 60617-7, 07-13-08",
			marks: append(leads(11), line(11, 0, -11, -12), line(-11, -5, -11, 5), ring(-8, 0)),
		}
	}
	return Symbol{
		Name: "disconnect switch", Source: "IEEE 315, 4.6",
		marks: append(leads(11), line(11, 0, -9, -12), ring(-11, 0), ring(11, 0)),
	}
}
