// Package view turns answers into what a person reads and what a program reads: tables for a screen, Markdown
// with the same tables, CSV for a spreadsheet, and JSON in the published format 1. It decides nothing and
// computes nothing but differences, shares and sums of what it is given.
//
// Every unit stands in a heading or beside its figure. Inside the program all is SI; on a screen and in
// Markdown figures are told in the scenario's units and rounded for the eye. CSV and JSON are SI, unrounded.
package view

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
)

// Format is a form of output.
type Format string

// The forms of output.
const (
	Table    Format = "table"
	JSON     Format = "json"
	CSV      Format = "csv"
	Markdown Format = "markdown"
)

// Formats lists the forms of output, the usual one first.
var Formats = []string{string(Table), string(JSON), string(CSV), string(Markdown)}

// jsonFormat is the version of the published JSON format.
const jsonFormat = 1

// A Document is an answer that can be shown in every format.
type Document interface {
	sheet() sheet        // for people: screen and Markdown
	record() any         // for programs: what JSON is made of
	records() [][]string // for spreadsheets: a heading and rows
}

// Render returns the document in a format, ready to be written in one piece. A table is laid out for a screen
// of width columns.
func Render(d Document, f Format, width int) ([]byte, error) {
	switch f {
	case Table:
		s, err := d.sheet().screen(min(max(width, leastWidth), mostWidth))
		return []byte(s), err
	case Markdown:
		s, err := d.sheet().markdown()
		return []byte(s), err
	case CSV:
		var b bytes.Buffer
		if err := csv.NewWriter(&b).WriteAll(d.records()); err != nil {
			return nil, err
		}
		return b.Bytes(), nil
	case JSON:
		var b bytes.Buffer
		e := json.NewEncoder(&b)
		e.SetEscapeHTML(false)
		e.SetIndent("", "  ")
		if err := e.Encode(d.record()); err != nil {
			return nil, fmt.Errorf("cannot write the answer as JSON: %w", err)
		}
		return b.Bytes(), nil
	}
	return nil, fmt.Errorf("no output format %q", f)
}
