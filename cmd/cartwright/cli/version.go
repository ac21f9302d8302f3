package cli

import "runtime/debug"

// version returns what --version tells: the version and the revision that the program was built from, as far as
// the build says, and the Go it was built with.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "of unknown make"
	}
	text := info.Main.Version
	if text == "" {
		text = "(devel)"
	}
	for _, s := range info.Settings {
		if s.Key == "vcs.revision" {
			text += " " + s.Value
		}
	}
	return text + " " + info.GoVersion
}
