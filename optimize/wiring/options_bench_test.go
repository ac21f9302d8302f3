package wiring_test

import (
	"fmt"
	"testing"

	"cartwright/catalog"
	"cartwright/optimize/wiring"
	"cartwright/scenarios"
)

// necSizes are the sizes of NEC table 310.16 up to 500 kcmil.
var necSizes = []catalog.Size{
	"14 AWG", "12 AWG", "10 AWG", "8 AWG", "6 AWG", "4 AWG", "3 AWG", "2 AWG", "1 AWG", "1/0 AWG", "2/0 AWG",
	"3/0 AWG", "4/0 AWG", "250 kcmil", "300 kcmil", "350 kcmil", "400 kcmil", "500 kcmil",
}

// iecSizes are the sizes of IEC 60364-5-52 tables B.52.2 and B.52.3 up to 120 mm2.
var iecSizes = []catalog.Size{
	"1.5 mm2", "2.5 mm2", "4 mm2", "6 mm2", "10 mm2", "16 mm2", "25 mm2", "35 mm2", "50 mm2", "70 mm2",
	"95 mm2", "120 mm2",
}

// wideCatalog returns a catalogue of about 60 cables and 100 devices, invented.
func wideCatalog() *catalog.Catalog {
	c := &catalog.Catalog{}
	for _, insulation := range []float64{75, 90} {
		for _, sizes := range [][]catalog.Size{necSizes, iecSizes} {
			for _, size := range sizes {
				c.Cables = append(c.Cables, catalog.Cable{Size: size, Material: "copper", InsulationC: insulation})
			}
		}
	}
	for _, poles := range []int{1, 2} {
		for _, kind := range []string{"fuse", "breaker"} {
			for _, a := range []float64{15, 16, 20, 25, 30, 32, 40, 50, 60, 63, 70, 80, 90, 100, 110, 125, 150, 160,
				175, 200, 225, 250, 300, 350, 400} {
				c.Devices = append(c.Devices, catalog.Device{Type: kind, Class: "T", RatingA: a, Poles: poles,
					MaxDCV: 125, InterruptingDCA: 20000, MaxACV: 240, InterruptingACA: 10000, TerminalC: 75})
			}
		}
	}
	return c
}

// BenchmarkOptions lists the options of all strings, mains and feeders of 300 batteries and 60 inverters,
// with and without the choice of grounds.
func BenchmarkOptions(b *testing.B) {
	c := wideCatalog()
	lists := []struct {
		name string
		list func(wiring.Rules, wiring.Duty, *catalog.Catalog) []wiring.Option
	}{{"whole", wiring.Options}, {"ungrounded", wiring.Ungrounded}}
	for _, rules := range []scenarios.Rules{scenarios.NEC, scenarios.IEC} {
		r := wiring.For(rules)
		for _, l := range lists {
			b.Run(fmt.Sprintf("rules=%s/list=%s", rules, l.name), func(b *testing.B) {
				b.ReportAllocs()
				total := 0
				for b.Loop() {
					total = 0
					for i := range 300 {
						total += len(l.list(r, busDuty(scenarios.RunString, 20+float64(i)), c))
					}
					for i := range 60 {
						total += len(l.list(r, busDuty(scenarios.RunMain, 30+4*float64(i)), c))
						total += len(l.list(r, feederDuty(10+2*float64(i)), c))
					}
				}
				b.ReportMetric(float64(total), "options")
			})
		}
	}
}
