package catalog

// Kinds returns the kinds of part in the order of a bill.
func Kinds() []Kind {
	return []Kind{KindBattery, KindInverter, KindCable, KindDevice, KindBusbar, KindCasters, KindSolar, KindSundry,
		KindConduit, KindSection}
}

// files are the names of a catalogue's files: one for each of Kinds, and the offers.
var files = []string{
	batteryTable.file, inverterTable.file, cableTable.file, deviceTable.file, busbarTable.file,
	castersTable.file, solarTable.file, sundryTable.file, conduitTable.file, sectionTable.file, OffersFile,
}

// ByLength reports whether parts of a kind are bought by length.
func (k Kind) ByLength() bool { return k == KindCable || k == KindConduit || k == KindSection }

// File returns the name of the CSV file that holds the parts of a kind, "" for a kind that is none.
func (k Kind) File() string {
	for i, known := range Kinds() {
		if k == known {
			return files[i]
		}
	}
	return ""
}

// OffersFile is the name of the CSV file that holds the offers.
const OffersFile = "offers.csv"

// OffersFor returns the offers of a part in the order of their rows.
func (c *Catalog) OffersFor(id string) []Offer {
	var offers []Offer
	for _, o := range c.Offers {
		if o.PartID == id {
			offers = append(offers, o)
		}
	}
	return offers
}

// Column describes a column of a catalogue file to a person.
type Column struct {
	Name     string // with the metric unit, where it has a pair
	US       string // the name with the US unit; "" where there is none
	Required bool
	Default  string   // what an empty cell stands for; "" for nothing stated
	Expected string   // what to write in it
	Words    []string // what can be written in it, where that is one of a few
}

// Columns returns the columns of a kind's file, in the order they are written; none for an unknown kind.
func Columns(k Kind) []Column {
	switch k {
	case KindBattery:
		return batteryTable.describe()
	case KindInverter:
		return inverterTable.describe()
	case KindCable:
		return cableTable.describe()
	case KindDevice:
		return deviceTable.describe()
	case KindBusbar:
		return busbarTable.describe()
	case KindCasters:
		return castersTable.describe()
	case KindSolar:
		return solarTable.describe()
	case KindSundry:
		return sundryTable.describe()
	case KindConduit:
		return conduitTable.describe()
	case KindSection:
		return sectionTable.describe()
	}
	return nil
}

// OfferColumns returns the columns of offers.csv.
func OfferColumns() []Column { return offerTable(&Catalog{}, true).describe() }

// describe returns the columns of a table.
func (t table[T]) describe() []Column {
	columns := make([]Column, len(t.columns))
	for i, c := range t.columns {
		columns[i] = Column{Name: c.name, US: c.us, Required: c.need, Default: c.fill + c.derived, Expected: c.expected, Words: c.words}
	}
	return columns
}
