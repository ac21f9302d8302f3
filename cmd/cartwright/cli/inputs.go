package cli

import (
	"os"
	"path/filepath"

	"github.com/goccy/go-yaml"

	"cartwright/optimize/question"
)

// named are the keys of a scenario that name files to be read.
type named struct {
	Catalog  string `yaml:"catalog"`
	Measured string `yaml:"measured"`
	Sun      struct {
		File string `yaml:"file"`
	} `yaml:"sun"`
}

// inputs lists the files that a run on a scenario of one's own reads: nothing may be written over them. Of a
// demo there are none.
func inputs(p question.Problem) []string {
	s := p.Scenario
	if s.Dir == "" {
		return nil
	}
	files := []string{s.File}
	text, err := os.ReadFile(s.File)
	if err != nil {
		return files
	}
	var names named
	// The scenario was read without a mistake; a value of another type than these is none of a file's name.
	_ = yaml.Unmarshal(text, &names)
	for _, name := range []string{names.Catalog, names.Measured, names.Sun.File} {
		if name == "" {
			continue
		}
		path := filepath.FromSlash(name)
		if !filepath.IsAbs(path) {
			path = filepath.Join(s.Dir, path)
		}
		files = append(files, path)
		inside, err := os.ReadDir(path)
		if err != nil {
			continue // a file, not a folder
		}
		for _, entry := range inside {
			files = append(files, filepath.Join(path, entry.Name()))
		}
	}
	return files
}
