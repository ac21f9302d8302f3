package picture

import (
	"math"

	"cartwright/optimize/energy"
	"cartwright/optimize/energy/sun"
	"cartwright/optimize/energy/year"
)

// track is the year of a plan's store, hour by hour.
type track struct {
	*year.Trace
	capacityWh float64
}

// track runs the plan's store through the scenario's year of sun; nil where there is no sun or no array.
func (q *Subject) track() (*track, error) {
	s := q.Scenario
	inverter := q.inverter()
	if s.Sun == nil || len(q.Plan.Core.Solar) == 0 || inverter == nil {
		return nil, nil
	}
	demand, err := energy.DemandOf(s)
	if err != nil {
		return nil, err
	}
	array, units := q.Plan.Core.Solar[0], max(1, q.Plan.Core.Inverter.Units)
	var watts []float64
	for i := range q.Catalog.Solar {
		if m := &q.Catalog.Solar[i]; m.ID == array.Part {
			watts = sun.Of(s.Sun).ModuleW(m, s.Sun.Losses)
		}
	}
	if watts == nil {
		return nil, nil
	}
	// The fullest unit has ceil(inputs / units) of the inputs, and takes solar_max_w.
	most := inverter.SolarMaxW * float64(array.Inputs) / math.Ceil(float64(array.Inputs)/float64(units))
	load := year.LoadOf(s, demand)
	hours := year.HoursOf(watts, array.Series*array.Parallel*array.Inputs, most, load, load.BusW(inverter.Efficiency, float64(units)*inverter.IdleW))
	store := year.Store{CapacityWh: 1000 * q.Plan.UsableKWh, RoundTrip: 1}
	var strings []energy.Strings
	for _, b := range q.Plan.Core.Batteries {
		if part := q.battery(b.Part); part != nil {
			strings = append(strings, energy.Strings{Battery: part, Series: b.Series, Count: b.Strings})
			store.RoundTrip = math.Min(store.RoundTrip, part.RoundTrip)
		}
	}
	store.ChargeW = energy.ChargeA(strings) * s.Bus.NominalV
	return &track{Trace: year.TraceOf(hours.Net(), store), capacityWh: store.CapacityWh}, nil
}
