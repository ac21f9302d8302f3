package scenarios_test

import (
	"strings"
	"testing"

	"cartwright/scenarios"
)

// sunny is a sun by months; tests change it.
const sunny = `sun:
  latitude: 43 deg
  tilt: 60 deg
  coldest: -20 C
  most: 6
  monthly: [1.79, 2.75, 3.57, 4.46, 5.93, 6.4, 6.27, 5.65, 4.05, 2.91, 1.77, 1.59]`

// withSun returns the plain scenario with a sun, each old text in it replaced by the new one. Its first line is 14.
func withSun(t *testing.T, oldNew ...string) string {
	t.Helper()
	return changed(t, append([]string{"", sunny}, oldNew...)...)
}

func TestSunDefaults(t *testing.T) {
	s, err := openText(withSun(t))
	if err != nil {
		t.Fatal(err)
	}
	x := s.Sun
	warm := [12]float64{20, 20, 20, 20, 20, 20, 20, 20, 20, 20, 20, 20}
	if x.LatitudeDeg != 43 || x.TiltDeg != 60 || x.AzimuthDeg != 180 || x.Ground != 0.2 || x.Losses != 0.1 || x.ColdestC != -20 ||
		x.HottestC != 40 || x.Room != nil || x.Most != 6 || x.OnCart || x.MonthlyKWhM2[11] != 1.59 || x.WarmthC != warm || x.Hours != nil {
		t.Errorf("%+v", x)
	}
	if len(s.Warnings) > 0 {
		t.Errorf("warnings: %v", s.Warnings)
	}
}

func TestSunAllKeys(t *testing.T) {
	s, err := openText(withSun(t, "43 deg", "-33.5 deg", "tilt: 60 deg", "tilt: 30 deg\n  ground: 30 %\n  losses: 5 %\n  hottest: 100 F\n  on: cart\n  height: 5 ft",
		"most: 6", "room: {length: 3 m, width: 6 ft}", "[1.79", "[4.79", "1.59]", "5.59]\n  warmth: [1 C, 2 C, 3 C, 4 C, 5 C, 6 C, 7 C, 8 C, 9 C, 10 C, 11 C, 50 F]"))
	if err != nil {
		t.Fatal(err)
	}
	x := s.Sun
	if x.AzimuthDeg != 0 || x.Ground != 0.3 || x.Losses != 0.05 || x.HottestC < 37.7 || x.HottestC > 37.8 || !x.OnCart || x.HeightM != 1.524 ||
		x.Most != 0 || *x.Room != (scenarios.Room{LengthM: 3, WidthM: 1.8288}) || x.WarmthC[11] != 10 {
		t.Errorf("%+v", x)
	}
}

// Each row changes the sunny scenario and states the whole error, without the file's name.
func TestSunErrors(t *testing.T) {
	for _, tt := range []struct {
		name   string
		change []string
		want   string
	}{
		{"bare latitude", []string{"43 deg", "43"},
			`15:13: latitude: "43" has no unit; add deg, for example "43 deg"`},
		{"several at once", []string{"43 deg", "93 deg", "60 deg", "95 deg", "  coldest: -20 C\n", ""},
			`15:3: sun has no "coldest"; add it, text with a unit, for example coldest: 35 C
15:13: latitude: "93 deg" is out of range; write from -90 deg to 90 deg
16:9: tilt: "95 deg" is out of range; write from 0 deg to 90 deg`},
		{"misspelt", []string{"tilt:", "tild:"},
			`16:3: unknown key "tild" in sun; did you mean "tilt"?`},
		{"no room", []string{"  most: 6\n", ""},
			`15:3: sun does not say how many modules there is room for; add room: {length: 3 m, width: 2 m}, or most: 6`},
		{"room and most", []string{"most: 6", "most: 6\n  room: {length: 3 m, width: 2 m}"},
			`18:9: both room and most say how many modules there may be; leave one of them out`},
		{"cold above hot", []string{"-20 C", "45 C"},
			`17:12: the coldest air is warmer than the hottest; swap coldest and hottest`},
		{"height on the ground", []string{"most: 6", "most: 6\n  height: 1 m"},
			`19:11: height is for modules on the cart, and these are on the ground; leave it out, or write on: cart`},
		{"eleven months", []string{", 1.59]", "]"},
			`19:12: monthly has 11 values; write twelve, January first`},
		{"a month of text", []string{"2.75", "dark"},
			`19:19: monthly: "dark" is not a number; write kWh/m2 a day, for example 4.2`},
		{"a month out of range", []string{"2.75", "27.5"},
			`19:19: monthly: 27.5 is out of range; write from 0 to 15 kWh/m2 a day`},
		{"warmth without units", []string{"1.59]", "1.59]\n  warmth: [1, 2 C, 3 C, 4 C, 5 C, 6 C, 7 C, 8 C, 9 C, 10 C, 11 C, 12 C]"},
			`20:12: warmth: "1" is not a monthly temperature; write for example 8 C`},
		{"no light", []string{"\n  monthly: [1.79, 2.75, 3.57, 4.46, 5.93, 6.4, 6.27, 5.65, 4.05, 2.91, 1.77, 1.59]", ""},
			`15:3: sun has no "monthly"; add it, a list of twelve, for example monthly: [2.1, 3.0, 4.2, ...], kWh/m2 a day on the level, January first`},
		{"months and a file", []string{"most: 6", "most: 6\n  file: sun.csv"},
			`19:9: both monthly and file say what sunshine there is; leave one of them out`},
		{"a zone of months", []string{"most: 6", "most: 6\n  zone: -6"},
			`19:9: zone goes with a file of hours; monthly figures go by solar time; leave it out`},
		{"light in the polar night", []string{"43 deg", "70 deg"},
			`19:13: monthly: 1.79 kWh/m2 a day in month 1, in which the sun does not rise at this latitude; write 0, or another latitude
19:78: monthly: 1.59 kWh/m2 a day in month 12, in which the sun does not rise at this latitude; write 0, or another latitude`},
		{"no such file", []string{"monthly: [1.79, 2.75, 3.57, 4.46, 5.93, 6.4, 6.27, 5.65, 4.05, 2.91, 1.77, 1.59]", "file: nowhere.csv"},
			`19:9: there is no file "cart/nowhere.csv"; give the name of one that exists`},
		{"use with sun", []string{"autonomy: 18 h", "autonomy: 18 h\nuse: {days: 200}"},
			`7:13: days: with sun the cart is used every day, not on 200 a year; leave use out`},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, err := openText(withSun(t, tt.change...))
			expect(t, err, "cart/scenario.yaml:"+strings.ReplaceAll(tt.want, "\n", "\ncart/scenario.yaml:"))
		})
	}
}

func TestServedWithoutSun(t *testing.T) {
	_, err := openText(changed(t, "", "limits: {served: 80 %}"))
	expect(t, err, "cart/scenario.yaml:14:18: served is a share of a year with sun, and there is no sun; add sun, or leave served out")
	s, err := openText(withSun(t, "", "limits: {served: 80 %}"))
	if err != nil || s.Limits.Served != 0.8 {
		t.Errorf("with sun: %v", err)
	}
}

// A month clearer than four fifths of what comes from outside the air is warned of: MJ for kWh, another latitude.
func TestSunDoubts(t *testing.T) {
	s, err := openText(withSun(t, "[1.79", "[3.2"))
	if err != nil {
		t.Fatal(err)
	}
	const want = "cart/scenario.yaml:19:13: monthly: 3.2 kWh/m2 a day in month 1 is more than 2.97, four fifths of what arrives outside the air; check that it is for a day, on a level surface, at this latitude"
	if len(s.Warnings) != 1 || s.Warnings[0].Error() != want {
		t.Errorf("got %v\nwant %s", s.Warnings, want)
	}
}
