//go:build js && wasm && trial

package main

import (
	"os"

	"twoleaf/core"
)

// Builds for trials answer three more calls, each a way to fail that the page
// has to live through.
func init() {
	call = func(method string, args []byte, t *core.Tables) []byte {
		switch method {
		case "panic":
			panic("asked for by a trial")
		case "exit":
			os.Exit(3)
		case "hang":
			for {
			}
		}
		return core.Call(method, args, t)
	}
}
