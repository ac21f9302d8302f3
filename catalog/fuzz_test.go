package catalog_test

import (
	"reflect"
	"strings"
	"testing"

	"cartwright/catalog"
)

// fuzzFile asks two things of a file beside the smallest catalogue: that reading it ends without a panic, and
// that what is accepted is written and read back the same.
func fuzzFile(f *testing.F, file string) {
	embedded, err := catalog.EmbeddedFiles().Open(file)
	if err != nil {
		f.Fatal(err)
	}
	defer embedded.Close()
	head := make([]byte, 1500)
	n, err := embedded.Read(head)
	if err != nil {
		f.Fatal(err)
	}
	f.Add(string(head[:n]))
	f.Add(smallest[file])
	f.Add(strings.NewReplacer("_kg_per_m", "_lb_per_ft", "_per_m", "_per_ft", "_kg", "_lb", "_mm", "_in").Replace(smallest[file]))
	f.Add("\ufeff" + strings.ReplaceAll(smallest[file], "\n", "\r\n"))
	f.Add(`"` + smallest[file])
	f.Fuzz(func(t *testing.T, data string) {
		c, err := catalog.Read(with(map[string]string{file: data}), "cart", "cart")
		if err != nil {
			if c != nil {
				t.Error("a catalogue beside an error")
			}
			for _, line := range strings.Split(err.Error(), "\n") {
				if !strings.HasPrefix(line, "cart/") || !strings.Contains(line, "; ") {
					t.Errorf("not a place, what is wrong and what would be right: %q", line)
				}
			}
			return
		}
		back, err := catalog.Read(written(t, c), "cart", "cart")
		if err != nil {
			t.Fatalf("what was written is refused:\n%v", err)
		}
		if got, want := unplaced(back), unplaced(c); !reflect.DeepEqual(got, want) {
			t.Fatalf("read back:\n%+v\nwritten:\n%+v", got, want)
		}
	})
}

func FuzzBatteries(f *testing.F) { fuzzFile(f, "batteries.csv") }
func FuzzInverters(f *testing.F) { fuzzFile(f, "inverters.csv") }
func FuzzCables(f *testing.F)    { fuzzFile(f, "cables.csv") }
func FuzzDevices(f *testing.F)   { fuzzFile(f, "devices.csv") }
func FuzzBusbars(f *testing.F)   { fuzzFile(f, "busbars.csv") }
func FuzzCasters(f *testing.F)   { fuzzFile(f, "casters.csv") }
func FuzzSolar(f *testing.F)     { fuzzFile(f, "solar.csv") }
func FuzzSundries(f *testing.F)  { fuzzFile(f, "sundries.csv") }
func FuzzConduits(f *testing.F)  { fuzzFile(f, "conduits.csv") }
func FuzzSections(f *testing.F)  { fuzzFile(f, "sections.csv") }
func FuzzOffers(f *testing.F)    { fuzzFile(f, "offers.csv") }

// Sizes that are read are spelt one way only, and that way reads back.
func FuzzSize(f *testing.F) {
	for _, seed := range []string{"4/0 AWG", "2awg", "250 KCMIL", "35 mm²", "1.5mm2", "0 AWG", "5/0 AWG", "1e400 mm2", "NaN mm2", "0x1p4 mm2"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		size, err := catalog.ParseSize(text)
		if err != nil {
			return
		}
		again, err := catalog.ParseSize(string(size))
		if err != nil || again != size {
			t.Errorf("%q is %q, which is %q, %v", text, size, again, err)
		}
		if a := size.AreaMM2(); !(a > 0) {
			t.Errorf("%q has %v mm2", size, a)
		}
	})
}
