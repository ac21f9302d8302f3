package catalog_test

import (
	"bytes"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"cartwright/catalog"
)

// bookOf returns the embedded catalogue as a workbook.
func bookOf(t testing.TB) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := catalog.Embedded().WriteWorkbook(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// changedBook returns it with changes made as a person makes them.
func changedBook(t *testing.T, change func(*excelize.File)) []byte {
	t.Helper()
	book, err := excelize.OpenReader(bytes.NewReader(bookOf(t)))
	if err != nil {
		t.Fatal(err)
	}
	defer book.Close()
	change(book)
	var b bytes.Buffer
	if _, err := book.WriteTo(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// column returns the letters of a column of a sheet.
func column(t *testing.T, book *excelize.File, sheet, name string) string {
	t.Helper()
	rows, err := book.GetRows(sheet)
	if err != nil {
		t.Fatal(err)
	}
	letters, err := excelize.ColumnNumberToName(slices.Index(rows[0], name) + 1)
	if err != nil {
		t.Fatalf("%s has no column %s", sheet, name)
	}
	return letters
}

func TestWorkbookReadsBack(t *testing.T) {
	data := bookOf(t)
	if !bytes.Equal(data, bookOf(t)) {
		t.Error("the same catalogue makes two different workbooks")
	}
	c, err := catalog.ReadWorkbook(data, "parts.xlsx")
	if err != nil {
		t.Fatal(err)
	}
	if got, want := unplaced(c), unplaced(catalog.Embedded()); !reflect.DeepEqual(got, want) {
		t.Error("another catalogue is read back")
	}
	if got := c.Devices[0].Pos.String(); got != "parts.xlsx:devices!A2" {
		t.Errorf("the first device is at %s", got)
	}
	file := filepath.Join(t.TempDir(), "parts.XLSX")
	if err := os.WriteFile(file, data, 0o666); err != nil {
		t.Fatal(err)
	}
	if c, err := catalog.Open(file); err != nil || len(c.Batteries) == 0 {
		t.Errorf("%v", err)
	}
}

// What a person sees: a frozen header, drop-downs, text that no spreadsheet takes for a day, and days.
func TestWorkbookLooks(t *testing.T) {
	book, err := excelize.OpenReader(bytes.NewReader(bookOf(t)))
	if err != nil {
		t.Fatal(err)
	}
	defer book.Close()
	want := []string{"batteries", "inverters", "cables", "devices", "busbars", "casters", "solar", "sundries", "conduits", "sections", "offers"}
	if got := book.GetSheetList(); !slices.Equal(got, want) {
		t.Errorf("sheets %q", got)
	}
	for _, sheet := range want {
		panes, err := book.GetPanes(sheet)
		if err != nil || !panes.Freeze || panes.YSplit != 1 {
			t.Errorf("%s: the header is not frozen: %+v, %v", sheet, panes, err)
		}
	}
	lists, err := book.GetDataValidations("devices")
	if err != nil {
		t.Fatal(err)
	}
	offered := map[string]string{}
	for _, l := range lists {
		offered[l.Sqref] = l.Formula1
	}
	for name, words := range map[string]string{"type": `"fuse,breaker"`, "polarised": `"yes,no"`, "terminal_c": `"60,75,90"`} {
		letters := column(t, book, "devices", name)
		if got := offered[letters+"2:"+letters+"2000"]; got != words {
			t.Errorf("%s offers %q, want %q", name, got, words)
		}
	}
	if got, err := book.GetCellValue("batteries", column(t, book, "batteries", "as_of")+"2"); err != nil || got != "2026-10-12" {
		t.Errorf("the first day is shown as %q, %v", got, err)
	}
	if kind, err := book.GetCellType("conduits", column(t, book, "conduits", "trade_size")+"2"); err != nil || kind != excelize.CellTypeSharedString {
		t.Errorf("a trade size is a %v, %v", kind, err)
	}
}

// Cells as spreadsheets keep them, and a person's own sheets and columns.
func TestWorkbookAsPeopleKeepIt(t *testing.T) {
	data := changedBook(t, func(book *excelize.File) {
		set := func(sheet, name, row string, value any) {
			if err := book.SetCellValue(sheet, column(t, book, sheet, name)+row, value); err != nil {
				t.Fatal(err)
			}
		}
		set("batteries", "price", "2", 1290.1)
		set("batteries", "price", "4", "$1,249.00")
		set("batteries", "id", strconv.Itoa(len(catalog.Embedded().Batteries)+1), "12345678901234567890") // no offer names it
		for _, err := range []error{
			book.SetCellDefault("batteries", column(t, book, "batteries", "price")+"3", "1290.0999999999999"),
			book.SetSheetName("devices", "Devices "), book.SetCellStr("busbars", "Z1", "where"), book.SetCellStr("busbars", "Z2", "shop"),
		} {
			if err != nil {
				t.Fatal(err)
			}
		}
		for _, name := range []string{"price_low", "price_high"} {
			for _, row := range []string{"2", "3", "4"} {
				set("batteries", name, row, "")
			}
		}
		if _, err := book.NewSheet("my sums"); err != nil {
			t.Fatal(err)
		}
	})
	c, err := catalog.ReadWorkbook(data, "parts.xlsx")
	if err != nil {
		t.Fatal(err)
	}
	b := c.Batteries
	if b[0].Price != 129010 || b[1].Price != 129010 || b[2].Price != 124900 || b[len(b)-1].ID != "12345678901234567890" {
		t.Errorf("prices %d, %d, %d; id %s", b[0].Price, b[1].Price, b[2].Price, b[len(b)-1].ID)
	}
	if len(c.Own) != 1 || c.Own[0].Name != "where" || c.Own[0].Pos.String() != "parts.xlsx:busbars!Z1" {
		t.Errorf("own columns %v", c.Own)
	}
}

// Every mistake is told with the cell it stands in.
func TestWorkbookMistakes(t *testing.T) {
	data := changedBook(t, func(book *excelize.File) {
		for _, err := range []error{
			book.SetCellStr("casters", column(t, book, "casters", "rating_kg")+"3", "much"),
			book.SetCellStr("offers", "A2", "lfp-rak-5"), book.SetCellStr("batteries", "AH1", "protocol"),
			book.SetSheetName("solar", "soler"), book.DeleteSheet("busbars"),
		} {
			if err != nil {
				t.Fatal(err)
			}
		}
	})
	_, err := catalog.ReadWorkbook(data, "parts.xlsx")
	want := []string{
		`parts.xlsx:batteries!AH1: unknown column "protocol"; did you mean "protocols"?`,
		`parts.xlsx:busbars: the sheet is missing; write it; its columns are at least id,name,price,mass_kg,rating_a,studs`,
		`parts.xlsx:casters!J3: rating_kg "much" is not a number; write kilograms, for example 45`,
		`parts.xlsx:offers!A2: no part has the id "lfp-rak-5"; did you mean "lfp-rack-5"?`,
		`parts.xlsx:soler: this is not the name of a catalogue sheet; call it solar, or something less like it`,
	}
	if err == nil || !slices.Equal(strings.Split(err.Error(), "\n"), want) {
		t.Errorf("got\n%v\nwant\n%s", err, strings.Join(want, "\n"))
	}
}

func TestWorkbooksThatAreNone(t *testing.T) {
	dir := t.TempDir()
	empty := excelize.NewFile()
	defer empty.Close()
	old := excelize.NewFile()
	defer old.Close()
	counts := true
	if err := old.SetWorkbookProps(&excelize.WorkbookPropsOptions{Date1904: &counts}); err != nil {
		t.Fatal(err)
	}
	for name, save := range map[string]func(string) error{
		"text":  func(name string) error { return os.WriteFile(name, []byte("id,name\n"), 0o666) },
		"empty": func(name string) error { return empty.SaveAs(name) },
		"old":   func(name string) error { return old.SaveAs(name) },
		"none":  func(string) error { return nil },
	} {
		file := filepath.Join(dir, name+".xlsx")
		if err := save(file); err != nil {
			t.Fatal(err)
		}
		want := map[string]string{
			"text":  ": this cannot be read as a workbook: zip: not a valid zip file; save it as .xlsx, without a password",
			"empty": ": no sheet of this workbook belongs to a catalogue; call its sheets batteries, inverters, cables, devices, busbars, casters and, where wanted, solar, sundries, conduits, sections and offers",
			"old":   ": the workbook counts days from 1904; switch that off in the workbook's options, and check its days",
			"none":  ": there is no such workbook; name one that is there, or a folder of CSV files",
		}[name]
		if _, err := catalog.Open(file); err == nil || err.Error() != file+want {
			t.Errorf("%s: got %v\nwant %s", name, err, file+want)
		}
	}
}

// FuzzWorkbook asks that reading any bytes ends with a catalogue or with mistakes.
func FuzzWorkbook(f *testing.F) {
	var small bytes.Buffer
	if err := mustRead(f, with(nil)).WriteWorkbook(&small); err != nil {
		f.Fatal(err)
	}
	f.Add(small.Bytes())
	f.Add([]byte("PK\x03\x04"))
	f.Fuzz(func(t *testing.T, data []byte) {
		c, err := catalog.ReadWorkbook(data, "parts.xlsx")
		if (c == nil) == (err == nil) {
			t.Errorf("catalogue %v, error %v", c != nil, err)
		}
	})
}
