//go:build js && wasm

package main

import (
	"syscall/js"
	"time"
)

// turn lets the browser do what waits while a search runs: on its one thread nothing else can, neither what the page asks
// nor a stop.
type turn struct {
	last    time.Time
	channel js.Value // of messages to ourselves
	waiting []chan struct{}
}

// turnEvery is how long a search runs at a stretch. A person does not notice it; and it is much longer than a turn takes.
const turnEvery = 25 * time.Millisecond

func newTurn() *turn {
	t := &turn{last: time.Now(), channel: js.Global().Get("MessageChannel").New()}
	t.channel.Get("port1").Set("onmessage", js.FuncOf(func(js.Value, []js.Value) any {
		for _, w := range t.waiting {
			close(w)
		}
		t.waiting = nil
		return nil
	}))
	return t
}

// pause gives the browser a turn where one is due. A message to ourselves comes after all that waits already; a timer
// would do as well, but browsers let each last for 4 ms.
func (t *turn) pause() {
	if time.Since(t.last) < turnEvery {
		return
	}
	t.last = time.Now()
	over := make(chan struct{})
	t.waiting = append(t.waiting, over)
	if len(t.waiting) == 1 {
		t.channel.Get("port2").Call("postMessage", js.Null())
	}
	<-over
	t.last = time.Now()
}
