package page

import (
	"errors"
	"fmt"
	"path/filepath"

	"cartwright/scenarios"
)

// edit changes a value of the scenario.
func (s *session) edit(q request) error {
	about := q.Path
	if q.Add != nil || q.Remove {
		about = ""
	}
	return s.change(q.Number, about, func(d *draft) error {
		text, err := scenarios.EditValues(d.scenario, s.files.Scenario, scenarios.Edit{Path: q.Path, Value: q.Value, Add: q.Add, Remove: q.Remove})
		if err == nil {
			d.scenario = text
		}
		return err
	})
}

// editPart changes a cell of the catalogue, adds a row or takes one away.
func (s *session) editPart(q request) error {
	if !isPartsFile(q.File) {
		return fmt.Errorf("a catalogue has no file %q", q.File)
	}
	text, err := s.partsText(q.File)
	if err != nil {
		return err
	}
	if _, known := s.original[q.File]; !known {
		s.original[q.File] = text
	}
	about := fmt.Sprintf("%s %d %d", q.File, q.Row, q.Column)
	if q.Add != nil || q.Remove {
		about = ""
	}
	return s.change(q.Number, about, func(d *draft) error {
		var made []byte
		var err error
		switch {
		case q.Remove:
			made, err = removeRow(text, q.Row)
		case q.Add != nil:
			made, err = addRow(text, q.Value)
		default:
			made, err = setCell(text, q.Row, q.Column, q.Value)
		}
		if err != nil {
			return err
		}
		if d.parts == nil {
			d.parts = map[string][]byte{}
		}
		d.parts[q.File] = made
		return nil
	})
}

// undoLast undoes the last change.
func (s *session) undoLast(request) error {
	if len(s.undo) == 0 {
		return errors.New("there is nothing to undo")
	}
	s.now, s.undo = s.undo[len(s.undo)-1], s.undo[:len(s.undo)-1]
	s.notice = "The last change was undone."
	s.settle()
	return nil
}

// save writes the files.
func (s *session) save(q request) error {
	if q.Number != s.number {
		return errStale
	}
	original := func(name string) ([]byte, error) {
		if text, ok := s.original[name]; ok {
			return text, nil
		}
		return s.files.Store.Read(filepath.Join(s.opened.folder, name))
	}
	changes, err := s.files.changes(s.base, s.now, s.opened.folder, original)
	if err != nil {
		return err
	}
	written, err := s.files.Store.Save(changes)
	if err != nil {
		return err
	}
	s.base = draft{scenario: s.now.scenario}
	for name, text := range s.now.parts {
		s.original[name] = text
	}
	s.stamp = s.files.Store.Stamp(s.opened.beside)
	s.notice = fmt.Sprintf("Saved: %d files written.", len(written))
	if len(written) == 1 {
		s.notice = "Saved: " + written[0] + "."
	}
	if len(s.opened.mistakes) > 0 {
		s.notice += " There are mistakes in what was saved."
	}
	s.send(event{Kind: "planned", Number: s.number})
	return nil
}

// reload reads the files again; what is not saved is lost.
func (s *session) reload(request) error {
	if err := s.read(); err != nil {
		return err
	}
	s.notice = "The files were read again."
	s.settle()
	return nil
}

// halt stops planning; the last good answer stays.
func (s *session) halt(request) error {
	if s.stop != nil {
		s.stop()
	}
	s.stopped = s.planning
	s.planning = false
	s.notice = "Planning was stopped; the plan shown is the last answer."
	s.send(event{Kind: "planned", Number: s.number})
	return nil
}

// bought makes what a plan buys owned.
func (s *session) bought(q request) error {
	if s.answer == nil || q.Show < 0 || q.Show >= len(s.answer.Plans) {
		return errors.New("there is no such plan")
	}
	owned, err := s.planner.Bought(s.of.scenario, s.of.catalog, &s.answer.Plans[q.Show])
	if err != nil {
		return err
	}
	if err := s.own(q.Number, owned); err != nil {
		return err
	}
	s.notice = fmt.Sprintf("Plan %d is bought: its parts are owned now. Undo reverses it.", q.Show+1)
	return nil
}

// boughtPart makes some of a part owned, and takes what was paid from the money in hand.
func (s *session) boughtPart(q request) error {
	if s.opened.scenario == nil || s.opened.catalog == nil {
		return errMistakes
	}
	owned, err := s.planner.BoughtPart(s.opened.scenario, s.opened.catalog, q.Part, q.Count, q.Price)
	if err != nil {
		return err
	}
	if err := s.own(q.Number, owned); err != nil {
		return err
	}
	s.notice = q.Part + " is bought. Undo reverses it."
	return nil
}

// sold takes some of a part out of what is owned, and puts what it brought into the money in hand.
func (s *session) sold(q request) error {
	if s.opened.scenario == nil || s.opened.catalog == nil {
		return errMistakes
	}
	owned, err := s.planner.Sold(s.opened.scenario, s.opened.catalog, q.Part, q.Count, q.Price)
	if err != nil {
		return err
	}
	if err := s.own(q.Number, owned); err != nil {
		return err
	}
	s.notice = q.Part + " is sold. Undo reverses it."
	return nil
}

// errMistakes is the error where the files have mistakes and something needs them sound.
var errMistakes = errors.New("correct the mistakes first")
