package test

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// trialCore compiles a core that also fails on demand.
func trialCore(t *testing.T) []byte {
	t.Helper()
	path := filepath.Join(t.TempDir(), "core.wasm")
	build := exec.Command("go", "build", "-tags=trial", "-trimpath", "-buildvcs=false", "-ldflags=-s -w -buildid=", "-o", path, "./wasm")
	build.Dir = root
	build.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	said, err := build.CombinedOutput()
	require.NoError(t, err, "%s", said)
	core, err := os.ReadFile(path)
	require.NoError(t, err)
	return core
}

// The core panics or ends outright; the page says so in words, keeps what was
// typed and the last good figures, and computes the next edit.
func TestPageOutlivesItsCore(t *testing.T) {
	core := trialCore(t)
	for _, way := range []struct {
		name, weight, words string
		restarts            int
	}{
		{"panic", "66.61", "a trial asked for it", 0},
		{"exit", "66.62", "The calculation broke off", 2},
	} {
		t.Run(way.name, func(t *testing.T) {
			server := deploy(t, "/")
			name, _ := built(t, "core-*.wasm")
			server.change(name, core)
			p := open(t, server.address(), phone)
			p.assessed()
			eval[bool](p, "(globalThis.started = 0, globalThis.Worker = class extends Worker { constructor(...args) { super(...args); started++; } }, true)")
			typeWeight(p, way.weight)
			p.keys("\r") // what the program says gives way while somebody types
			p.until("document.body.innerText.includes($0)", way.words)
			p.shot("failure-" + way.name)
			assert.Equal(t, way.weight, eval[string](p, "document.querySelector($0).value", tagField))
			time.Sleep(3 * time.Second)
			// What shows the plan and what makes it ready for paper are two questions; neither is asked again.
			assert.LessOrEqual(t, eval[int](p, "started"), way.restarts, "what broke the core is asked over and over")
			figures := p.words(strip)
			assert.NotEmpty(t, figures, "the last good figures are gone")
			typeWeight(p, "61")
			p.until("document.querySelector($0).innerText.replace(/\\s+/g, ' ').trim() !== $1", strip, figures)
			p.allowed = []string{"exit code", "Go program has already exited"}
			p.noErrors()
		})
	}
}
