package page

import (
	"bytes"
	"time"
)

// watchEvery is how often the files are looked at for changes by others.
const watchEvery = time.Second

// watch tells the tabs when another program changes a file.
func (s *session) watch() {
	if !s.files.Store.Shared() {
		return
	}
	s.work.Go(func() {
		tick := time.NewTicker(watchEvery)
		defer tick.Stop()
		for {
			select {
			case <-s.ctx.Done():
				return
			case <-tick.C:
			}
			text, err := s.files.Store.Read(s.files.Scenario)
			s.mu.Lock()
			const words = "The scenario's file was changed outside. Reload the files; changes that were not saved here are then lost."
			if err == nil && !bytes.Equal(text, s.base.scenario) && s.notice != words {
				s.notice = words
				s.send(event{Kind: "planned", Number: s.number})
			}
			if s.files.Store.Stamp(s.opened.beside) != s.stamp {
				s.notice, s.from = "The catalogue or another file that the scenario names was changed outside; it was read again.", ""
				s.settle()
			}
			s.mu.Unlock()
		}
	})
}
