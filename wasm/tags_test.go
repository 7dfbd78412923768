package main

import (
	"go/build/constraint"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every file of this package but this one is for js && wasm only, so that
// `go test ./...` and `go vet ./...` work on any machine.
func TestEveryFileIsForWasmOnly(t *testing.T) {
	files, err := filepath.Glob("*.go")
	require.NoError(t, err)
	for _, name := range files {
		if name == "tags_test.go" {
			continue
		}
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		first, _, _ := strings.Cut(string(text), "\n")
		tags, err := constraint.Parse(first)
		if !assert.NoError(t, err, "%s does not begin with a build tag", name) {
			continue
		}
		for _, missing := range []string{"js", "wasm"} {
			builds := tags.Eval(func(tag string) bool { return tag != missing })
			assert.False(t, builds, "%s builds without %s", name, missing)
		}
	}
}

// Only this package speaks to JavaScript, and only through the safe wrapper.
func TestNobodyElseSpeaksToJavaScript(t *testing.T) {
	err := filepath.WalkDir("..", func(path string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.IsDir() {
			if name := entry.Name(); name != ".." && (strings.HasPrefix(name, ".") || name == "node_modules") {
				return filepath.SkipDir
			}
			return nil
		}
		if filepath.Ext(path) != ".go" {
			return nil
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, imported := range file.Imports {
			switch strings.Trim(imported.Path.Value, `"`) {
			case "syscall/js":
				t.Errorf("%s imports syscall/js: a wrong call there panics; use safejs, in wasm only", path)
			case "github.com/hack-pad/safejs":
				if filepath.Dir(path) != "../wasm" {
					t.Errorf("%s imports safejs: only wasm may, so that the core stays plain Go", path)
				}
			}
		}
		return nil
	})
	require.NoError(t, err)
}
