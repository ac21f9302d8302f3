// Package shop writes a page as one file: the page, the files it is about and the whole planner, as WebAssembly. It plans
// wherever there is a browser, with no network and nothing installed, and gives changed files back as downloads.
//
// The page's script and HTML are those that are served. What they ask goes to the same http.Handler, which runs in a worker
// of the browser: html/shop.js and worker.js pass it on, wasm/main.go answers. Nothing in the file may ask a network.
package shop

import (
	"crypto/sha256"
	"embed"
	"encoding/base64"
	"encoding/json"
	"errors"
	"fmt"
	"html/template"
	"strings"

	"cartwright/cmd/cartwright/page"
	"cartwright/cmd/cartwright/page/files"
)

//go:embed html
var scripts embed.FS

// Write returns a page about files as one file of HTML. The planner answers what the page says before its own planner does.
func Write(about *files.Bundle, planner page.Planner, engine *Engine) ([]byte, error) {
	p := &page.Page{Planner: planner, Files: page.Files{Scenario: about.Scenario, Store: files.InMemory(about.Files)}}
	styles, script, err := page.Parts()
	if err != nil {
		return nil, err
	}
	door, err := scripts.ReadFile("html/shop.js")
	if err != nil {
		return nil, err
	}
	worker, err := scripts.ReadFile("html/worker.js")
	if err != nil {
		return nil, err
	}
	given, err := json.Marshal(about)
	if err != nil {
		return nil, err
	}
	var h head
	for _, s := range styles {
		h.style(s)
	}
	var f foot
	f.data("files", "application/json", string(given))
	f.data("go-script", "text/plain", string(engine.Script))
	f.data("worker", "text/plain", string(worker))
	f.data("planner", "text/plain", base64.StdEncoding.EncodeToString(engine.Planner))
	for _, s := range []string{string(door), script} {
		h.runs(s)
		f.script(s)
	}
	if f.err != nil {
		return nil, f.err
	}
	text, err := p.Still(h.html(), template.HTML(f.text.String())) // ours; the files' text is written as JSON, which has no < within it
	return []byte(text), err
}

// head is the head of the file: what may run, be loaded and be shown there, and the styles.
type head struct {
	styles               strings.Builder
	runsOnly, stylesOnly []string
}

// hash is how a policy names a text.
func hash(text string) string {
	sum := sha256.Sum256([]byte(text))
	return "'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
}

// runs allows a script.
func (h *head) runs(text string) { h.runsOnly = append(h.runsOnly, hash(text)) }

// style adds a style sheet.
func (h *head) style(text string) {
	h.stylesOnly = append(h.stylesOnly, hash(text))
	h.styles.WriteString("<style>" + text + "</style>\n")
}

// html returns the head's HTML. The policy leaves nothing that could ask a network.
func (h *head) html() template.HTML {
	policy := fmt.Sprintf("default-src 'none'; script-src 'wasm-unsafe-eval' %s; style-src %s; img-src data:; worker-src blob:; base-uri 'none'; form-action 'none'",
		strings.Join(h.runsOnly, " "), strings.Join(h.stylesOnly, " "))
	return template.HTML(`<meta http-equiv="Content-Security-Policy" content="` + policy + "\">\n" + h.styles.String())
}

// foot is what stands last in the file.
type foot struct {
	text strings.Builder
	err  error
}

// data adds a text that a script reads.
func (f *foot) data(id, kind, text string) {
	f.element(fmt.Sprintf("<script id=%q type=%q>", id, kind), text)
}

// script adds a script that runs.
func (f *foot) script(text string) { f.element("<script>", text) }

// element adds a script element, whose text may hold anything but the end of one.
func (f *foot) element(begin, text string) {
	lower := strings.ToLower(text)
	if strings.Contains(lower, "</script") || strings.Contains(lower, "<!--") {
		f.err = errors.New("a script of the page cannot stand within it")
	}
	f.text.WriteString(begin + text + "</script>\n")
}
