package year

// Trace is a year hour by hour.
type Trace struct {
	StoredWh  []float64 // left in the store at the hour's end
	ShortWh   []float64
	SpilledWh []float64
}

// TraceOf runs a store through the year as Simulate does and records every hour.
func TraceOf(net []float64, s Store) *Trace {
	n := len(net)
	t := &Trace{StoredWh: make([]float64, n), ShortWh: make([]float64, n), SpilledWh: make([]float64, n)}
	stored := begin(net, s).stored
	for h, w := range net {
		if w < 0 {
			stored += w
			if stored < 0 {
				t.ShortWh[h], stored = -stored, 0
			}
		} else {
			x := min(w, s.ChargeW)
			if full := stored + x*s.RoundTrip; full < s.CapacityWh {
				stored = full
			} else {
				x = min(x, (s.CapacityWh-stored)/s.RoundTrip)
				stored = s.CapacityWh
			}
			t.SpilledWh[h] = w - x
		}
		t.StoredWh[h] = stored
	}
	return t
}
