//go:build shop

package shop

import (
	"context"
	"embed"
)

// BuiltIn reports whether the engine is there at once.
const BuiltIn = true

// built is the engine that pack has written; .ci/release does so before it builds the program.
//
//go:embed built/planner.wasm.gz built/wasm_exec.js
var built embed.FS

// Here returns the engine that is built in.
func Here(context.Context) (*Engine, error) {
	planner, err := built.ReadFile("built/" + plannerFile)
	if err != nil {
		return nil, err
	}
	script, err := built.ReadFile("built/" + scriptFile)
	return &Engine{Planner: planner, Script: script}, err
}
