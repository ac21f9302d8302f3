// Package conductor holds the physics of a wire that no rule set disputes: diameter of a gauge,
// resistance at a temperature, voltage drop. Sources: ASTM B258-02 for the gauges, IEC 60028 for copper.
// Skin effect and reactance are left out: direct current has neither, and in the thin AC cables of a cart both are small
// beside the resistance (from memory).
package conductor

import (
	"math"

	"cartwright/catalog"
	"cartwright/catalog/source"
)

// CopperPerK is the temperature coefficient of resistance of annealed copper at 20 °C, in 1/K: IEC 60028.
// Confirmed in three independent texts.
const CopperPerK = 0.00393

// DiameterM returns the diameter in metres of a solid round conductor of a size. For gauges 36 to 4/0 it
// is the series of ASTM B258-02,
//
//	d = 0.005 in · 92^((36-n)/39),
//
// computed from the area that catalog.Size gives; a stranded conductor is thicker.
func DiameterM(size catalog.Size) float64 {
	return math.Sqrt(4*size.AreaMM2()/math.Pi) * metrePerMM
}

// metrePerMM is the metres in a millimetre.
const metrePerMM = 1e-3

// ResistanceAt returns at toC a resistance known at fromC, both in °C, where perK is the
// temperature coefficient at fromC.
//
//	R2 = R1 · (1 + α·(T2 - T1))      IEC 60028; NEC chapter 9 table 8, note 2
func ResistanceAt(resistance, perK, fromC, toC float64) float64 {
	return resistance * (1 + perK*(toC-fromC))
}

// DropV returns the volts lost along wayM metres of conductor; for a two-wire path wayM is there and back.
//
//	V = I · l · R      Ohm's law; FAA AC 43.13-1B, table 11-7
func DropV(currentA, wayM, ohmPerM float64) float64 { return currentA * wayM * ohmPerM }

// Sources lists the formulas of this room.
func Sources() []source.Source {
	return []source.Source{
		{Kind: source.Formula, Name: "diameter of a wire gauge", Source: "ASTM B258-02, d = 0.005 in * 92^((36-n)/39)",
			Confidence: "confirmed in one text; reproduces the circular mils of NEC chapter 9 table 8"},
		{Kind: source.Formula, Name: "resistance at a temperature", Source: "IEC 60028, R2 = R1 * (1 + 0.00393/K * (T2 - T1)) from 20 C for copper",
			Confidence: source.ThreeTexts},
		{Kind: source.Formula, Name: "voltage drop", Source: "Ohm's law, V = I * l * R; FAA AC 43.13-1B tables 11-7 and 11-8",
			Confidence: source.TwoTexts},
	}
}
