package cli

import (
	"runtime"
	"runtime/debug"

	"cartwright/optimize"
)

// release is the version that .ci/release builds in.
var release string

// version returns what --version shows: the version the program was built from, as far as the build says, the Go
// version, system and processor, and the engines there are.
func version() string {
	text := built() + " " + runtime.Version() + " " + runtime.GOOS + "/" + runtime.GOARCH
	for _, e := range optimize.Engines() {
		text += "\n" + e
	}
	return text
}

func built() string {
	if release != "" {
		return release
	}
	info, ok := debug.ReadBuildInfo()
	if !ok || info.Main.Version == "" {
		return "(devel)"
	}
	text := info.Main.Version
	for _, s := range info.Settings {
		if s.Key == "vcs.revision" {
			text += " " + s.Value
		}
	}
	return text
}
