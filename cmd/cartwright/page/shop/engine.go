package shop

import (
	"bytes"
	"compress/gzip"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
)

// Engine is the planner for a browser.
type Engine struct {
	Planner []byte // WebAssembly, compressed with gzip
	Script  []byte // Go's own script that starts it, with its licence
}

// The files of an engine in a folder.
const (
	plannerFile = "planner.wasm.gz"
	scriptFile  = "wasm_exec.js"
)

// source is the package that the planner is built from.
const source = "cartwright/cmd/cartwright/page/shop/wasm"

// ErrNoSource is the error where there is nothing to build the planner from.
var ErrNoSource = errors.New("this program came without the planner for a browser, and neither its source nor Go is here to build it")

// Build builds an engine with the Go toolchain from the program's source. The same source and the same Go give the same
// bytes.
func Build(ctx context.Context) (*Engine, error) {
	module, err := sourceFolder(ctx)
	if err != nil {
		return nil, err
	}
	work, err := os.MkdirTemp("", "cartwright-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(work)
	planner := filepath.Join(work, "planner.wasm")
	if _, err := run(ctx, module, "build", "-trimpath", "-buildvcs=false", "-ldflags=-s -w -buildid=", "-o", planner, source); err != nil {
		return nil, err
	}
	code, err := os.ReadFile(planner)
	if err != nil {
		return nil, err
	}
	root, err := run(ctx, module, "env", "GOROOT")
	if err != nil {
		return nil, err
	}
	e := &Engine{}
	if e.Script, err = os.ReadFile(filepath.Join(root, "lib", "wasm", "wasm_exec.js")); err != nil {
		return nil, err
	}
	e.Planner, err = compressed(code)
	return e, err
}

// sourceFolder returns a folder of the program's source: the one that it was built from, or the current one.
func sourceFolder(ctx context.Context) (string, error) {
	var folders []string
	if _, file, _, ok := runtime.Caller(0); ok && filepath.IsAbs(file) {
		folders = append(folders, filepath.Dir(file))
	}
	for _, folder := range append(folders, ".") {
		if name, err := run(ctx, folder, "list", "-e", "-f", "{{.ImportPath}}{{if .Error}} is missing{{end}}", source); err == nil && name == source {
			return folder, nil
		}
		if ctx.Err() != nil {
			return "", ctx.Err()
		}
	}
	return "", ErrNoSource
}

// run runs the Go toolchain in a folder and returns what it prints. Nothing of this machine's settings gets into what it
// builds.
func run(ctx context.Context, folder string, args ...string) (string, error) {
	cmd := exec.CommandContext(ctx, "go", args...)
	cmd.Dir = folder
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm", "CGO_ENABLED=0", "GOFLAGS=", "GOWORK=off", "GOWASM=", "GOEXPERIMENT=")
	var wrong bytes.Buffer
	cmd.Stderr = &wrong
	text, err := cmd.Output()
	if err != nil {
		return "", fmt.Errorf("go %s: %w: %s", args[0], err, strings.TrimSpace(wrong.String()))
	}
	return strings.TrimSpace(string(text)), nil
}

func compressed(code []byte) ([]byte, error) {
	var b bytes.Buffer
	w, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	if err != nil {
		return nil, err
	}
	if _, err := w.Write(code); err != nil {
		return nil, err
	}
	err = w.Close()
	return b.Bytes(), err
}

// WriteTo writes the engine into a folder, as a release has it built in.
func (e *Engine) WriteTo(folder string) error {
	if err := os.MkdirAll(folder, 0o777); err != nil {
		return err
	}
	return errors.Join(os.WriteFile(filepath.Join(folder, plannerFile), e.Planner, 0o666), os.WriteFile(filepath.Join(folder, scriptFile), e.Script, 0o666))
}
