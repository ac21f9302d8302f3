//go:build js && wasm

// The planner within a page that is one file. It runs in a worker of the browser, beside the page: worker.js starts it and
// passes on what the page asks and what is answered.
package main

import (
	"context"
	"encoding/json"
	"net/http"
	"runtime/debug"
	"syscall/js"
	"time"

	"cartwright/cmd/cartwright/page"
	"cartwright/cmd/cartwright/page/bridge"
	"cartwright/cmd/cartwright/page/files"
	"cartwright/cmd/cartwright/page/planner"
)

// gcPercent lets garbage grow to a few times what is in use: a cart takes little memory, and a phone's time is dearer.
const gcPercent = 400

func main() {
	debug.SetGCPercent(gcPercent)
	host := js.Global().Get("host") // of worker.js
	handler, err := open(host.Get("files").String())
	if err != nil {
		host.Call("failed", err.Error())
		return
	}
	asked := map[int]context.CancelFunc{} // only on the browser's thread, the only one
	host.Set("ask", js.FuncOf(func(_ js.Value, args []js.Value) any {
		id, ask := args[0].Int(), bridge.Ask{Method: args[1].String(), Path: args[2].String(), Body: args[3].String()}
		ctx, cancel := context.WithCancel(context.Background())
		asked[id] = cancel
		go func() {
			bridge.Answer(ctx, handler, ask, bridge.Listener{
				Begin: func(status int, kind string) { host.Call("begin", id, status, kind) },
				More:  func(text string) { host.Call("more", id, text) },
			})
			cancel()
			delete(asked, id)
			host.Call("end", id)
		}()
		return nil
	}))
	host.Set("drop", js.FuncOf(func(_ js.Value, args []js.Value) any {
		if cancel, ok := asked[args[0].Int()]; ok {
			cancel()
		}
		return nil
	}))
	host.Call("ready")
	select {} // for as long as the page is open
}

// open returns what answers about the files that came with the page.
func open(text string) (http.Handler, error) {
	var about files.Bundle
	if err := json.Unmarshal([]byte(text), &about); err != nil {
		return nil, err
	}
	p := &page.Page{
		Planner: &planner.Planner{Today: time.Now, Pause: newTurn().pause},
		Files:   page.Files{Scenario: about.Scenario, Store: files.InMemory(about.Files)},
	}
	return p.Handler(context.Background())
}
