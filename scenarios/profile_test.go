package scenarios_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"cartwright/scenarios"

	"pgregory.net/rapid"
)

// measuredText is the plain scenario with a measured profile.
var measuredText = strings.Replace(plain, "loads:\n  - {name: lamp, watts: 60 W}", "measured: loads.csv", 1)

// day returns a load profile that begins at a minute of the day, with rows steps of step minutes.
func day(from, step, rows int) string {
	text := "time,watts\n"
	for i := range rows {
		m := (from + i*step) % (24 * 60)
		text += fmt.Sprintf("%02d:%02d,%d\n", m/60, m%60, 100+i%7)
	}
	return text
}

func TestProfile(t *testing.T) {
	dated := "# logged\ntime,watts_b,watts_a\n"
	for i := range 48 {
		dated += fmt.Sprintf("2026-12-%02d %02d:00, %d , 7.5\n", 30+(18+i)/24%2, (18+i)%24, i)
	}
	// From 18:00 on the 30th: 6 rows, then the 31st, then the new year.
	dated = strings.Replace(dated, "2026-12-30 00:00, 30", "2027-01-01 00:00, 30", 1)
	for h := range 18 {
		dated = strings.Replace(dated, fmt.Sprintf("2026-12-30 %02d:00", h), fmt.Sprintf("2027-01-01 %02d:00", h), 1)
	}
	for _, tt := range []struct {
		name, csv   string
		step, start int
		a, b        int // steps on each leg
	}{
		{"hours", day(0, 60, 24), 60, 0, 24, 0},
		{"minutes", day(0, 1, 1440), 1, 0, 1440, 0},
		{"forty-five minutes", day(0, 45, 32), 45, 0, 32, 0},
		{"from noon, two days", day(720, 15, 192), 15, 720, 192, 0},
		{"dated, legs the other way round, over the new year", dated, 60, 1080, 48, 48},
		{"comments, CRLF and a byte order mark", "\uFEFF# a\r\n" + strings.ReplaceAll(day(0, 60, 24), "\n", "\r\n# b\r\n"), 60, 0, 24, 0},
	} {
		t.Run(tt.name, func(t *testing.T) {
			s, err := openText(measuredText, "loads.csv", tt.csv)
			if err != nil {
				t.Fatal(err)
			}
			m := s.Measured
			if m.StepMin != tt.step || m.StartMin != tt.start || len(m.LegA) != tt.a || len(m.LegB) != tt.b || m.ByLeg != (tt.b > 0) {
				t.Errorf("got step %d from %d, %d and %d steps, by leg %v; want %d from %d, %d and %d",
					m.StepMin, m.StartMin, len(m.LegA), len(m.LegB), m.ByLeg, tt.step, tt.start, tt.a, tt.b)
			}
			if tt.b > 0 && (m.LegA[5] != 7.5 || m.LegB[5] != 5) {
				t.Errorf("the sixth row is %g and %g W, want 7.5 on leg A and 5 on leg B", m.LegA[5], m.LegB[5])
			}
		})
	}
}

func TestProfileErrors(t *testing.T) {
	hours := day(0, 60, 24)
	for _, tt := range []struct{ name, csv, want string }{
		{"empty", "", "cart/loads.csv: the load profile is empty; begin with a line time,watts"},
		{"comments alone", "# nothing\n", "cart/loads.csv: the load profile is empty; begin with a line time,watts"},
		{"header alone", "time,watts\n", "cart/loads.csv: a load profile of no rows covers no whole day; write a row for every step of one or more days"},
		{"unknown column", strings.Replace(hours, "watts", "wats", 1), `cart/loads.csv:1:6: unknown column "wats"; did you mean "watts"?`},
		{"UTF-16 without a mark", "t\x00i\x00m\x00e\x00,\x00w\x00a\x00t\x00t\x00s\x00\n\x00", `cart/loads.csv:1:1: the text is UTF-16; save the file as UTF-8`},
		{"semicolons", "time;watts\n00:00;5\n", `cart/loads.csv:1:1: unknown column "time;watts"; the columns are time and watts, or time, watts_a and watts_b, with commas between`},
		{"tabs", "time\twatts\n00:00\t5\n", `cart/loads.csv:1:1: unknown column "time\twatts"; the columns are time and watts, or time, watts_a and watts_b, with commas between`},
		{"no header", "00:00,115\n", `cart/loads.csv:1:1: unknown column "00:00"; the columns are time and watts, or time, watts_a and watts_b, with commas between
cart/loads.csv:1:7: unknown column "115"; the columns are time and watts, or time, watts_a and watts_b, with commas between`},
		{"column twice", "time,watts,watts\n", `cart/loads.csv:1:12: column "watts" stands twice; keep one`},
		{"one leg", "time,watts_a\n", "cart/loads.csv:1:1: the columns are time, watts_a; write time and watts, or time, watts_a and watts_b"},
		{"legs and sum", "time,watts,watts_a,watts_b\n", "cart/loads.csv:1:1: the columns are time, watts, watts_a, watts_b; write time and watts, or time, watts_a and watts_b"},
		{"no time", "watts\n", "cart/loads.csv:1:1: the columns are watts; write time and watts, or time, watts_a and watts_b"},
		{"bad cells", "time,watts\n0:0,5\n01:00,many\n02:00,-3\n03:00,NaN\n04:00,1e300\n05:00\n24:00,5\n2026-02-30 05:00,1\n", `cart/loads.csv:2:1: time: "0:0" is not a time; write 06:30, or 2026-08-14 06:30
cart/loads.csv:3:7: watts: "many" is not a number; write watts without a unit, for example 115
cart/loads.csv:4:7: watts: -3 is negative; write what the loads draw, at least 0
cart/loads.csv:5:7: watts: "NaN" is not a number; write watts without a unit, for example 115
cart/loads.csv:6:7: watts: 1e300 is out of range; write at most 10000000
cart/loads.csv:7:1: the row has 1 fields; write 2: time, watts
cart/loads.csv:8:1: time: "24:00" is not a time; write 06:30, or 2026-08-14 06:30
cart/loads.csv:9:1: time: "2026-02-30 05:00" is not a time; write 06:30, or 2026-08-14 06:30`},
		{"unit in a cell", strings.Replace(hours, "00:00,100", "00:00,100 W", 1), `cart/loads.csv:2:7: watts: "100 W" is not a number; write watts without a unit, for example 115`},
		{"decimal comma", strings.Replace(hours, "00:00,100", "00:00,100,5", 1), `cart/loads.csv:2:1: the row has 3 fields; write 2: time, watts`},
		{"gap", strings.Replace(hours, "05:00,105\n", "", 1), "cart/loads.csv:7:1: the step from 04:00 to 06:00 is 120 min; go on in steps of 60 min as above, without gaps or a change to or from summer time"},
		{"row twice", strings.Replace(hours, "05:00,105\n", "05:00,105\n05:00,105\n", 1), "cart/loads.csv:8:1: the time 05:00 stands in two rows; give each step one row"},
		{"step that leaves a rest", day(0, 50, 24), "cart/loads.csv:3:1: the step from 00:00 to 00:50 is 50 min; use a constant step of 1 to 60 min that divides the day"},
		{"step too long", day(0, 120, 12), "cart/loads.csv:3:1: the step from 00:00 to 02:00 is 120 min; use a constant step of 1 to 60 min that divides the day"},
		{"going back", "time,watts\n2026-08-14 01:00,1\n2026-08-14 00:00,1\n", "cart/loads.csv:3:1: the step from 2026-08-14 01:00 to 2026-08-14 00:00 is -60 min; use a constant step of 1 to 60 min that divides the day"},
		{"half a day", day(0, 60, 12), "cart/loads.csv:13:1: the load profile ends here after 12 h; write whole days: 24 rows in steps of 60 min are one day"},
		{"a day and a step", day(0, 30, 49), "cart/loads.csv:50:1: the load profile ends here after 24.5 h; write whole days: 96 rows in steps of 30 min are 2 days"},
		{"dates begin later", strings.Replace(hours, "\n01:00", "\n2026-08-14 01:00", 1), "cart/loads.csv:3:1: the time is with a date, the one above is not; write all times one way"},
		{"nothing drawn", strings.NewReplacer("100", "0", "101", "0", "102", "0", "103", "0", "104", "0", "105", "0", "106", "0").Replace(hours), "cart/loads.csv: the load profile is zero throughout; write what the loads draw"},
		{"quote left open", "time,watts\n\"00:00,5\n", `cart/loads.csv:2:10: this cannot be read as CSV: extraneous or missing " in quoted-field; write fields with commas between, without quotes`},
		{"not UTF-8", "time,watts\n00:00,5\n\xff", "cart/loads.csv:3:1: the byte 0xff is not UTF-8 text; save the file as UTF-8"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, err := openText(measuredText, "loads.csv", tt.csv)
			expect(t, err, tt.want)
		})
	}
}

func TestProfileManyMistakes(t *testing.T) {
	_, err := openText(measuredText, "loads.csv", "time,watts\n"+strings.Repeat("noon,lots\n", 100000))
	if err == nil {
		t.Fatal("no error")
	}
	lines := strings.Split(err.Error(), "\n")
	if want := "after 20 mistakes reading of the load profile stopped; correct those above first"; len(lines) != 21 || !strings.HasSuffix(lines[20], want) {
		t.Errorf("%d lines, the last %q; want 20 mistakes and %q", len(lines), lines[len(lines)-1], want)
	}
}

func TestProfileLegsUnderIEC(t *testing.T) {
	legs := strings.ReplaceAll(strings.Replace(day(0, 60, 24), "watts", "watts_a,watts_b", 1), ":00,", ":00,5,")
	_, err := openText(strings.Replace(measuredText, "nec", "iec", 1), "loads.csv", legs)
	expect(t, err, "cart/scenario.yaml:4:11: measured: the iec rules have 230 V only, which has no legs; write one column watts instead of watts_a and watts_b")
}

// What is written as a profile is read back as it was.
func TestProfileRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		step := rapid.SampledFrom([]int{5, 10, 12, 15, 20, 30, 36, 40, 45, 48, 60}).Draw(t, "step")
		days := rapid.IntRange(1, 3).Draw(t, "days")
		start := rapid.IntRange(0, 1439).Draw(t, "start")
		n := days * 1440 / step
		watts := rapid.SliceOfN(rapid.Float64Range(0, 1e6), n, n).Draw(t, "watts")
		watts[0] = 1 // a profile of nothing is refused
		text := "time,watts\n"
		for i, w := range watts {
			m := (start + i*step) % 1440
			text += fmt.Sprintf("%02d:%02d,%v\n", m/60, m%60, w)
		}
		s, err := openText(measuredText, "loads.csv", text)
		if err != nil {
			t.Fatal(err)
		}
		want := scenarios.Measured{StepMin: step, StartMin: start, LegA: watts}
		if got := *s.Measured; got.StepMin != want.StepMin || got.StartMin != want.StartMin || got.ByLeg || !slices.Equal(got.LegA, want.LegA) {
			t.Fatalf("wrote %+v, read %+v", want, got)
		}
	})
}

func FuzzProfile(f *testing.F) {
	f.Add(day(0, 60, 24))
	f.Add("time,watts_a,watts_b\n2026-08-14 00:00,1,2\n")
	f.Add("# x\ntime,watts\n\"00:00\",1e3\n")
	f.Fuzz(func(t *testing.T, text string) {
		s, err := openText(measuredText, "loads.csv", text)
		if err != nil {
			return
		}
		if m := s.Measured; len(m.LegA)*m.StepMin%1440 != 0 || len(m.LegA) == 0 || m.ByLeg && len(m.LegA) != len(m.LegB) {
			t.Fatalf("read %d and %d steps of %d min, which are no whole days", len(m.LegA), len(m.LegB), m.StepMin)
		}
	})
}
