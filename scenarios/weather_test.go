package scenarios_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"cartwright/scenarios"
	"cartwright/scenarios/sky"
)

// Invented hours: at 36 north and 80 west, five hours behind Greenwich, three fifths of the light outside the air
// come down straight and a tenth from the sky.
const (
	latitude  = 36.0
	longitude = -80.0
	zone      = -5.0
)

type hour struct {
	month, day, hour     int // the hour begins at
	ghi, dni, dhi, tempC float64
}

func invented() []hour {
	var year []hour
	n := 1
	for m := range 12 {
		for d := range sky.DaysOfMonth(m) {
			for h := range 24 {
				from := sky.HourAngle(sky.SolarHour(n, float64(h), longitude, zone))
				level := sky.Hour(latitude, n, from, from+15)
				x := hour{month: m + 1, day: d + 1, hour: h, ghi: 0.7 * level, dhi: 0.1 * level, tempC: float64(m) + float64(h)/10}
				if level > 0 {
					x.dni = 0.6 * sky.Normal(n)
				}
				year = append(year, x)
			}
			n++
		}
	}
	return year
}

// ownRows writes hours in our own columns.
func ownRows(year []hour) []string {
	rows := []string{"# invented", "time,ghi,dni,dhi,temp_c"}
	for _, x := range year {
		rows = append(rows, fmt.Sprintf("2026-%02d-%02d %02d:00,%.2f,%.2f,%.2f,%.1f", x.month, x.day, x.hour, x.ghi, x.dni, x.dhi, x.tempC))
	}
	return rows
}

// tmy3Rows writes hours in the layout of NREL/TP-581-43156: the time is the hour's end, from 01:00 to 24:00.
func tmy3Rows(year []hour) []string {
	titles := make([]string, 71)
	for i, t := range map[int]string{0: "Date (MM/DD/YYYY)", 1: "Time (HH:MM)", 4: "GHI (W/m^2)", 7: "DNI (W/m^2)", 10: "DHI (W/m^2)", 31: "Dry-bulb (C)"} {
		titles[i] = t
	}
	rows := []string{`123456,"SMALL PLACE, BIG FIELD",NC,-5.0,36.000,-80.000,273`, strings.Join(titles, ",")}
	for _, x := range year {
		f := make([]string, 71)
		f[0], f[1] = fmt.Sprintf("%02d/%02d/19%d", x.month, x.day, 80+x.month), fmt.Sprintf("%02d:00", x.hour+1)
		f[4], f[7], f[10], f[31] = fmt.Sprintf("%.0f", x.ghi), fmt.Sprintf("%.0f", x.dni), fmt.Sprintf("%.0f", x.dhi), fmt.Sprintf("%.1f", x.tempC)
		rows = append(rows, strings.Join(f, ","))
	}
	return rows
}

// epwRows writes hours in the layout of the EnergyPlus weather data dictionary: hours 1 to 24, each its end.
func epwRows(year []hour) []string {
	rows := []string{"LOCATION,Small Place,NC,USA,invented,123456,36.0,-80.0,-5.0,273", "DESIGN CONDITIONS,0", "TYPICAL/EXTREME PERIODS,0",
		"GROUND TEMPERATURES,0", "HOLIDAYS/DAYLIGHT SAVING,No,0,0,0", `COMMENTS 1,"as somebody "wrote" it`, "COMMENTS 2,", "DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31"}
	for _, x := range year {
		f := make([]string, 35)
		f[0], f[1], f[2], f[3], f[4] = "1988", fmt.Sprint(x.month), fmt.Sprint(x.day), fmt.Sprint(x.hour+1), "60"
		f[6], f[13], f[14], f[15] = fmt.Sprintf("%.1f", x.tempC), fmt.Sprintf("%.0f", x.ghi), fmt.Sprintf("%.0f", x.dni), fmt.Sprintf("%.0f", x.dhi)
		if x.dni == 0 {
			f[14] = "-0.00"
		}
		rows = append(rows, strings.Join(f, ","))
	}
	return rows
}

// fileSun is the sunny scenario with a file; place is what more stands in sun.
func fileSun(t *testing.T, place string) string {
	t.Helper()
	at := strings.Index(sunny, "monthly")
	return withSun(t, sunny[at:], "file: sun.csv"+place, "43 deg", "36 deg")
}

const stated = "\n  longitude: -80 deg\n  zone: -5"

func openFile(t *testing.T, place string, rows []string) (*scenarios.Scenario, error) {
	t.Helper()
	return openText(fileSun(t, place), "sun.csv", strings.Join(rows, "\n")+"\n")
}

// The same year in the three layouts is read as the same year: the public ones say the place, and the end of an hour.
func TestWeatherLayouts(t *testing.T) {
	year := invented()
	for name, c := range map[string]struct {
		place  string
		rows   []string
		within float64 // half of the last digit written
	}{
		"own": {stated, ownRows(year), 0.0051}, "own, zone in hours": {"\n  longitude: -80 deg\n  zone: -5 h", ownRows(year), 0.0051},
		"TMY3": {"", tmy3Rows(year), 0.51}, "EPW": {"", epwRows(year), 0.51}, "EPW, place stated": {stated, epwRows(year), 0.51},
	} {
		t.Run(name, func(t *testing.T) {
			s, err := openFile(t, c.place, c.rows)
			if err != nil {
				t.Fatal(err)
			}
			if len(s.Warnings) > 0 {
				t.Errorf("warnings: %v", s.Warnings)
			}
			x, w := s.Sun, s.Sun.Hours
			if x.LongitudeDeg != longitude || x.ZoneH != zone || w.POA != nil || len(w.GHI) != len(year) {
				t.Fatalf("%g deg, zone %g, %d hours", x.LongitudeDeg, x.ZoneH, len(w.GHI))
			}
			for h, want := range year {
				if math.Abs(w.GHI[h]-want.ghi) > c.within || math.Abs(w.DNI[h]-want.dni) > c.within || math.Abs(w.DHI[h]-want.dhi) > c.within ||
					math.Abs(w.TempC[h]-want.tempC) > 0.051 || math.Signbit(w.DNI[h]) {
					t.Fatalf("hour %d: %g %g %g %g, want %+v", h, w.GHI[h], w.DNI[h], w.DHI[h], w.TempC[h], want)
				}
			}
		})
	}
}

// Light on the plane of the modules, times without a year or without a date, semicolons, and midnight as 00:00.
func TestWeatherSpellings(t *testing.T) {
	year := invented()
	plane := []string{"sep=;", "temp_c;time;poa"}
	for _, x := range year {
		plane = append(plane, fmt.Sprintf("%.1f;%02d-%02d %d:00;%.1f", x.tempC, x.month, x.day, x.hour, x.ghi))
	}
	bare := ownRows(year)
	for i := range bare[2:] {
		bare[2+i] = bare[2+i][len("2026-01-01 "):]
	}
	midnight := tmy3Rows(year)
	for i := range midnight {
		midnight[i] = strings.Replace(midnight[i], ",24:00,", ",00:00,", 1)
	}
	for name, rows := range map[string][]string{"plane": plane, "no date": bare, "midnight": midnight} {
		s, err := openFile(t, stated, rows)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if w := s.Sun.Hours; (w.POA != nil) != (name == "plane") || (w.GHI != nil) == (name == "plane") || len(s.Warnings) > 0 {
			t.Errorf("%s: %v", name, s.Warnings)
		}
	}
}

// A leap year loses its 29 February, and that is said.
func TestWeatherLeapYear(t *testing.T) {
	year := invented()
	var leap []hour
	for _, x := range year {
		if x.month == 3 && x.day == 1 && x.hour == 0 {
			for h := range 24 {
				leap = append(leap, hour{month: 2, day: 29, hour: h, ghi: 1, tempC: 40})
			}
		}
		leap = append(leap, x)
	}
	midnight := tmy3Rows(leap)
	for i := range midnight {
		midnight[i] = strings.Replace(midnight[i], ",24:00,", ",00:00,", 1)
	}
	for name, rows := range map[string][]string{"own": ownRows(leap), "TMY3": tmy3Rows(leap), "TMY3, midnight 00:00": midnight, "EPW": epwRows(leap)} {
		s, err := openFile(t, stated, rows)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if len(s.Sun.Hours.GHI) != len(year) || s.Sun.Hours.TempC[(31+28)*24] != 2 || len(s.Warnings) != 1 ||
			!strings.Contains(s.Warnings[0].Error(), "29 February, which is left out") {
			t.Errorf("%s: %d hours, %v", name, len(s.Sun.Hours.GHI), s.Warnings)
		}
	}
}

// edit returns rows with fields of a row replaced; line counts from 1, field from 0.
func edit(rows []string, line, field int, text string) []string {
	out := append([]string(nil), rows...)
	f := strings.Split(out[line-1], ",")
	f[field] = text
	out[line-1] = strings.Join(f, ",")
	return out
}

// What is missing is told; if it is little, it is bridged on a line, across New Year too.
func TestWeatherMissing(t *testing.T) {
	year := invented()
	noon := 3 + 12 // line of the first noon in our own columns
	rows := edit(edit(ownRows(year), noon, 1, ""), noon+1, 1, "")
	rows = edit(edit(rows, 3, 4, ""), 8762, 4, "")
	s, err := openFile(t, stated, rows)
	if err != nil {
		t.Fatal(err)
	}
	w := s.Sun.Hours
	a, b := year[11].ghi, year[14].ghi
	if got := w.GHI[12]; math.Abs(got-(a+(b-a)/3)) > 0.01 {
		t.Errorf("12:00: %g between %g and %g", got, a, b)
	}
	if got := w.GHI[13]; math.Abs(got-(a+(b-a)*2/3)) > 0.01 {
		t.Errorf("13:00: %g between %g and %g", got, a, b)
	}
	before, after := year[8758].tempC, year[1].tempC // 23:00 and 0:00 lie between
	if got := w.TempC[8759]; math.Abs(got-(before+(after-before)/3)) > 0.06 {
		t.Errorf("the last hour: %g between %g and %g", got, before, after)
	}
	want := []string{
		"cart/sun.csv:3:1: temp_c: 2 figures are missing, the first here; they are taken to lie on a line between the hours beside them",
		"cart/sun.csv:15:1: ghi: 2 figures are missing, the first here; they are taken to lie on a line between the hours beside them",
	}
	if len(s.Warnings) != 2 || s.Warnings[0].Error() != want[0] || s.Warnings[1].Error() != want[1] {
		t.Errorf("warnings: %v", s.Warnings)
	}

	gap := ownRows(year)
	for i := range 4 {
		gap = edit(gap, noon+i, 1, "")
	}
	_, err = openFile(t, stated, gap)
	expect(t, err, "cart/sun.csv:15:1: ghi: 4 figures are missing, the first here, up to 4 at a stretch; fill them in: the program does so for up to 48, and 3 at a stretch")

	for name, rows := range map[string][]string{
		"TMY3": edit(tmy3Rows(year), 3, 31, "-9900"), "EPW": edit(epwRows(year), 9, 6, "99.9"), "EPW light": edit(epwRows(year), 9, 13, "9999"),
	} {
		s, err := openFile(t, stated, rows)
		if err != nil || len(s.Warnings) != 1 || !strings.Contains(s.Warnings[0].Error(), "this figure is missing") {
			t.Errorf("%s: %v, %v", name, err, s)
		}
	}
}

func TestWeatherErrors(t *testing.T) {
	year := invented()
	own := ownRows(year)
	without := func(line int) []string { return append(append([]string(nil), own[:line-1]...), own[line:]...) }
	for _, tt := range []struct {
		name, place string
		rows        []string
		want        string
	}{
		{"no zone", "\n  longitude: -80 deg", own, `cart/scenario.yaml:15:3: sun has no "zone"; add it, a number, for example zone: -5`},
		{"columns", stated, edit(own, 2, 1, "sunshine"), "cart/sun.csv:2:1: the columns are time, sunshine, dni, dhi, temp_c; write time,ghi,dni,dhi,temp_c or time,poa,temp_c, or give a TMY3 or EPW file as it was published"},
		{"empty", stated, []string{"# nothing"}, "cart/sun.csv: the file of hours is empty; begin with a line time,ghi,dni,dhi,temp_c"},
		{"two at once", stated, edit(edit(own, 10, 2, "much"), 12, 4, "120"), `cart/sun.csv:10:24: dni: "much" is not a number; write a number, for example 412
cart/sun.csv:12:38: temp_c: 120 is out of range; write from -90 to 70`},
		{"an hour left out", stated, without(100), "cart/sun.csv:100:1: the hour from 01-05 02:00 is where the hour from 01-05 01:00 should be; give each hour of a year one row, the first from 01-01 00:00"},
		{"no hours", stated, own[:2:2], "cart/sun.csv: the file has 0 hours; give a whole year, 8760"},
		{"too few", stated, own[:8000], "cart/sun.csv: the file has 7998 hours; give a whole year, 8760"},
		{"too many", stated, append(append([]string(nil), own...), own[2]), "cart/sun.csv:8763:1: there are rows after the end of the year; give a whole year, 8760 hours"},
		{"half an hour", stated, edit(own, 3, 0, "2026-01-01 00:30"), `cart/sun.csv:3:1: "2026-01-01 00:30" is not the time of an hour; write for example 2026-01-31 00:00`},
		{"short row", stated, append(append([]string(nil), own[:5]...), "2026-01-01 03:00,0"), "cart/sun.csv:6:1: the row has 2 fields; write 5"},
		{"head alone", "", epwRows(nil)[:5], "cart/sun.csv: the EPW file has no line DATA PERIODS; give the whole file, as it was published"},
		{"no place", "", append([]string{"LOCATION,Small Place,NC,USA,invented,123456,north,-80.0,-5.0,273"}, epwRows(year)[1:]...),
			"cart/sun.csv:1:1: field 7 of the first line is not a latitude; give the file as it was published"},
		{"other columns", "", edit(tmy3Rows(year), 2, 7, "DHI (W/m^2)"), "cart/sun.csv:2:1: column 8 of a TMY3 file is DNI, and here it is not; give the file as it was published"},
		{"another zone than the file's", "\n  zone: -6", epwRows(year), "cart/scenario.yaml:20:9: zone: -6 is not that of cart/sun.csv, whose clock is -5 h ahead of Greenwich's; leave zone out, or write the file's"},
		{"warmth beside a file", stated + "\n  warmth: [1 C]", own, "cart/scenario.yaml:22:11: warmth goes with monthly figures; a file has its own; leave it out"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, err := openFile(t, tt.place, tt.rows)
			expect(t, err, tt.want)
		})
	}
}

// Sun at night: a zone that is off by an hour either way, or by many, is refused, and the one that fits is named; of
// light on the plane, too.
func TestWeatherZone(t *testing.T) {
	year := invented()
	plane := []string{"time,poa,temp_c"}
	for _, x := range year {
		plane = append(plane, fmt.Sprintf("%d:00,%.1f,%.1f", x.hour, x.ghi, x.tempC))
	}
	for _, wrong := range []string{"-4", "-6", "0", "5"} {
		for name, rows := range map[string][]string{"level": ownRows(year), "plane": plane} {
			_, err := openFile(t, "\n  longitude: -80 deg\n  zone: "+wrong, rows)
			if err == nil || !strings.HasPrefix(err.Error(), "cart/scenario.yaml:21:9: zone: with "+wrong+" the sun shines in ") ||
				!strings.HasSuffix(err.Error(), "with a zone of -5 the light would be centred on noon") {
				t.Errorf("zone %s, %s: %v", wrong, name, err)
			}
		}
	}
}

// Figures that do not close, and a file of another place, are warned of.
func TestWeatherDoubts(t *testing.T) {
	year := invented()
	swapped := append([]hour(nil), year...)
	for i := range swapped {
		swapped[i].dni, swapped[i].dhi = swapped[i].dhi, swapped[i].dni
	}
	for name, c := range map[string]struct {
		place, want string
		rows        []string
	}{
		"swapped columns": {stated, "check which column is which", ownRows(swapped)},
		"another place":   {"\n  longitude: -84 deg", "longitude: -84 deg is far from the -80 deg of cart/sun.csv", tmy3Rows(year)},
	} {
		s, err := openFile(t, c.place, c.rows)
		if err != nil || len(s.Warnings) != 1 || !strings.Contains(s.Warnings[0].Error(), c.want) {
			t.Errorf("%s: %v, %v", name, err, s)
		}
	}
}

// FuzzWeather asks of any file of hours that it is read whole or refused with the place of a mistake.
func FuzzWeather(f *testing.F) {
	year := invented()[:30]
	for _, rows := range [][]string{ownRows(year), tmy3Rows(year), epwRows(year)} {
		f.Add(strings.Join(rows, "\n"))
	}
	f.Add("LOCATION,a,b,c,d,e,1,2,3\nDATA PERIODS")
	f.Add("1,2,3,4,5,6,7\nDate (,\"")
	at := strings.Index(sunny, "monthly")
	scenario := plain + strings.Replace(sunny[:at], "43 deg", "36 deg", 1) + "file: sun.csv" + stated + "\n"
	f.Fuzz(func(t *testing.T, text string) {
		s, err := openText(scenario, "sun.csv", text)
		if err != nil {
			for line := range strings.Lines(err.Error()) {
				if !strings.HasPrefix(line, "cart/scenario.yaml:") && !strings.HasPrefix(line, "cart/sun.csv:") {
					t.Fatalf("%q fails with no place: %q", text, line)
				}
			}
			return
		}
		if n := len(s.Sun.Hours.TempC); n != scenarios.SunHours {
			t.Fatalf("%q is read as %d hours", text, n)
		}
	})
}
