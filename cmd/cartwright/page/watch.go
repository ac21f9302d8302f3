package page

import (
	"bytes"
	"time"
)

// watchEvery is how often the files are looked at for changes by others.
const watchEvery = time.Second

// watch tells the tabs once a file changes behind the page's back.
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
			const words = "The scenario's file was changed outside. Read it anew; what is not saved here is then gone."
			if err == nil && !bytes.Equal(text, s.base.scenario) && s.notice != words {
				s.notice = words
				s.send(event{Kind: "planned", Number: s.number})
			}
			if s.files.Store.Stamp(s.opened.beside) != s.stamp {
				s.notice, s.from = "The catalogue or another file that the scenario names was changed outside; it is read anew.", ""
				s.settle()
			}
			s.mu.Unlock()
		}
	})
}
