package main

import (
	"flag"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

var update = flag.Bool("update", false, "rewrite the expected outputs in testdata/script")

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"cartwright": main})
}

// TestScripts runs every transcript of testdata/script: files, commands, and what they print.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		UpdateScripts:       *update,
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
	})
}
