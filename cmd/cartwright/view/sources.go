package view

import "cartwright/catalog/source"

// Sources shows where tables, formulas and rules come from, room by room.
type Sources []RoomSources

// RoomSources is what one room of the program stands on.
type RoomSources struct {
	Room    string
	Sources []source.Source
}

// sheet has a table for each room.
func (s Sources) sheet() sheet {
	var out sheet
	for _, room := range s {
		t := &table{columns: []column{text("kind"), text("what it gives"), text("source"), text("how far confirmed")}}
		for _, one := range room.Sources {
			t.row(one.Kind, one.Name, one.Source, one.Confidence)
		}
		out = append(out, section{title: "Sources: " + room.Room, table: t})
	}
	return out
}

// sourceRecord is one source in JSON.
type sourceRecord struct {
	Room       string `json:"room"`
	Kind       string `json:"kind"`
	Name       string `json:"name"`
	Source     string `json:"source"`
	Confidence string `json:"confidence"`
}

// record holds all sources in one list.
func (s Sources) record() any {
	list := []sourceRecord{}
	for _, room := range s {
		for _, one := range room.Sources {
			list = append(list, sourceRecord{room.Room, one.Kind, one.Name, one.Source, one.Confidence})
		}
	}
	return struct {
		Format  int            `json:"format"`
		Command string         `json:"command"`
		Sources []sourceRecord `json:"sources"`
	}{jsonFormat, "sources", list}
}

// records holds one source a row.
func (s Sources) records() [][]string {
	rows := [][]string{{"room", "kind", "name", "source", "confidence"}}
	for _, room := range s {
		for _, one := range room.Sources {
			rows = append(rows, []string{room.Room, one.Kind, one.Name, one.Source, one.Confidence})
		}
	}
	return rows
}
