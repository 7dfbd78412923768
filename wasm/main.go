//go:build js && wasm

// Command wasm is the core as the page sees it. It sets one global,
//
//	twoleaf = {call(method, args) → reply, version}
//
// where args, reply and version are JSON text as core.Call has them. Nothing
// is computed here: strings go through, and a panic comes out as words.
package main

import (
	"fmt"
	"os"

	"github.com/hack-pad/safejs"

	"twoleaf/core"
)

// call answers one question; builds for trials put failures in its way.
var call = core.Call

func main() {
	if err := export(core.NewTables()); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	select {} // the page calls from now on
}

// export hangs the one call and the version on the global object.
func export(tables *core.Tables) error {
	fn, err := safejs.FuncOf(func(_ safejs.Value, args []safejs.Value) any {
		texts := make([]string, 2)
		for i := range min(len(args), len(texts)) {
			// A value that is no string is told as such by the core, which cannot parse it.
			texts[i], _ = args[i].String()
		}
		return string(answer(texts[0], []byte(texts[1]), tables))
	})
	if err != nil {
		return err
	}
	global, err := safejs.ValueOf(map[string]any{})
	if err != nil {
		return err
	}
	if err := global.Set("call", fn); err != nil {
		return err
	}
	if err := global.Set("version", string(answer("version", []byte("{}"), tables))); err != nil {
		return err
	}
	return safejs.Global().Set("twoleaf", global)
}

// answer calls the core and turns a panic into a reply: a panic that leaves a
// callback ends the Go program, and with it every later call.
func answer(method string, args []byte, tables *core.Tables) (reply []byte) {
	defer func() {
		if r := recover(); r != nil {
			*tables = *core.NewTables() // whatever was half written in it
			reply = core.Broken(fmt.Sprint(r))
		}
	}()
	return call(method, args, tables)
}
