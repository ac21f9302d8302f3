package catalog

import (
	"slices"
	"strconv"
	"strings"
)

// Battery is a battery module.
type Battery struct {
	Part
	Chemistry      string
	Group          string  // parallel_group; "": it shares a bus only with the same part
	NominalV       float64 // of one module, as all voltages here
	MinV, MaxV     float64
	CapacityWh     float64 // nameplate
	UsableFraction float64 // 0..1
	RoundTrip      float64 // 0..1, energy out per energy in
	MaxDischargeA  float64
	PeakDischargeA float64 // default: MaxDischargeA
	MaxChargeA     float64
	ResistanceOhm  float64 // of the module, ohmic
	ShortCircuitA  float64 // default: MaxV / ResistanceOhm
	CycleLife      float64 // 0: not stated
	CalendarYears  float64 // years it lasts however little it is used; 0: not stated
	MaxParallel    int     // 0: not stated, no limit of the maker's
	MaxSeries      int
	MaxFuseA       float64 // 0: not stated; the largest device its maker allows on a string
	// OwnDeviceA is the rating of the device built in at its terminal, OwnInterruptingA the fault current
	// that device breaks; 0: none, or not stated.
	OwnDeviceA, OwnInterruptingA float64
	// Protocols name the protocols it can talk to an inverter with, in lower case, sorted, each once.
	Protocols []string
	LengthM   float64
	WidthM    float64
	HeightM   float64
}

// Inverter is an inverter, perhaps with a charger and a solar input.
type Inverter struct {
	Part
	DCMinV, DCMaxV float64
	ACV            string // "120", "230" or "120/240"
	ContinuousW    float64
	SurgeW         float64
	LegW           float64 // of each leg; default half of ContinuousW for 120/240, else ContinuousW
	LegSurgeW      float64 // of each leg; default half of SurgeW for 120/240, else SurgeW
	Efficiency     float64 // 0..1
	IdleW          float64
	ChargerA       float64  // dc amperes at bus voltage; 0: no charger
	ChargerACV     string   // what the charger is fed with: "120", "230", "240" or "120/240"; default ACV
	Protocols      []string // as of a Battery
	SolarMaxW      float64
	SolarMaxVocV   float64
	MPPTMinV       float64
	MPPTMaxV       float64
	MPPTMaxA       float64
	MPPTInputs     int
	MaxUnits       int // how many may work side by side
}

// SharesProtocol reports whether a battery and an inverter have a protocol in common.
func (b *Battery) SharesProtocol(i *Inverter) bool {
	return slices.ContainsFunc(b.Protocols, func(word string) bool { return slices.Contains(i.Protocols, word) })
}

// ChargesFrom reports whether its charger can be fed with a voltage: 120, 230 or 240 V.
func (i *Inverter) ChargesFrom(volts float64) bool {
	for _, v := range strings.Split(i.ChargerACV, "/") {
		if v == strconv.FormatFloat(volts, 'f', -1, 64) {
			return true
		}
	}
	return false
}

// Solar is a solar module.
type Solar struct {
	Part
	Watts            float64 // at 1000 W/m2 and a cell of 25 C, as are the voltages and currents
	VocV, VmpV       float64
	IscA, ImpA       float64
	VocTempPctPerC   float64 // percent a degree, negative
	PowerTempPctPerC float64 // percent a degree, negative; default -0.35
	NOCTC            float64 // nominal operating cell temperature, C; default 45
	MaxFuseA         float64 // 0: not stated; the largest series fuse its maker allows
	MaxSystemV       float64 // default 600
	LengthM, WidthM  float64 // 0: not stated
}
