package page

import (
	"bytes"
	"fmt"
	"os"
	"strings"
	"time"
)

// stampOf tells one state of files, and of the files of folders, from another.
func stampOf(paths []string) string {
	var b strings.Builder
	for _, path := range paths {
		entries, err := os.ReadDir(path)
		if err != nil {
			if info, err := os.Stat(path); err == nil {
				fmt.Fprintln(&b, path, info.Size(), info.ModTime().UnixNano())
			}
			continue
		}
		for _, e := range entries {
			if info, err := e.Info(); err == nil {
				fmt.Fprintln(&b, path, e.Name(), info.Size(), info.ModTime().UnixNano())
			}
		}
	}
	return b.String()
}

// watchEvery is how often the files are looked at for changes by others.
const watchEvery = time.Second

// watch tells the tabs once a file changes behind the page's back.
func (s *session) watch() {
	if s.files.Within != nil {
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
			text, err := s.files.scenario()
			s.mu.Lock()
			const words = "The scenario's file was changed outside. Read it anew; what is not saved here is then gone."
			if err == nil && !bytes.Equal(text, s.base.scenario) && s.notice != words {
				s.notice = words
				s.send(event{Kind: "planned", Number: s.number})
			}
			if stampOf(s.opened.beside) != s.stamp {
				s.notice, s.from = "The catalogue or another file that the scenario names was changed outside; it is read anew.", ""
				s.settle()
			}
			s.mu.Unlock()
		}
	})
}
