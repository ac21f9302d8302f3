package catalog_test

import (
	"slices"
	"strings"
	"testing"

	"cartwright/catalog"
)

func TestOffers(t *testing.T) {
	c := mustRead(t, with(map[string]string{"offers.csv": `part,vendor,price,price_per_ft,min_qty,min_ft,shipping,as_of,notes
pack,shop,950.51,,,,30,2026-11-01,
pack,shop,900,,4,,30,2026-11-01,from four on
wire,yard,8.125,,,,,,by the metre
wire,yard,,3.048,,10,,,by the foot
wire,yard,7,,100,,,,a drum
`}))
	packs := c.OffersFor("pack")
	if len(packs) != 2 || packs[0].Price != 95051 || packs[0].MinQty != 1 || packs[0].Shipping != 3000 ||
		packs[1].Price != 90000 || packs[1].MinQty != 4 || packs[1].Notes != "from four on" || packs[1].CentsPerM != 0 {
		t.Errorf("pack: %+v", packs)
	}
	wires := c.OffersFor("wire")
	// 3.048 a foot of 0.3048 m is 10 a metre; 10 ft are 3.048 m (international yard and pound agreement, 1959).
	if len(wires) != 3 || wires[0].CentsPerM != 812.5 || wires[0].MinQty != 1 || wires[0].Price != 0 ||
		wires[1].CentsPerM != 1000 || wires[1].MinQty != 3.048 || wires[2].MinQty != 100 {
		t.Errorf("wire: %+v", wires)
	}
	if none := c.OffersFor("bars"); none != nil {
		t.Errorf("bars: %+v", none)
	}
}

func TestWrongOffers(t *testing.T) {
	for _, test := range []struct {
		name, header, rows string
		want               []string
	}{
		{"unknown part", "", "pakc,shop,950", []string{`2:1: no part has the id "pakc"; did you mean "pack"?`}},
		{"part like none", "", "telescope,shop,950", []string{
			`2:1: no part has the id "telescope"; name a part of the catalogue's other files`}},
		{"no vendor", "", "pack,,950", []string{`2:6: vendor is empty; write the seller's name`}},
		{"no price", "", "pack,shop,", []string{
			`2:11: price is empty; write the price of one, or of a metre of what is bought by length, or fill price_per_m`}},
		{"no price column", "part,vendor", "pack,shop", []string{
			`1:1: column "price" is missing; add it: units of currency, for example 1290.50`}},
		{"price", "", "pack,shop,free", []string{
			`2:11: price "free" is not a number; write units of currency, for example 1290.50`}},
		{"part of a cent", "part,vendor,price,shipping", "pack,shop,950.505,30", []string{
			`2:11: price 950.505 has a part of a cent; write 950.50 or 950.51`}},
		{"part of a cent for shipping", "part,vendor,price,shipping", "pack,shop,950,0.001\nwire,yard,8.12345,3", []string{
			`2:15: shipping 0.001 has a part of a cent; write 0.00 or 0.01`}},
		{"part of a cent of what there is not", "", "pakc,shop,950.505", []string{`2:1: no part has the id "pakc"; did you mean "pack"?`}},
		{"shipping", "part,vendor,price,shipping", "pack,shop,950,-1", []string{
			`2:15: shipping -1 is negative; write units of currency from 0 to 1000000000, for example 1290.50`}},
		{"quantity", "part,vendor,price,min_qty", "pack,shop,950,0", []string{
			`2:15: min_qty 0 is zero; write pieces or metres from 0.001 to 1000000, for example 4`}},
		{"part of a piece", "part,vendor,price,min_qty", "pack,shop,950,1.5", []string{
			`2:15: min_qty 1.5 is not a whole number of pieces; write 1 or more`}},
		{"day", "part,vendor,price,as_of", "pack,shop,950,today", []string{
			`2:15: as_of "today" is not a day of the calendar; write year, month and day, for example 2026-03-14`}},
		{"column", "part,vendor,price,shiping", "pack,shop,950,9", []string{`1:19: unknown column "shiping"; did you mean "shipping"?`}},
		{"same again", "", "pack,shop,950\npack,shop,940", []string{
			`3:1: shop has offered pack from that quantity on already, at cart/offers.csv:2:1; keep one, or give the quantity break a higher min_qty`}},
		{"price per metre of a pack", "part,vendor,price,price_per_m", "pack,shop,,9", []string{
			`2:11: price_per_m is for what is bought by length, "pack" is not; use price`}},
		{"two prices of a cable", "part,vendor,price,price_per_ft", "wire,shop,8,9", []string{
			`2:11: both price and price_per_ft are stated; keep one of them`}},
		{"length of a pack", "part,vendor,price,min_ft", "pack,shop,950,9", []string{
			`2:15: min_ft is for what is bought by length, "pack" is not; use min_qty`}},
		{"two quantities of a cable", "part,vendor,price,min_qty,min_m", "wire,shop,8,9,9", []string{
			`2:15: both min_qty and min_m are stated; keep one of them`}},
	} {
		t.Run(test.name, func(t *testing.T) {
			if test.header == "" {
				test.header = "part,vendor,price"
			}
			got := mistakes(t, with(map[string]string{"offers.csv": test.header + "\n" + test.rows + "\n"}))
			for i := range got {
				got[i] = strings.TrimPrefix(got[i], "cart/offers.csv:")
			}
			if !slices.Equal(got, test.want) {
				t.Errorf("got:\n%s\nwant:\n%s", strings.Join(got, "\n"), strings.Join(test.want, "\n"))
			}
		})
	}
}

// An offer is not blamed for a part whose own row could not be read.
func TestOffersOfUnreadParts(t *testing.T) {
	for name, batteries := range map[string]string{
		"wrong cell":     strings.Replace(smallest["batteries.csv"], "44.8", "low", 1),
		"too few cells":  strings.Replace(smallest["batteries.csv"], ",133", "", 1),
		"wrong quotes":   strings.Replace(smallest["batteries.csv"], "Pack", `"Pa"ck"`, 1),
		"not UTF-8":      strings.Replace(smallest["batteries.csv"], "Pack", "P\xe4ck", 1),
		"no column id":   strings.Replace(smallest["batteries.csv"], "id,", "ident,", 1),
		"other encoding": "\xff\xfei\x00d\x00",
	} {
		t.Run(name, func(t *testing.T) {
			for _, m := range mistakes(t, with(map[string]string{"batteries.csv": batteries})) {
				if !strings.HasPrefix(m, "cart/batteries.csv") {
					t.Errorf("a mistake of another file: %s", m)
				}
			}
		})
	}
}

func TestOfferColumns(t *testing.T) {
	var names []string
	for _, c := range catalog.OfferColumns() {
		names = append(names, c.Name)
	}
	want := "part vendor price price_per_m min_qty min_m shipping as_of notes"
	if got := strings.Join(names, " "); got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}
