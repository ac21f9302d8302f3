package page

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"maps"
	"path/filepath"
	"sync"
	"time"

	"cartwright/scenarios"
)

// session is what all open tabs share: the draft, what it says, and the plan that follows from it. Each change
// has a number; a request that was made of an older one is refused, so that no tab overwrites another.
type session struct {
	planner Planner
	files   Files
	ctx     context.Context // of the whole page

	mu       sync.Mutex
	base     draft             // as read from the files
	original map[string][]byte // of the catalogue's files that were changed, as read
	now      draft
	undo     []draft
	number   int // of the last change
	opened   opened
	stamp    string // of the files beside the scenario's own, as they were opened

	answer   *Answer // the last good one
	of       opened  // what it is the answer to
	answers  int     // how many there were
	prices   []Price
	planning bool
	stopped  bool
	from     string // the tab that made the last change
	notice   string // what was done last, or why it could not be
	stop     context.CancelFunc
	work     sync.WaitGroup
	tabs     map[chan event]bool

	shownKey, shownHTML string // the results that were made last
}

// maxUndo is how many changes can be undone.
const maxUndo = 200

// newSession reads the files and begins to plan.
func newSession(ctx context.Context, planner Planner, files Files) (*session, error) {
	s := &session{planner: planner, files: files, ctx: ctx, tabs: map[chan event]bool{}}
	if err := s.read(); err != nil {
		return nil, err
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	s.settle()
	s.watch()
	return s, nil
}

// read takes the files' texts, and drops what was not saved.
func (s *session) read() error {
	text, err := s.files.Store.Read(s.files.Scenario)
	if err != nil {
		return fmt.Errorf("%s cannot be read: %w", s.files.Scenario, err)
	}
	s.base = draft{scenario: text}
	s.original = map[string][]byte{}
	s.now, s.undo = s.base, nil
	return nil
}

// settle opens the draft again after a change, and plans where it has no mistakes. The lock is held.
func (s *session) settle() {
	s.number++

	s.opened = s.files.open(s.now, s.planner.Check)
	s.stamp = s.files.Store.Stamp(s.opened.beside)
	if s.stop != nil {
		s.stop()
	}
	s.planning, s.stopped = false, false
	if len(s.opened.mistakes) == 0 {
		ctx, cancel := context.WithCancel(s.ctx)
		s.stop, s.planning = cancel, true
		number, of := s.number, s.opened
		s.work.Go(func() {
			defer cancel()
			s.plan(ctx, number, of)
		})
	}
	s.send(event{Kind: "changed", Number: s.number, Tab: s.from})
}

// restBeforePrices is how long nothing has to change before it is asked what a step of each limit costs: that takes
// longer than a plan, and is not wanted while a slider is still moved.
const restBeforePrices = 300 * time.Millisecond

// plan ranks plans, shows the first once it is proved, then all, then asks what a step of each limit costs.
func (s *session) plan(ctx context.Context, number int, of opened) {
	show := func(a *Answer, more bool) bool {
		return s.publish(number, func() {
			s.answer, s.of, s.prices, s.answers, s.planning = a, of, nil, s.answers+1, more
		})
	}
	a, err := s.planner.Rank(ctx, of.scenario, of.catalog,
		func(first *Answer) { show(first, true) },
		func(cells, found int) { s.progress(number, cells, found) })
	if err != nil {
		s.failed(ctx, number, err)
		return
	}
	if !show(a, false) {
		return
	}
	select {
	case <-time.After(restBeforePrices):
	case <-ctx.Done():
		return
	}
	prices, err := s.planner.Prices(ctx, of.scenario, of.catalog)
	if err != nil {
		return // it was stopped, or there is no plan to have prices: the rest stands
	}
	s.publish(number, func() { s.prices = prices })
}

// failed ends planning without an answer. The last good one stays.
func (s *session) failed(ctx context.Context, number int, err error) {
	s.publish(number, func() {
		s.planning = false
		if ctx.Err() == nil {
			s.notice = "Planning failed: " + err.Error()
		}
	})
}

// publish makes a change of what is known, unless the draft has changed since, and tells the tabs.
func (s *session) publish(number int, change func()) bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	if number != s.number {
		return false
	}
	change()
	s.send(event{Kind: "planned", Number: number})
	return true
}

// progress tells the tabs how far planning is.
func (s *session) progress(number, cells, found int) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if number == s.number {
		s.send(event{Kind: "progress", Number: number, Cells: cells, Found: found})
	}
}

// errStale is the error of a request made before another tab's change was seen.
var errStale = errors.New("another tab changed this first; the page now shows that, and your last change was not made")

// change makes a change of the draft that is made of change number at, and can be undone. The lock is held.
func (s *session) change(at int, about string, make func(*draft) error) error {
	if at != s.number {
		return errStale
	}
	next := draft{scenario: s.now.scenario, parts: maps.Clone(s.now.parts), about: about}
	if err := make(&next); err != nil {
		return err
	}
	if bytes.Equal(next.scenario, s.now.scenario) && maps.EqualFunc(next.parts, s.now.parts, bytes.Equal) {
		return nil
	}
	// Letters typed one after the other into one field are undone together.
	if about == "" || about != s.now.about || len(s.undo) == 0 {
		s.undo = append(s.undo, s.now)
		if len(s.undo) > maxUndo {
			s.undo = s.undo[1:]
		}
	}
	s.now, s.notice = next, ""
	s.settle()
	return nil
}

// own makes the scenario's file say what is owned. The lock is held.
func (s *session) own(at int, owned scenarios.Owned) error {
	return s.change(at, "", func(d *draft) error {
		text, _, err := scenarios.EditOwned(d.scenario, s.files.Scenario, owned)
		d.scenario = text
		return err
	})
}

// dirty reports whether something is not saved. The lock is held.
func (s *session) dirty() bool {
	if !bytes.Equal(s.base.scenario, s.now.scenario) {
		return true
	}
	for name, text := range s.now.parts {
		if !bytes.Equal(text, s.original[name]) {
			return true
		}
	}
	return false
}

// unsaved is dirty for who does not hold the lock.
func (s *session) unsaved() bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.dirty()
}

// partsText returns a file of the catalogue as it stands in the draft. The lock is held.
func (s *session) partsText(name string) ([]byte, error) {
	if text, ok := s.now.parts[name]; ok {
		return text, nil
	}
	if s.opened.folder == "" {
		return nil, errors.New("these parts come with the program, or from a workbook, and cannot be changed here; “cartwright new my-cart” copies them into files of your own")
	}
	return s.files.Store.Read(filepath.Join(s.opened.folder, name))
}

// close ends all work and waits for it.
func (s *session) close() {
	s.mu.Lock()
	if s.stop != nil {
		s.stop()
	}
	for tab := range s.tabs {
		close(tab)
		delete(s.tabs, tab)
	}
	s.mu.Unlock()
}
