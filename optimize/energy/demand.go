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

	// What is on when everything that can be on together is on: duty is not counted.
	PeakW   []float64 // watts through the inverter, both legs together
	PeakAW  []float64 // of these, on leg A of a three-wire supply
	PeakBW  []float64 // of these, on leg B
	PeakDCW []float64 // watts on the bus itself

	// StartW is the largest single start increment among the loads through the inverter that are on:
	// (start - 1) * watts of one unit.
	StartW []float64

	Legs       []LegLoad // where each "auto" load was put, in the scenario's order
	LegsProven bool      // no other assignment has a smaller larger-leg peak

	NeedsBothLegs bool // a load lies between the legs and needs a three-wire 120/240 V supply
}

// LegLoad tells on which leg a load was put.
type LegLoad struct {
	Load string
	Leg  scenarios.Leg // LegA or LegB
}

// Steps returns the number of steps of the record.
func (d *Demand) Steps() int { return len(d.ACW) }

// RecordH returns the length of the record in hours.
func (d *Demand) RecordH() float64 { return float64(d.Steps()) * d.StepH }

// PeakTotalW returns the most watts that can be on at once through the inverter.
func (d *Demand) PeakTotalW() float64 { return largest(d.PeakW) }

// PeakLegW returns the most watts that can be on at once on the leg that has more.
//
// With an inverter of a single leg the legs have no meaning; the figure is then at most PeakTotalW.
func (d *Demand) PeakLegW() float64 { return max(largest(d.PeakAW), largest(d.PeakBW)) }

// SurgeW returns the most watts the inverter must stand for a moment: everything that can be on is on,
// and the one unit with the largest start increment starts. Two motors are not taken to start in the
// same moment.
//
//	max over t of (PeakW_t + StartW_t)      common practice, no source
func (d *Demand) SurgeW() float64 {
	surge := 0.0
	for t, w := range d.PeakW {
		surge = max(surge, w+d.StartW[t])
	}
	return surge
}

// PeakBusDCW returns the most watts that can be on at once on the bus itself, beside the inverter.
func (d *Demand) PeakBusDCW() float64 { return largest(d.PeakDCW) }

// largest returns the largest of some watts; 0 of none.
func largest(watts []float64) float64 {
	if len(watts) == 0 {
		return 0
	}
	return slices.Max(watts)
}
