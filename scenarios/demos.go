package scenarios

import (
	"embed"
	"fmt"
	"io/fs"
	"strings"

	"cartwright/catalog/problem"
)

//go:embed demos
var demoFiles embed.FS

//go:embed starter
var starterFiles embed.FS

// DemoFS returns the demos that come with the program, one folder each, with a README.md that tells the
// story. Their people and places are invented.
func DemoFS() fs.FS { return under(demoFiles, "demos") }

// DemoNames returns the names of the demos, sorted.
func DemoNames() []string {
	entries, err := fs.ReadDir(demoFiles, "demos")
	if err != nil {
		panic("scenarios: the embedded demos cannot be listed: " + err.Error()) // a fault of the build
	}
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return names
}

// Demo reads the demo of the given name. Its Dir is "", and its File is relative to DemoFS.
func Demo(name string) (*Scenario, error) {
	names := DemoNames()
	if !contains(names, name) {
		right := "the demos are " + strings.Join(names, ", ")
		if near := problem.Nearest(name, names); near != "" {
			right = fmt.Sprintf("did you mean %q?", near)
		}
		return nil, problem.Problem{Wrong: fmt.Sprintf("there is no demo %q", name), Right: right}
	}
	return OpenFS(DemoFS(), name)
}

// Starter returns the files to start a scenario of one's own from under a rule set: a scenario.yaml that shows every
// key with a comment, and takes its parts from the folder parts beside it.
func Starter(rules Rules) fs.FS { return under(starterFiles, "starter/"+string(rules)) }

// under returns a folder of an embedded file system.
func under(files embed.FS, dir string) fs.FS {
	sub, err := fs.Sub(files, dir)
	if err != nil {
		panic("scenarios: the embedded files have no folder " + dir) // a fault of the build
	}
	return sub
}
