//go:build js && wasm

package main

import (
	"encoding/json"
	"testing"

	"github.com/hack-pad/safejs"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core"
)

// ask calls through the global object, as the page does.
func ask(t *testing.T, method string) core.Reply {
	t.Helper()
	global, err := safejs.Global().Get("twoleaf")
	require.NoError(t, err)
	value, err := global.Call("call", method, "{}")
	require.NoError(t, err)
	text, err := value.String()
	require.NoError(t, err)
	var reply core.Reply
	require.NoError(t, json.Unmarshal([]byte(text), &reply), text)
	return reply
}

func TestPanicIsAnsweredInWordsAndLaterCallsWork(t *testing.T) {
	usual := call
	defer func() { call = usual }()
	call = func(method string, args []byte, tables *core.Tables) []byte {
		if method == "panic" {
			panic("the board is on fire")
		}
		return usual(method, args, tables)
	}
	require.NoError(t, export(core.NewTables()))

	broken := ask(t, "panic")
	assert.False(t, broken.OK)
	assert.Equal(t, "the board is on fire", broken.Panic)

	after := ask(t, "version")
	assert.True(t, after.OK)
	assert.Equal(t, core.Version, after.Version.Core)
}

func TestArgumentsThatAreNoTextAreRefused(t *testing.T) {
	require.NoError(t, export(core.NewTables()))
	global, err := safejs.Global().Get("twoleaf")
	require.NoError(t, err)
	for _, args := range [][]any{{}, {"assess"}, {"assess", 7}, {7, "{}"}} {
		value, err := global.Call("call", args...)
		require.NoError(t, err)
		text, err := value.String()
		require.NoError(t, err)
		var reply core.Reply
		require.NoError(t, json.Unmarshal([]byte(text), &reply), text)
		assert.False(t, reply.OK, "%v", args)
		assert.NotEmpty(t, reply.Faults, "%v", args)
	}
}
