package scenarios

import (
	"strings"
	"testing"

	"cartwright/catalog"
)

// The demo owns one lfp-rack-5, 14 ft of flex-2-0 and an inverter that is for sale, has 1150 in hand and 900 put aside.
func TestDeals(t *testing.T) {
	s, err := Demo("cider-shed")
	if err != nil {
		t.Fatal(err)
	}
	data, err := demoFiles.ReadFile("demos/cider-shed/" + FileName)
	if err != nil {
		t.Fatal(err)
	}
	read := func(part, count, amount string) Deal {
		t.Helper()
		d, err := ReadDeal(catalog.Embedded(), part, count, amount)
		if err != nil {
			t.Fatal(err)
		}
		return d
	}
	for _, test := range []struct {
		name    string
		sell    bool
		deal    Deal
		short   catalog.Cents
		written []string // lines that are new
	}{
		{"from what is in hand", false, read("lfp-rack-5", "1", "1090"), 0, []string{"count: 2, keep: true}", "sold: 60"}},
		{"from savings too", false, read("lfp-rack-10", "1", "$1,190.50"), 0, []string{"{part: lfp-rack-10, count: 1}", "sold: 0", "now: 859.50"}},
		{"from elsewhere", false, read("lfp-floor-16", "1", "2590"), 54000, []string{"{part: lfp-floor-16, count: 1}"}},
		{"cable", false, read("flex-2-0", "6 ft", "30"), 0, []string{"count: 20 ft", "sold: 1120"}},
		{"for nothing", false, read("tube-40", "3 ft 6 in", "0"), 0, []string{"{part: tube-40, count: 3.5 ft}"}},
		{"one sold", true, read("inv-120-3-48", "1", "350"), 0, []string{"# cannot run the press", "sold: 1500"}},
		{"some cable sold", true, read("flex-2-0", "4 ft", "5.50"), 0, []string{"count: 10 ft", "sold: 1155.50"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			after, short := Owned{}, catalog.Cents(0)
			if test.sell {
				if after, err = s.AfterSelling(test.deal); err != nil {
					t.Fatal(err)
				}
			} else {
				after, short = s.AfterBuying(test.deal)
			}
			if short != test.short {
				t.Errorf("short by %d, want %d", short, test.short)
			}
			_, changes, err := EditOwned(data, "f", after)
			if err != nil {
				t.Fatal(err)
			}
			var lines []string
			for _, c := range changes {
				lines = append(lines, c.New...)
			}
			for i, line := range test.written {
				if i >= len(lines) || !strings.Contains(lines[i], line) {
					t.Errorf("wrote %q, want %q", lines, test.written)
				}
			}
			if len(lines) != len(test.written) {
				t.Errorf("wrote %q, want %q", lines, test.written)
			}
		})
	}
}

func TestDealsThatAreNone(t *testing.T) {
	c := catalog.Embedded()
	for _, test := range []struct{ part, count, amount, want string }{
		{"lfp-rak-5", "1", "1", `the catalogue has no part "lfp-rak-5"; did you mean "lfp-rack-5"?`},
		{"lfp-rack-5", "1.5", "much", `battery "lfp-rack-5" is counted by piece, and "1.5" is not a number of pieces; write 1 to 10000
"much" is not an amount of money; write for example 1190 or 1190.50`},
		{"lfp-rack-5", "0", "-5", `battery "lfp-rack-5" is counted by piece, and "0" is not a number of pieces; write 1 to 10000
"-5" is not an amount of money; write for example 1190 or 1190.50`},
		{"flex-2-0", "3", "5", `cable "flex-2-0" is counted by length, and "3" is not a length; write for example "12 ft"`},
	} {
		if _, err := ReadDeal(c, test.part, test.count, test.amount); err == nil || err.Error() != test.want {
			t.Errorf("%v: got %v", test, err)
		}
	}
	s := &Scenario{File: "f", Have: []Holding{{PartID: "a", Count: 2, Keep: true}, {PartID: "b", Count: 3, ByLength: true, Ends: 1}}}
	for _, test := range []struct {
		deal Deal
		want string
	}{
		{Deal{PartID: "c", Count: 1}, `you own none of it: "c"; sell at most what is under have`},
		{Deal{PartID: "a", Count: 3}, `you own 2: "a"; sell at most what is under have`},
		{Deal{PartID: "b", Count: 3.1, ByLength: true}, `you own 3 m: "b"; sell at most what is under have`},
		{Deal{PartID: "b", Count: 3, ByLength: true, Ends: 2}, `you own 3 m: "b"; sell at most what is under have`},
		{Deal{PartID: "a", Count: 1}, `"a" is to be kept; take keep out first`},
	} {
		if _, err := s.AfterSelling(test.deal); err == nil || err.Error() != test.want {
			t.Errorf("%v: got %v", test.deal, err)
		}
	}
}
