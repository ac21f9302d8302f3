package catalog

import (
	"encoding/csv"
	"fmt"
	"io"
)

// Write writes the parts of a kind as their CSV file, in metric units and with every column. Reading it
// back gives the same parts, to the last bit.
func (c *Catalog) Write(k Kind, w io.Writer) error {
	switch k {
	case KindBattery:
		return batteryTable.write(c.Batteries, w)
	case KindInverter:
		return inverterTable.write(c.Inverters, w)
	case KindCable:
		return cableTable.write(c.Cables, w)
	case KindDevice:
		return deviceTable.write(c.Devices, w)
	case KindBusbar:
		return busbarTable.write(c.Busbars, w)
	case KindCasters:
		return castersTable.write(c.Casters, w)
	case KindSolar:
		return solarTable.write(c.Solar, w)
	case KindSundry:
		return sundryTable.write(c.Sundries, w)
	case KindConduit:
		return conduitTable.write(c.Conduits, w)
	case KindSection:
		return sectionTable.write(c.Sections, w)
	}
	return fmt.Errorf("catalog: there is no kind of part %q", k)
}

// WriteOffers writes the offers as their CSV file. The catalogue's parts say which offers are by the metre.
func (c *Catalog) WriteOffers(w io.Writer) error {
	return offerTable(c, true).write(c.Offers, w)
}

// write writes a header and the rows.
func (t table[T]) write(rows []T, w io.Writer) error {
	out := csv.NewWriter(w)
	if err := out.Write(t.names(false)); err != nil {
		return err
	}
	record := make([]string, len(t.columns))
	for i := range rows {
		for k, c := range t.columns {
			record[k] = c.write(&rows[i])
		}
		if err := out.Write(record); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}
