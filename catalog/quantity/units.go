package quantity

import "math/big"

// unit is one unit of a dimension.
type unit struct {
	spellings []string // the first is the one shown
	factor    string   // SI units in one of it, an exact decimal or fraction
	zero      string   // what to take off before multiplying, "" for nothing; only temperatures have it
}

// toSI returns (x - zero) * factor.
func (u unit) toSI(x *big.Rat) *big.Rat {
	r := new(big.Rat).Set(x)
	if u.zero != "" {
		r.Sub(r, rational(u.zero))
	}
	return r.Mul(r, rational(u.factor))
}

// rational reads a factor of the tables below, all of which a test reads.
func rational(text string) *big.Rat {
	r, _ := new(big.Rat).SetString(text)
	return r
}

// absoluteZeroC is 0 K in degrees Celsius, exact: BIPM, The International System of Units (9th edition,
// 2019), section 2.3.1.
const absoluteZeroC = -273.15

// dimensions lists the units of each Dimension, the SI unit of the house first.
//
// Factors are exact. Metric prefixes, the minute, hour and day, the degree: BIPM, The International System
// of Units (9th edition, 2019), tables 7 and 8. Foot, inch and pound: the international yard and pound
// agreement of 1959, 1 yd = 0.9144 m, 1 lb = 0.45359237 kg, 16 oz = 1 lb. Standard gravity: 3rd CGPM 1901,
// 9.80665 m/s2; hence 1 kgf = 9.80665 N and 1 lbf = 0.45359237 * 9.80665 N = 4.4482216152605 N. Horsepower: 550 ft lbf/s (NIST Special
// Publication 811, appendix B.8, 7.456999E+02 W) = 550 * 0.3048 * 4.4482216152605 W.
var dimensions = [...]struct {
	name, art string // with its article, "a mass"
	example   string
	units     []unit
}{
	Mass: {"mass", "a", "450 lb", []unit{
		{[]string{"kg"}, "1", ""},
		{[]string{"g"}, "0.001", ""},
		{[]string{"lb", "lbs"}, "0.45359237", ""},
		{[]string{"oz"}, "0.028349523125", ""}, // a sixteenth of a pound
		{[]string{"t"}, "1000", ""},            // tonne
	}},
	Length: {"length", "a", "20 in", []unit{
		{[]string{"m"}, "1", ""},
		{[]string{"cm"}, "0.01", ""},
		{[]string{"mm"}, "0.001", ""},
		{[]string{"in", "inch", "inches"}, "0.0254", ""}, // a thirty-sixth of a yard
		{[]string{"ft", "foot", "feet"}, "0.3048", ""},   // a third of a yard
	}},
	Duration: {"duration", "a", "18 h", []unit{
		{[]string{"h", "hr", "hrs", "hour", "hours"}, "1", ""},
		{[]string{"min", "minute", "minutes"}, "1/60", ""},
		{[]string{"s"}, "1/3600", ""},
		{[]string{"days", "day", "d"}, "24", ""},
	}},
	Current: {"current", "a", "20 A", []unit{
		{[]string{"A"}, "1", ""},
		{[]string{"mA"}, "0.001", ""},
		{[]string{"kA"}, "1000", ""},
	}},
	Voltage: {"voltage", "a", "48 V", []unit{
		{[]string{"V"}, "1", ""},
		{[]string{"mV"}, "0.001", ""},
		{[]string{"kV"}, "1000", ""},
	}},
	Power: {"power", "a", "1.2 kW", []unit{
		{[]string{"W"}, "1", ""},
		{[]string{"kW"}, "1000", ""},
		{[]string{"hp", "HP"}, "745.69987158227022", ""}, // 550 foot-pounds of force a second
	}},
	Energy: {"energy", "an", "5.1 kWh", []unit{
		{[]string{"Wh"}, "1", ""},
		{[]string{"kWh"}, "1000", ""},
		{[]string{"kJ"}, "10/36", ""},
		{[]string{"MJ"}, "10000/36", ""},
	}},
	Temperature: {"temperature", "a", "35 C", []unit{
		{[]string{"C", "°C"}, "1", ""},
		{[]string{"F", "°F"}, "5/9", "32"},
	}},
	Ratio: {"ratio", "a", "2 %", []unit{
		{[]string{"%"}, "0.01", ""},
	}},
	Force: {"force", "a", "150 N", []unit{
		{[]string{"N"}, "1", ""},
		{[]string{"kN"}, "1000", ""},
		{[]string{"kgf"}, "9.80665", ""},
		{[]string{"lbf"}, "4.4482216152605", ""},
	}},
	Angle: {"angle", "an", "10 deg", []unit{
		{[]string{"deg", "°"}, "1", ""},
	}},
}
