package quantity_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"cartwright/catalog/quantity"

	"pgregory.net/rapid"
)

func ExampleParse() {
	mass, _ := quantity.Parse("450 lb", quantity.Mass)
	shelf, _ := quantity.Parse("20 in", quantity.Length)
	_, err := quantity.Parse("450", quantity.Mass)
	fmt.Println(mass, "kg")
	fmt.Println(shelf, "m")
	fmt.Println(err)
	// Output:
	// 204.1165665 kg
	// 0.508 m
	// "450" has no unit; add kg, g, lb, oz or t, for example "450 kg"
}

// all is every dimension, for the laws that hold for each.
var all = []quantity.Dimension{
	quantity.Mass, quantity.Length, quantity.Duration, quantity.Current, quantity.Voltage, quantity.Power,
	quantity.Energy, quantity.Temperature, quantity.Ratio, quantity.Force, quantity.Angle,
}

func TestParse(t *testing.T) {
	for _, tt := range []struct {
		text string
		d    quantity.Dimension
		want float64 // exact: conversions are rounded once
	}{
		{"450 lb", quantity.Mass, 204.1165665},   // 450 * 0.45359237
		{"16 oz", quantity.Mass, 0.45359237},     // 16 oz = 1 lb
		{"12.5kg", quantity.Mass, 12.5},          // no space
		{"  3\tkg ", quantity.Mass, 3},           // any space
		{"2 t", quantity.Mass, 2000},             // tonne
		{"800 g", quantity.Mass, 0.8},            // rounded once: 800*0.001 is the same here
		{"20 in", quantity.Length, 0.508},        // 25.4 mm each
		{"12 ft", quantity.Length, 3.6576},       // 0.3048 m each
		{"25.4 mm", quantity.Length, 0.0254},     // equal to 1 in
		{"1 inch", quantity.Length, 0.0254},      //
		{"-6 in", quantity.Length, -0.1524},      // an offset to the left
		{"1e3 mm", quantity.Length, 1},           //
		{".5 m", quantity.Length, 0.5},           //
		{"17 3/8 in", quantity.Length, 0.441325}, // 17.375 * 25.4 mm
		{"17-3/8 in", quantity.Length, 0.441325}, //
		{"-3/8 in", quantity.Length, -0.009525},  //
		{"1/3 ft", quantity.Length, 0.1016},      // 4 in
		{"3 ft 6 in", quantity.Length, 1.0668},   // 42 in
		{"3ft6in", quantity.Length, 1.0668},      //
		{"-3 ft 6 in", quantity.Length, -1.0668}, //
		{"-0 ft 6 in", quantity.Length, -0.1524}, //
		{"3 feet 6 1/2 inches", quantity.Length, 1.0795},
		{"1 ft 2.5 in", quantity.Length, 0.3683},
		{"2 hp", quantity.Power, 1491.39974316454044}, // 2 * 550 ft lbf/s
		{"3/4 hp", quantity.Power, 559.274903686702665},
		{"18 h", quantity.Duration, 18},       //
		{"90 min", quantity.Duration, 1.5},    //
		{"2 days", quantity.Duration, 48},     //
		{"1 day", quantity.Duration, 24},      //
		{"60 s", quantity.Duration, 1.0 / 60}, //
		{"5 kA", quantity.Current, 5000},      //
		{"20 A", quantity.Current, 20},        //
		{"240 V", quantity.Voltage, 240},      //
		{"1.2 kW", quantity.Power, 1200},      //
		{"5.1 kWh", quantity.Energy, 5100},    //
		{"3.6 MJ", quantity.Energy, 1000},     // 1 kWh by definition
		{"35 C", quantity.Temperature, 35},    //
		{"35 °C", quantity.Temperature, 35},   //
		{"95 F", quantity.Temperature, 35},    // (95 - 32) * 5/9
		{"-40 F", quantity.Temperature, -40},  // where the scales meet
		{"-273.15 C", quantity.Temperature, -273.15},
		{"2 %", quantity.Ratio, 0.02},                //
		{"8.25%", quantity.Ratio, 0.0825},            //
		{"150 N", quantity.Force, 150},               //
		{"15 kgf", quantity.Force, 147.09975},        // 15 * 9.80665
		{"1 lbf", quantity.Force, 4.4482216152605},   //
		{"44 lbf", quantity.Force, 195.721751071462}, // 44 * 4.4482216152605
		{"10 deg", quantity.Angle, 10},               //
		{"0 mm", quantity.Length, 0},                 //
		{"1e-400 kg", quantity.Mass, 0},              // nearest float64
	} {
		t.Run(tt.text, func(t *testing.T) {
			got, err := quantity.Parse(tt.text, tt.d)
			if err != nil || got != tt.want {
				t.Errorf("Parse(%q, %v) = %v, %v; want %v", tt.text, tt.d, got, err, tt.want)
			}
		})
	}
}

func TestParseErrors(t *testing.T) {
	for _, tt := range []struct {
		text string
		d    quantity.Dimension
		want string
	}{
		{"450", quantity.Mass, `"450" has no unit; add kg, g, lb, oz or t, for example "450 kg"`},
		{"18", quantity.Duration, `"18" has no unit; add h, min, s or days, for example "18 h"`},
		{"2", quantity.Ratio, `"2" has no unit; add %, for example "2 %"`},
		{"18 minuts", quantity.Duration, `unknown unit "minuts" in "18 minuts"; did you mean "minute"? Write h, min, s or days`},
		{"5 Kw", quantity.Power, `unknown unit "Kw" in "5 Kw"; did you mean "kW"? Write W, kW or hp`},
		{"3 furlongs", quantity.Length, `unknown unit "furlongs" in "3 furlongs"; write m, cm, mm, in or ft`},
		{"20 in", quantity.Mass, `"20 in" is a length, not a mass; write kg, g, lb, oz or t, for example "450 lb"`},
		{"450 lb", quantity.Force, `"450 lb" is a mass, not a force; write N, kN, kgf or lbf, for example "150 N"`},
		{"9 Wh", quantity.Angle, `"9 Wh" is an energy, not an angle; write deg, for example "10 deg"`},
		{"", quantity.Mass, `"" is not a number with a unit; write for example "450 lb"`},
		{"lots", quantity.Mass, `"lots" is not a number with a unit; write for example "450 lb"`},
		{"NaN kg", quantity.Mass, `"NaN kg" is not a number with a unit; write for example "450 lb"`},
		{"Inf h", quantity.Duration, `"Inf h" is not a number with a unit; write for example "18 h"`},
		{"0x10 kg", quantity.Mass, `unknown unit "x10 kg" in "0x10 kg"; write kg, g, lb, oz or t`},
		{"1,5 kg", quantity.Mass, `"1,5 kg" is not a number with a unit; write for example "450 lb"`},
		{"6 ft 2", quantity.Length, `unknown unit "ft 2" in "6 ft 2"; write m, cm, mm, in or ft`},
		{"6 ft 12 in", quantity.Length, `"6 ft 12 in" has 12 inches or more beside the feet; write for example "3 ft 6 in"`},
		{"6 ft 2 3 in", quantity.Length, `"6 ft 2 3 in" is not a number of feet and inches; write for example "3 ft 6 in" or "3 ft 6 1/2 in"`},
		{"6 ft 2e9 in", quantity.Length, `"6 ft 2e9 in" has 12 inches or more beside the feet; write for example "3 ft 6 in"`},
		{"6 ft 2 in", quantity.Mass, `unknown unit "ft 2 in" in "6 ft 2 in"; write kg, g, lb, oz or t`},
		{"3/0 in", quantity.Length, `"3/0 in" is not a number with a unit; write for example "20 in"`},
		{"9/8 in", quantity.Length, `"9/8 in" is not a number with a unit; write for example "20 in"`},
		{"17 3/8", quantity.Length, `"17 3/8" has no unit; add m, cm, mm, in or ft, for example "17 3/8 in"`},
		{"0.15", quantity.Ratio, `"0.15" has no unit; add %, for example "15 %"`},
		{"1 2 kg", quantity.Mass, `"1 2 kg" is not a number with a unit; write for example "450 lb"`},
		{"1e400 kg", quantity.Mass, `"1e400 kg" is too large a number; write for example "450 lb"`},
		{"1e999999999999 kg", quantity.Mass, `"1e999999999999 kg" is too large a number; write for example "450 lb"`},
		{"1e308 t", quantity.Mass, `"1e308 t" is too large a number; write for example "450 lb"`},
		{"-500 F", quantity.Temperature, `"-500 F" is below absolute zero, -273.15 C; write for example "35 C"`},
		{strings.Repeat("9", 90) + " kg", quantity.Mass, `an amount of 93 characters is too long; write for example "450 lb"`},
	} {
		t.Run(tt.text, func(t *testing.T) {
			v, err := quantity.Parse(tt.text, tt.d)
			if err == nil {
				t.Fatalf("Parse(%q, %v) = %v, want error %q", tt.text, tt.d, v, tt.want)
			}
			if err.Error() != tt.want {
				t.Errorf("Parse(%q, %v)\n got %s\nwant %s", tt.text, tt.d, err, tt.want)
			}
			var e *quantity.Error
			if !errors.As(err, &e) || e.Wrong == "" || e.Right == "" {
				t.Errorf("error of %q does not say both what is wrong and what would be right: %#v", tt.text, err)
			}
		})
	}
}

// Every unit a dimension names must be read by it, and by no other dimension.
func TestUnitsBelongToOneDimension(t *testing.T) {
	for _, d := range all {
		if len(d.Units()) == 0 {
			t.Errorf("%v has no units", d)
		}
		if _, err := quantity.Parse(d.Example(), d); err != nil {
			t.Errorf("the example of %v is refused: %v", d, err)
		}
		for _, u := range d.Units() {
			for _, other := range all {
				v, err := quantity.Parse("1 "+u, other)
				if other == d && (err != nil || !(v > -20)) {
					t.Errorf("1 %s as %v: %v, %v", u, d, v, err)
				}
				if other != d && err == nil {
					t.Errorf("1 %s is read both as %v and as %v", u, d, other)
				}
			}
		}
	}
}

// Format and Parse are inverse, bit for bit.
func TestFormatRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.SampledFrom(all).Draw(t, "dimension")
		// A ratio a hundredth of the largest float64 is the most that fits when written in percent.
		v := rapid.Float64Range(-math.MaxFloat64/100, math.MaxFloat64/100).Draw(t, "value")
		if d == quantity.Temperature {
			v = math.Abs(v)
		}
		text := quantity.Format(v, d)
		got, err := quantity.Parse(text, d)
		if err != nil || got != v {
			t.Fatalf("Format(%v, %v) = %q, which reads as %v, %v", v, d, text, got, err)
		}
	})
}

func TestFormat(t *testing.T) {
	for _, tt := range []struct {
		si   float64
		d    quantity.Dimension
		want string
	}{
		{0, quantity.Ratio, "0 %"},
		{0.02, quantity.Ratio, "2 %"},
		{0.07, quantity.Ratio, "7 %"}, // 0.07 * 100 is 7.000000000000001
		{0.0825, quantity.Ratio, "8.25 %"},
		{-0.5, quantity.Ratio, "-50 %"},
		{1, quantity.Ratio, "100 %"},
		{0.0001, quantity.Ratio, "0.01 %"},
		{1e-9, quantity.Ratio, "1e-7 %"},
		{1e30, quantity.Ratio, "1e32 %"},
		{204.1165665, quantity.Mass, "204.1165665 kg"},
		{35, quantity.Temperature, "35 C"},
		{10e6, quantity.Power, "10000000 W"}, // was "1e+07 W" in the message on a load out of range
		{1e6, quantity.Current, "1000000 A"},
		{1e15, quantity.Current, "1e+15 A"},
		{0.0001, quantity.Length, "0.0001 m"},
		{0.00001, quantity.Length, "1e-05 m"},
	} {
		if got := quantity.Format(tt.si, tt.d); got != tt.want {
			t.Errorf("Format(%v, %v) = %q, want %q", tt.si, tt.d, got, tt.want)
		}
	}
}

func FuzzParse(f *testing.F) {
	for _, seed := range []string{"450 lb", "18 h", "2 %", "35 C", "-40 F", "1e3 mm", ".5m", "6 ft 2 in", "NaN kg", "1e-400 kg", "°C", "17 3/8 in", "3 ft 6 1/2 in", "3/4 hp", "-0 ft 6 in"} {
		f.Add(seed, 0)
	}
	f.Fuzz(func(t *testing.T, text string, i int) {
		if i < 0 || i >= len(all) {
			return
		}
		d := all[i]
		v, err := quantity.Parse(text, d)
		if err != nil {
			var e *quantity.Error
			if !errors.As(err, &e) {
				t.Fatalf("Parse(%q, %v) failed without saying what would be right: %v", text, d, err)
			}
			return
		}
		if math.IsNaN(v) || math.IsInf(v, 0) {
			t.Fatalf("Parse(%q, %v) = %v", text, d, v)
		}
		printed := quantity.Format(v, d)
		again, err := quantity.Parse(printed, d)
		if err != nil || again != v {
			t.Fatalf("Parse(%q, %v) = %v, printed %q, which reads as %v, %v", text, d, v, printed, again, err)
		}
	})
}
