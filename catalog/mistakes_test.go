package catalog_test

import (
	"slices"
	"strings"
	"testing"
)

// A mistake is a file of the smallest catalogue with something replaced, and what is said about it.
type mistake struct {
	name     string
	file     string
	old, new string
	want     []string
}

func try(t *testing.T, mistakesIn []mistake) {
	for _, m := range mistakesIn {
		t.Run(m.name, func(t *testing.T) {
			data := strings.Replace(smallest[m.file], m.old, m.new, 1)
			if data == smallest[m.file] {
				t.Fatalf("%q is not in %s", m.old, m.file)
			}
			got := mistakes(t, with(map[string]string{m.file: data}))
			if !slices.Equal(got, m.want) {
				t.Errorf("got:\n%s\nwant:\n%s", strings.Join(got, "\n"), strings.Join(m.want, "\n"))
			}
		})
	}
}

func TestWrongHeaders(t *testing.T) {
	try(t, []mistake{
		{"misspelt", "batteries.csv", "id,name,price,mass_kg,chemistry", "id,name,price,mass_kg,chemstry", []string{
			`cart/batteries.csv:1:1: column "chemistry" is missing; add it: a word, for example LFP`,
			`cart/batteries.csv:1:23: unknown column "chemstry"; did you mean "chemistry"?`,
		}},
		{"no unit", "casters.csv", "mass_kg", "mass", []string{
			`cart/casters.csv:1:1: column "mass_kg" is missing; add it: kilograms, for example 45 (or pounds under mass_lb)`,
			`cart/casters.csv:1:15: unknown column "mass"; did you mean "mass_kg"?`,
		}},
		{"unit of another kind", "casters.csv", "mass_kg", "mass_mm", []string{
			`cart/casters.csv:1:1: column "mass_kg" is missing; add it: kilograms, for example 45 (or pounds under mass_lb)`,
			`cart/casters.csv:1:15: unknown column "mass_mm"; did you mean "mass_kg"?`,
		}},
		{"both of a pair", "casters.csv", "rating_kg\nwheels,Wheels,80,6,160", "rating_kg,rating_lb\nwheels,Wheels,80,6,160,350", []string{
			`cart/casters.csv:2:24: rating_lb says again what rating_kg says; fill one of the two in a row`,
		}},
		{"both of a pair per length", "cables.csv", "insulation_c\nwire,Wire,8.70,0.35,2 AWG,copper,90",
			"insulation_c,price_per_ft\nwire,Wire,8.70,0.35,2 AWG,copper,90,2", []string{
				`cart/cables.csv:2:37: price_per_ft says again what price_per_m says; fill one of the two in a row`,
			}},
		{"twice", "casters.csv", "rating_kg\nwheels,Wheels,80,6,160", "rating_kg,price\nwheels,Wheels,80,6,160,80", []string{
			`cart/casters.csv:1:33: column "price" stands twice; keep one of them`,
		}},
		{"missing", "solar.csv", ",voc_temp_pct_per_c\nsun,Module,120,20,400,37.2,31.2,13.6,12.8,-0.27",
			"\nsun,Module,120,20,400,37.2,31.2,13.6,12.8", []string{
				`cart/solar.csv:1:1: column "voc_temp_pct_per_c" is missing; add it: percent per degree, for example -0.28`,
			}},
		{"price each of a cable", "cables.csv", "price_per_m,", "price,", []string{
			`cart/cables.csv:1:1: column "price_per_m" is missing; add it: units of currency a metre, for example 8.70 ` +
				`(or units of currency a foot under price_per_ft)`,
			`cart/cables.csv:1:9: unknown column "price"; did you mean "price_per_m"?`,
		}},
		{"no header", "busbars.csv", smallest["busbars.csv"], "# nothing yet\n", []string{
			`cart/busbars.csv: the file is empty; name the columns in the first line: id,name,price,mass_kg,rating_a,studs`,
		}},
		{"no rows", "busbars.csv", "bars,Bars,40,1,250,6\n", "", []string{
			`cart/busbars.csv: the file has no parts in it; every cart needs one; add a row`,
		}},
		{"semicolons", "busbars.csv", smallest["busbars.csv"], "id;name;price\nbars;Bars;40\n", []string{
			`cart/busbars.csv:1:1: the cells are separated by semicolons; save the file with commas between the cells`,
		}},
		{"tabs", "busbars.csv", smallest["busbars.csv"], "id\tname\tprice\nbars\tBars\t40\n", []string{
			`cart/busbars.csv:1:1: the cells are separated by tabs; save the file with commas between the cells`,
		}},
	})
}

func TestWrongRows(t *testing.T) {
	try(t, []mistake{
		{"too few cells", "busbars.csv", "bars,Bars,40,1,250,6", "bars,Bars,40,1,250", []string{
			`cart/busbars.csv:2:16: the row has 5 cells, the header has 6; give each column one cell, and quote a cell with a comma in it`,
		}},
		{"too many cells", "busbars.csv", "bars,Bars,40,1,250,6", "bars,Bars, small,40,1,250,6", []string{
			`cart/busbars.csv:2:27: the row has 7 cells, the header has 6; give each column one cell, and quote a cell with a comma in it`,
		}},
		{"a cell under no header", "busbars.csv", "studs\nbars,Bars,40,1,250,6", "studs,\nbars,Bars,40,1,250,6,what?", []string{
			`cart/busbars.csv:2:22: the cell "what?" stands under no header; name its column or empty it`,
		}},
		{"bare quote", "busbars.csv", "Bars", `12" bars`, []string{
			`cart/busbars.csv:2:8: a " stands inside a cell that is not quoted; quote the whole cell and write "" for each " in it`,
		}},
		{"text after a quoted cell", "busbars.csv", "Bars", `"Bars"s`, []string{
			`cart/busbars.csv:2:11: a quoted cell does not end at this "; put a comma after it, or write "" for a " in the cell`,
		}},
		{"quote never closed", "busbars.csv", "Bars", `"Bars`, []string{
			`cart/busbars.csv:2:1: the row opens a quoted cell and does not close it; put a " before the comma, or write "" for a " in the cell`,
		}},
		{"needed cell empty", "busbars.csv", "250", " ", []string{
			`cart/busbars.csv:2:17: rating_a is empty; write amperes, for example 100`,
		}},
		{"id twice in a file", "busbars.csv", "bars,Bars,40,1,250,6", "bars,Bars,40,1,250,6\nbars,Bars,40,1,250,6", []string{
			`cart/busbars.csv:3:1: the id "bars" is already used, at cart/busbars.csv:2:1; give each part an id of its own`,
		}},
		{"id twice in two files", "sundries.csv", "shunt,Shunt", "fuse,Shunt", []string{
			`cart/sundries.csv:2:1: the id "fuse" is already used, at cart/devices.csv:2:1; give each part an id of its own`,
		}},
		{"id twice in a row with another mistake", "sundries.csv", "shunt,Shunt,39", "fuse,Shunt,x", []string{
			`cart/sundries.csv:2:1: the id "fuse" is already used, at cart/devices.csv:2:1; give each part an id of its own`,
			`cart/sundries.csv:2:12: price "x" is not a number; write units of currency, for example 1290.50`,
		}},
		{"id like a comment", "sundries.csv", "id,name,price,mass_kg,role\nshunt,Shunt", "name,id,price,mass_kg,role\nShunt,#1", []string{
			`cart/sundries.csv:2:7: id "#1" does not begin with a letter or a digit; write a short word of your own, for example rack-5`,
		}},
		{"long id", "sundries.csv", "shunt,Shunt", strings.Repeat("s", 65) + ",Shunt", []string{
			`cart/sundries.csv:2:1: id has 65 characters; write at most 64`,
		}},
		{"control character in an id", "sundries.csv", "shunt,Shunt", "shu\x00nt,Shunt", []string{
			`cart/sundries.csv:2:1: id "shu\x00nt" has a control character in it; write plain text`,
		}},
		{"long name", "sundries.csv", "Shunt", strings.Repeat("s", 501), []string{
			`cart/sundries.csv:2:7: name has 501 characters; write at most 500`,
		}},
		{"control character", "sundries.csv", "Shunt", "Shu\x1b[31mnt", []string{
			`cart/sundries.csv:2:7: name "Shu\x1b[31mnt" has a control character in it; write plain text`,
		}},
		{"day that is none", "devices.csv", "rating_a\nfuse,Fuse,45,0.3,fuse,125", "rating_a,as_of\nfuse,Fuse,45,0.3,fuse,125,2026-02-30", []string{
			`cart/devices.csv:2:27: as_of "2026-02-30" is not a day of the calendar; write year, month and day, for example 2026-03-14`,
		}},
		{"day that may be two", "devices.csv", "rating_a\nfuse,Fuse,45,0.3,fuse,125", "rating_a,as_of\nfuse,Fuse,45,0.3,fuse,125,3/4/2026", []string{
			`cart/devices.csv:2:27: as_of "3/4/2026" may mean either of two days; write 2026-03-04 or 2026-04-03`,
		}},
		{"serial day of a spreadsheet in a text", "devices.csv", "rating_a\nfuse,Fuse,45,0.3,fuse,125", "rating_a,as_of\nfuse,Fuse,45,0.3,fuse,125,46095", []string{
			`cart/devices.csv:2:27: as_of "46095" is not a day of the calendar; write year, month and day, for example 2026-03-14`,
		}},
		{"day the other way round", "devices.csv", "rating_a\nfuse,Fuse,45,0.3,fuse,125", "rating_a,as_of\nfuse,Fuse,45,0.3,fuse,125,14/3/2026", []string{
			`cart/devices.csv:2:27: as_of "14/3/2026" is not a day of the calendar; write year, month and day, for example 2026-03-14`,
		}},
		{"part of a cent", "busbars.csv", "studs\nbars,Bars,40,1,250,6", "studs,price_low,price_high\nbars,Bars,40.129,1,250,6,39,41.001", []string{
			`cart/busbars.csv:2:11: price 40.129 has a part of a cent; write 40.12 or 40.13`,
			`cart/busbars.csv:2:29: price_high 41.001 has a part of a cent; write 41.00 or 41.01`,
		}},
		{"half a price range", "busbars.csv", "studs\nbars,Bars,40,1,250,6", "studs,price_low\nbars,Bars,40,1,250,6,35", []string{
			`cart/busbars.csv:2:22: only one of price_low and price_high is stated; state both or neither`,
		}},
		{"price outside its range", "busbars.csv", "studs\nbars,Bars,40,1,250,6", "studs,price_low,price_high\nbars,Bars,40,1,250,6,42,50", []string{
			`cart/busbars.csv:2:22: the price 40 is not between price_low 42 and price_high 50; widen the range or correct the price`,
		}},
		{"price outside its range, per foot", "cables.csv",
			"price_per_m,mass_kg_per_m,size,material,insulation_c\nwire,Wire,8.70,0.35,2 AWG,copper,90",
			"price_per_ft,mass_kg_per_m,size,material,insulation_c,price_low_per_ft,price_high_per_ft\nwire,Wire,2.65,0.35,2 AWG,copper,90,2.7,2.9", []string{
				`cart/cables.csv:2:37: the price 2.65 is not between price_low_per_ft 2.7 and price_high_per_ft 2.9; widen the range or correct the price`,
			}},
	})
}

func TestWrongNumbers(t *testing.T) {
	const row = "wheels,Wheels,80,6,160"
	at := func(what string) []string { return []string{"cart/casters.csv:2:18: " + what} }
	const kg = "write kilograms from 0 to 100000, for example 45"
	price := func(what string) []string { return []string{"cart/casters.csv:2:15: " + what} }
	const cur = "write units of currency, for example 1290.50"
	try(t, []mistake{
		{"a word", "casters.csv", row, "wheels,Wheels,80,six,160", at(`mass_kg "six" is not a number; write kilograms, for example 45`)},
		{"a letter for a digit", "casters.csv", row, "wheels,Wheels,80,1l5,160", at(`mass_kg "1l5" is not a number; write kilograms, for example 45`)},
		{"a unit", "casters.csv", row, "wheels,Wheels,80,6 kg,160", at(`mass_kg "6 kg" is not a number; write kilograms, for example 45`)},
		{"NaN", "casters.csv", row, "wheels,Wheels,80,NaN,160", at(`mass_kg "NaN" is not a number; write kilograms, for example 45`)},
		{"infinity", "casters.csv", row, "wheels,Wheels,80,Inf,160", at(`mass_kg "Inf" is not a number; write kilograms, for example 45`)},
		{"hexadecimal", "casters.csv", row, "wheels,Wheels,80,0x10,160", at(`mass_kg "0x10" is not a number; write kilograms, for example 45`)},
		{"underscore", "casters.csv", row, "wheels,Wheels,80,1_0,160", at(`mass_kg "1_0" is not a number; write kilograms, for example 45`)},
		{"negative", "casters.csv", row, "wheels,Wheels,80,-6,160", at(`mass_kg -6 is negative; ` + kg)},
		{"beyond float64", "casters.csv", row, "wheels,Wheels,80,1e999,160", at(`mass_kg "1e999" is too large; write kilograms, for example 45`)},
		{"too large", "casters.csv", row, "wheels,Wheels,80,100001,160", at(`mass_kg 100001 is too large; ` + kg)},
		{"too small", "casters.csv", row, "wheels,Wheels,80,1e-9,160", at(`mass_kg 1e-9 is too small; write 0, or at least 0.000001 kilograms`)},
		{"long", "casters.csv", row, "wheels,Wheels,80," + strings.Repeat("9", 65) + ",160",
			at(`mass_kg "` + strings.Repeat("9", 60) + `"... is not a number; write kilograms, for example 45`)},
		{"two currency signs", "casters.csv", row, "wheels,Wheels,$80 €,6,160", price(`price "$80 €" is not a number; ` + cur)},
		{"thousands the other way round", "casters.csv", row, `wheels,Wheels,"1.080,00",6,160`, price(`price "1.080,00" is not a number; ` + cur)},
		{"thousands of two digits", "casters.csv", row, `wheels,Wheels,"$1,08",6,160`, price(`price "$1,08" is not a number; ` + cur)},
		{"negative price", "casters.csv", row, "wheels,Wheels,-80,6,160",
			price(`price -80 is negative; write units of currency from 0 to 1000000000, for example 1290.50`)},
		{"price too large", "casters.csv", row, "wheels,Wheels,1000000000.01,6,160",
			price(`price 1000000000.01 is too large; write units of currency from 0 to 1000000000, for example 1290.50`)},
		{"zero where none can be", "casters.csv", row, "wheels,Wheels,80,6,0",
			[]string{`cart/casters.csv:2:20: rating_kg 0 is zero; write kilograms from 0.000001 to 100000, for example 45`}},
		{"bounds in pounds", "casters.csv", "rating_kg\n" + row, "rating_lb\nwheels,Wheels,80,6,-1",
			[]string{`cart/casters.csv:2:20: rating_lb -1 is negative; write pounds from 0.00000220462 to 220462, for example 99`}},
		{"part of a stud", "busbars.csv", "250,6", "250,6.5",
			[]string{`cart/busbars.csv:2:20: studs "6.5" is not a whole number; write a whole number from 1 to 10000`}},
		{"no stud", "busbars.csv", "250,6", "250,0",
			[]string{`cart/busbars.csv:2:20: studs 0 is out of range; write a whole number from 1 to 10000`}},
		{"very many studs", "busbars.csv", "250,6", "250,99999999999999999999",
			[]string{`cart/busbars.csv:2:20: studs "99999999999999999999" is not a whole number; write a whole number from 1 to 10000`}},
	})
}

func TestWrongOfItsKind(t *testing.T) {
	const pack = "LFP,51.2,44.8,58.4,5.12,0.9,100,50,20,442,420,133"
	const inv = "inv,Inverter,900,12,42,62,120/240,6000,12000,0.93,40"
	const wire = "wire,Wire,8.70,0.35,2 AWG,copper,90"
	const sun = "37.2,31.2,13.6,12.8,-0.27"
	try(t, []mistake{
		{"usable fraction in percent", "batteries.csv", pack, strings.Replace(pack, "0.9", "90", 1), []string{
			`cart/batteries.csv:2:43: usable_fraction 90 is too large; write a fraction from 0.001 to 1, for example 0.93 for 93 %`}},
		{"usable fraction zero", "batteries.csv", pack, strings.Replace(pack, "0.9", "0", 1), []string{
			`cart/batteries.csv:2:43: usable_fraction 0 is zero; write a fraction from 0.001 to 1, for example 0.93 for 93 %`}},
		{"voltages fall", "batteries.csv", pack, strings.Replace(pack, "44.8,58.4", "58.4,44.8", 1), []string{
			`cart/batteries.csv:2:23: nominal_v 51.2 is below min_v 58.4; the three voltages rise from min_v to max_v`,
			`cart/batteries.csv:2:33: max_v 44.8 is below nominal_v 51.2; the three voltages rise from min_v to max_v`}},
		{"no resistance", "batteries.csv", pack, strings.Replace(pack, ",20,", ",0,", 1), []string{
			`cart/batteries.csv:2:54: resistance_mohm 0 is zero; write milliohms from 0.001 to 1000000, for example 22`}},
		{"efficiency in percent", "inverters.csv", inv, strings.Replace(inv, "0.93", "93", 1), []string{
			`cart/inverters.csv:2:46: efficiency 93 is too large; write a fraction from 0.001 to 1, for example 0.93 for 93 %`}},
		{"voltage window", "inverters.csv", inv, strings.Replace(inv, "42,62", "62,42", 1), []string{
			`cart/inverters.csv:2:24: dc_max_v 42 is below dc_min_v 62; the window runs from dc_min_v to dc_max_v`}},
		{"surge below continuous", "inverters.csv", inv, strings.Replace(inv, "12000", "1200", 1), []string{
			`cart/inverters.csv:2:40: surge_w 1200 is below continuous_w 6000; repeat continuous_w where no surge is known`}},
		{"ac_v nearly", "inverters.csv", inv, strings.Replace(inv, "120/240", "120-240", 1), []string{
			`cart/inverters.csv:2:27: ac_v "120-240" is none of the choices; did you mean "120/240"? Write 120, 230 or 120/240`}},
		{"ac_v other", "inverters.csv", inv, strings.Replace(inv, "120/240", "sine", 1), []string{
			`cart/inverters.csv:2:27: ac_v "sine" is none of the choices; write 120, 230 or 120/240`}},
		{"size", "cables.csv", wire, strings.Replace(wire, "2 AWG", "thick", 1), []string{
			`cart/cables.csv:2:21: size "thick" is not a conductor size; write a size, for example 4/0 AWG, 250 kcmil or 35 mm2`}},
		{"size beyond all tables", "cables.csv", wire, strings.Replace(wire, "2 AWG", "5000 mm2", 1), []string{
			`cart/cables.csv:2:21: size "5000 mm2" is out of range; write a size from 0.05 to 1100 mm2`}},
		{"material", "cables.csv", wire, strings.Replace(wire, "copper", "coper", 1), []string{
			`cart/cables.csv:2:27: material "coper" is none of the choices; did you mean "copper"? Write copper or aluminium`}},
		{"insulation", "cables.csv", wire, strings.Replace(wire, "90", "80", 1), []string{
			`cart/cables.csv:2:34: insulation_c "80" is none of the choices; write 60, 70, 75, 90 or 105`}},
		{"type of device", "devices.csv", "0.3,fuse,125", "0.3,fuze,125", []string{
			`cart/devices.csv:2:18: type "fuze" is none of the choices; did you mean "fuse"? Write fuse or breaker`}},
		{"poles", "devices.csv", "rating_a\nfuse,Fuse,45,0.3,fuse,125", "rating_a,poles\nfuse,Fuse,45,0.3,fuse,125,5", []string{
			`cart/devices.csv:2:27: poles 5 is out of range; write a whole number from 1 to 4`}},
		{"terminal", "devices.csv", "rating_a\nfuse,Fuse,45,0.3,fuse,125", "rating_a,terminal_c\nfuse,Fuse,45,0.3,fuse,125,80", []string{
			`cart/devices.csv:2:27: terminal_c "80" is none of the choices; write 60, 75 or 90`}},
		{"more brakes than wheels", "casters.csv", "rating_kg\nwheels,Wheels,80,6,160", "rating_kg,set_of,brakes\nwheels,Wheels,80,6,160,3,4", []string{
			`cart/casters.csv:2:26: brakes 4 is more than the 3 wheels of the set; count the wheels of the set that have it`}},
		{"solar voltages", "solar.csv", sun, strings.Replace(sun, "31.2", "39", 1), []string{
			`cart/solar.csv:2:23: voc_v 37.2 is below vmp_v 39; the open-circuit voltage is the higher one`}},
		{"solar currents", "solar.csv", sun, strings.Replace(sun, "12.8", "15", 1), []string{
			`cart/solar.csv:2:33: isc_a 13.6 is below imp_a 15; the short-circuit current is the higher one`}},
		{"solar coefficient", "solar.csv", sun, strings.Replace(sun, "-0.27", "-27", 1), []string{
			`cart/solar.csv:2:43: voc_temp_pct_per_c -27 is too small; write percent per degree from -5 to 5, for example -0.28`}},
		{"no role", "sundries.csv", "0.4,shunt", "0.4,", []string{
			`cart/sundries.csv:2:20: role is empty; write a word, for example shunt, disconnect, load-centre or receptacle`}},
	})
}
