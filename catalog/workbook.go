//go:build !js

package catalog

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"

	"cartwright/catalog/problem"
)

// Open reads a catalogue: a folder of CSV files, or an .xlsx workbook with a sheet a kind. See Read.
func Open(name string) (*Catalog, error) {
	if !IsWorkbook(name) {
		return ReadDir(name)
	}
	to := &report{file: name}
	data, err := readFile(os.DirFS(filepath.Dir(name)), filepath.Base(name), to)
	if errors.Is(err, fs.ErrNotExist) {
		to.add(to.whole(), "there is no such workbook", "name one that is there, or a folder of CSV files")
	}
	if err != nil {
		return nil, to.list.Err()
	}
	return ReadWorkbook(data, name)
}

// maxUnzipped is how large a workbook may be when unpacked, in bytes: one made to fill the memory is refused.
const maxUnzipped = 8 * maxFile

// ReadWorkbook reads a catalogue from the bytes of an .xlsx workbook with a sheet for each kind, named like its CSV file
// without the ending. Mistakes are reported as display:sheet!C7. Other sheets are not read. The rest is as for Read.
func ReadWorkbook(data []byte, display string) (c *Catalog, err error) {
	defer func() { // a broken file must not bring the program down, whoever is at fault
		if fault := recover(); fault != nil {
			c, err = nil, noWorkbook(display, fmt.Sprintf("this cannot be read as a workbook: %v", fault), "save it again as .xlsx")
		}
	}()
	book, err := excelize.OpenReader(bytes.NewReader(data), excelize.Options{RawCellValue: true, UnzipSizeLimit: maxUnzipped, UnzipXMLSizeLimit: maxUnzipped})
	if err != nil {
		return nil, noWorkbook(display, "this cannot be read as a workbook: "+err.Error(), "save it as .xlsx, without a password")
	}
	defer book.Close() // read only: nothing can be lost
	if props, err := book.GetWorkbookProps(); err == nil && props.Date1904 != nil && *props.Date1904 {
		return nil, noWorkbook(display, "the workbook counts days from 1904", "switch that off in the workbook's options, and check its days")
	}
	return readAll(&workbook{book: book, display: display})
}

// noWorkbook is the error of a workbook as a whole.
func noWorkbook(display, wrong, right string) error {
	var list problem.List
	list.Add(problem.Pos{File: display}, wrong, right)
	return list.Err()
}

// workbook is a workbook with a sheet a kind.
type workbook struct {
	book    *excelize.File
	display string
}

// sheet returns the name of the sheet for a file, whatever its case; "" where there is none.
func (w *workbook) sheet(file string) string {
	stem := strings.TrimSuffix(file, ".csv")
	for _, name := range w.book.GetSheetList() {
		if strings.EqualFold(strings.TrimSpace(name), stem) {
			return name
		}
	}
	return ""
}

func (w *workbook) none() error {
	return noWorkbook(w.display, "no sheet of this workbook belongs to a catalogue", "call its sheets batteries, inverters, cables, devices, "+
		"busbars, casters and, where wanted, solar, sundries, conduits, sections and offers")
}

func (w *workbook) report(file string) *report {
	name := w.sheet(file)
	if name == "" {
		name = strings.TrimSuffix(file, ".csv")
	}
	return &report{file: w.display, sheet: name}
}

func (w *workbook) open(file string, to *report) (rows, error) {
	name := w.sheet(file)
	if name == "" {
		return nil, fs.ErrNotExist
	}
	cells, err := w.book.GetRows(name)
	if err != nil {
		to.lost = true
		to.add(to.whole(), "the sheet cannot be read: "+err.Error(), "save the workbook again")
		return nil, errTold
	}
	g := &grid{book: w.book, name: name, cells: cells, to: to}
	for _, row := range cells {
		g.width = max(g.width, len(row))
	}
	return g, nil
}

func (w *workbook) strays(missing []string, list *problem.List) {
	for _, name := range w.book.GetSheetList() {
		stem := strings.ToLower(strings.TrimSpace(name))
		if near := problem.Nearest(stem, missing); near != "" && !slices.Contains(files, stem+".csv") {
			list.Add(problem.Pos{File: w.display, Sheet: name}, "this is not the name of a catalogue sheet",
				fmt.Sprintf("call it %s, or something less like it", near))
		}
	}
}

// grid hands out the rows of a sheet, all of the same width. Comments and rows of empty cells are passed over.
type grid struct {
	book  *excelize.File
	name  string
	cells [][]string
	width int
	line  int // rows handed out or passed over
	to    *report
}

func (g *grid) report() *report { return g.to }

func (g *grid) next() ([]cell, bool) {
	for g.line < len(g.cells) && !g.to.full() {
		texts := g.cells[g.line]
		g.line++
		row := make([]cell, g.width)
		blank := true
		for i := range row {
			row[i].pos = problem.Pos{File: g.to.file, Sheet: g.name, Line: g.line, Column: i + 1}
			if i < len(texts) {
				row[i].text = g.text(strings.TrimSpace(texts[i]), row[i].pos)
				blank = blank && row[i].text == ""
			}
		}
		if blank || strings.HasPrefix(row[0].text, "#") {
			continue
		}
		return row, true
	}
	return nil, false
}

// longNumber matches a number of more digits than anybody writes: spreadsheets keep 0.1 as 0.10000000000000001.
var longNumber = regexp.MustCompile(`^-?[0-9.]{17,}([eE][+-]?[0-9]+)?$`)

// text returns a cell as it was written: of a number, the shortest text that means it.
func (g *grid) text(raw string, pos problem.Pos) string {
	if !longNumber.MatchString(raw) {
		return raw
	}
	name, err := excelize.CoordinatesToCellName(pos.Column, pos.Line)
	if err != nil {
		return raw
	}
	kind, err := g.book.GetCellType(g.name, name)
	v, wrong := strconv.ParseFloat(raw, 64)
	if err != nil || wrong != nil || kind == excelize.CellTypeSharedString || kind == excelize.CellTypeInlineString {
		return raw
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}
