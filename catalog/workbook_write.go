//go:build !js

package catalog

import (
	"io"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"
)

// dropRows is the last row of a new workbook whose cells offer a list of words.
const dropRows = 2000

// WriteWorkbook writes a catalogue as an .xlsx workbook with a sheet for each kind, in metric units and with every
// column. The header stays in sight, required columns are bold, and cells that take one of a few words offer a list.
// Reading it back gives the same catalogue.
func (c *Catalog) WriteWorkbook(w io.Writer) error {
	book := excelize.NewFile()
	defer book.Close() // it is whole in memory
	styles, err := newStyles(book)
	if err != nil {
		return err
	}
	for _, add := range []error{
		addSheet(book, styles, batteryTable, c.Batteries), addSheet(book, styles, inverterTable, c.Inverters),
		addSheet(book, styles, cableTable, c.Cables), addSheet(book, styles, deviceTable, c.Devices),
		addSheet(book, styles, busbarTable, c.Busbars), addSheet(book, styles, castersTable, c.Casters),
		addSheet(book, styles, solarTable, c.Solar), addSheet(book, styles, sundryTable, c.Sundries),
		addSheet(book, styles, conduitTable, c.Conduits), addSheet(book, styles, sectionTable, c.Sections),
		addSheet(book, styles, offerTable(c, true), c.Offers), book.DeleteSheet("Sheet1"),
	} {
		if add != nil {
			return add
		}
	}
	_, err = book.WriteTo(w)
	return err
}

// styles are the looks of cells.
type styles struct{ required, optional, text, day int }

func newStyles(book *excelize.File) (s styles, err error) {
	yearFirst := "yyyy-mm-dd"
	for _, one := range []struct {
		into *int
		look excelize.Style
	}{
		{&s.required, excelize.Style{Font: &excelize.Font{Bold: true}}},
		{&s.optional, excelize.Style{Font: &excelize.Font{Italic: true}}},
		{&s.text, excelize.Style{NumFmt: 49}}, // kept as typed: 3/4 does not become a day
		{&s.day, excelize.Style{CustomNumFmt: &yearFirst}},
	} {
		if *one.into, err = book.NewStyle(&one.look); err != nil {
			return s, err
		}
	}
	return s, nil
}

// addSheet adds the sheet of a kind.
func addSheet[T any](book *excelize.File, looks styles, t table[T], parts []T) error {
	name := strings.TrimSuffix(t.file, ".csv")
	if _, err := book.NewSheet(name); err != nil {
		return err
	}
	for i, c := range t.columns {
		letters, err := excelize.ColumnNumberToName(i + 1)
		if err != nil {
			return err
		}
		if err := addColumn(book, looks, name, letters, c, parts); err != nil {
			return err
		}
	}
	return book.SetPanes(name, &excelize.Panes{Freeze: true, YSplit: 1, TopLeftCell: "A2", ActivePane: "bottomLeft"})
}

// addColumn fills a column of a sheet.
func addColumn[T any](book *excelize.File, looks styles, sheet, letters string, c column[T], parts []T) error {
	look, head := looks.text, looks.optional
	switch c.format {
	case isNumber:
		look = 0
	case isDay:
		look = looks.day
	}
	if c.need {
		head = looks.required
	}
	top, width := letters+"1", float64(max(len(c.name)+2, 10))
	steps := []error{
		book.SetColStyle(sheet, letters, look), book.SetColWidth(sheet, letters, letters, width),
		book.SetCellStr(sheet, top, c.name), book.SetCellStyle(sheet, top, top, head),
	}
	if len(c.words) > 0 {
		list := excelize.NewDataValidation(true)
		list.SetSqref(letters + "2:" + letters + strconv.Itoa(dropRows))
		steps = append(steps, list.SetDropList(c.words), book.AddDataValidation(sheet, list))
	}
	for i := range parts {
		steps = append(steps, setCell(book, sheet, letters+strconv.Itoa(i+2), c, &parts[i]))
	}
	for _, err := range steps {
		if err != nil {
			return err
		}
	}
	return nil
}

// setCell fills a cell: a number as it is written in CSV, so that it reads back to the last bit, a day as a day.
func setCell[T any](book *excelize.File, sheet, at string, c column[T], v *T) error {
	text := c.write(v)
	switch {
	case text == "":
		return nil
	case c.format == isNumber:
		return book.SetCellDefault(sheet, at, text)
	case c.format == isDay:
		return book.SetCellDefault(sheet, at, serialText(text))
	}
	return book.SetCellStr(sheet, at, text)
}
