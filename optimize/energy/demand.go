package energy

import (
	"slices"

	"cartwright/scenarios"
)

// Demand is what the loads take, step by step over a record that goes round: one day, or the days that
// were measured. All slices have one entry a step.
type Demand struct {
	StepH float64 // length of a step in hours

	ACW []float64 // mean watts through the inverter, duty counted
	DCW []float64 // mean watts on the bus itself, duty counted

	// What can be on together, in volt-amperes. Duty is not counted; of loads that are never on together only the
	// largest is.
	PeakVA  []float64 // through the inverter, both legs together
	PeakAVA []float64 // of these, on leg A of a three-wire supply
	PeakBVA []float64 // of these, on leg B
	PeakDCW []float64 // watts on the bus itself

	// The same with one load's start on top.
	SurgeVA    []float64
	LegSurgeVA []float64 // of the leg that has more

	Circuits   []CircuitLoad // what is on each circuit, in the scenario's order
	Legs       []LegLoad     // where each "auto" load was put, in the scenario's order
	LegsProven bool          // no other placing has a smaller larger-leg peak, or with the same peak a smaller surge

	NeedsBothLegs bool // a load is connected between the legs and needs a three-wire 120/240 V supply
}

// CircuitLoad is what is on a circuit.
type CircuitLoad struct {
	Circuit  string
	Leg      scenarios.Leg // of a three-wire supply: A or B of 120 V, both of 240 V; "" on the bus
	Loads    []string      // in the scenario's order
	CurrentA float64       // of what can be on together, continuous loads at 125 % under nec
	DeviceA  float64
}

// LegLoad says on which leg a load was put.
type LegLoad struct {
	Load string
	Leg  scenarios.Leg // LegA or LegB
}

// Steps returns the number of steps of the record.
func (d *Demand) Steps() int { return len(d.ACW) }

// RecordH returns the length of the record in hours.
func (d *Demand) RecordH() float64 { return float64(d.Steps()) * d.StepH }

// PeakTotalVA returns the most volt-amperes that the inverter may have to supply at once.
func (d *Demand) PeakTotalVA() float64 { return largest(d.PeakVA) }

// PeakLegVA returns the most volt-amperes that can be on at once on the leg that has more.
//
// With an inverter of a single leg the legs have no meaning; the figure is then at most PeakTotalVA.
func (d *Demand) PeakLegVA() float64 { return max(largest(d.PeakAVA), largest(d.PeakBVA)) }

// PeakSurgeVA returns the most volt-amperes the inverter must supply for a moment: everything that can be on is
// on, and one unit of one load starts.
func (d *Demand) PeakSurgeVA() float64 { return largest(d.SurgeVA) }

// PeakLegSurgeVA returns the same for the leg that has more.
func (d *Demand) PeakLegSurgeVA() float64 { return largest(d.LegSurgeVA) }

// PeakBusDCW returns the most watts that can be on at once on the bus itself, the inverter not counted.
func (d *Demand) PeakBusDCW() float64 { return largest(d.PeakDCW) }

// largest returns the largest of some watts; 0 if there are none.
func largest(watts []float64) float64 {
	if len(watts) == 0 {
		return 0
	}
	return slices.Max(watts)
}
