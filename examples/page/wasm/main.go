//go:build js && wasm

// Command wasm is the engine of the page in a web worker. The worker calls groovewright(request,
// answer) with JSON texts; answer is called with each progress and at last with the answer.
package main

import (
	"encoding/json"
	"fmt"
	"runtime/debug"
	"syscall/js"
	"time"

	"example.com/groovewright/examples/page/engine"
)

func main() {
	debug.SetGCPercent(400) // a plan needs little memory, and there is one thread for it and its collector
	debug.SetMemoryLimit(512 << 20)
	var e engine.Engine
	js.Global().Set("groovewright", js.FuncOf(func(_ js.Value, args []js.Value) any {
		text, answer := args[0].String(), args[1]
		go respond(&e, text, answer)
		return nil
	}))
	select {}
}

// respond answers a request. A panic is said instead of leaving the page without an answer.
func respond(e *engine.Engine, text string, answer js.Value) {
	var r engine.Request
	a := engine.Answer{}
	defer func() {
		if caught := recover(); caught != nil {
			a = engine.Answer{Faults: []engine.Note{{Text: fmt.Sprintf("internal error: %v; this is a fault of the program, not of your job", caught)}}}
		}
		data, _ := json.Marshal(a) // texts and numbers can be written
		answer.Invoke(string(data), true)
	}()
	if err := json.Unmarshal([]byte(text), &r); err != nil {
		panic(err)
	}
	a = e.Answer(r, func(since time.Duration) {
		answer.Invoke(fmt.Sprintf(`{"seconds":%d}`, int(since.Seconds())), false)
	})
}
