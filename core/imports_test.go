package core

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const module = "twoleaf/"

// may is which packages of this module each package may import. Packages point
// one way: what is nearer to the physics never knows what is nearer to the page.
var may = map[string][]string{
	"core/unit":         {},
	"core/caution":      {"unit"},
	"core/band":         {"unit"},
	"core/material":     {"unit", "band"},
	"core/rating":       {"unit", "band"},
	"core/assembly":     {"unit", "material", "caution"},
	"core/plan":         {"unit", "caution", "material", "assembly"},
	"core/link":         {"plan"},
	"core/transmission": {"unit", "band", "material", "assembly", "caution"},
	"core/evidence":     {"unit", "band", "rating", "material", "assembly"},
	"core/load":         {"unit", "material", "assembly", "caution"},
	"core/takeoff":      {"unit", "material", "assembly", "caution"},
	"core/room":         {"unit", "band", "rating", "caution"},
	"core/appraise":     {"unit", "caution", "band", "material", "rating", "assembly", "transmission", "evidence", "load", "takeoff"},
	"core/search":       {"appraise", "plan", "room", "unit", "caution", "band", "material", "rating", "assembly", "transmission", "evidence", "load", "takeoff"},
}

// standsIn are packages in place of one of the standard library's, and who may
// import them.
var standsIn = map[string][]string{
	"core/internal/wire":    {"core", "core/plan"},
	"core/internal/deflate": {"core/link"},
	"core/internal/text":    {"core/unit", "core/material", "core/evidence"},
}

// outside is what a package may import that is neither ours nor the standard library's.
var outside = map[string][]string{
	"core": {"rsc.io/qr/coding"},
	"wasm": {"github.com/hack-pad/safejs"},
}

// never are packages of the standard library that have no place in the core:
// no clock, no input or output, no randomness, nothing unsafe.
var never = []string{"time", "os", "io/fs", "net", "net/http", "math/rand", "math/rand/v2", "crypto/rand", "log", "unsafe", "syscall", "syscall/js", "os/exec", "plugin"}

func TestImports(t *testing.T) {
	root := ".."
	seen := map[string]bool{}
	err := filepath.WalkDir(root, func(file string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		rel := filepath.ToSlash(strings.TrimPrefix(file, root+string(filepath.Separator)))
		if d.IsDir() {
			if base := d.Name(); base == "node_modules" || base == "testdata" || strings.HasPrefix(base, ".") && base != ".." {
				return filepath.SkipDir
			}
			return nil
		}
		if !strings.HasSuffix(file, ".go") || strings.HasSuffix(file, "_test.go") {
			return nil
		}
		dir := path.Dir(rel)
		if !strings.HasPrefix(dir, "core") && dir != "wasm" {
			return nil
		}
		seen[dir] = true
		parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ImportsOnly)
		require.NoError(t, err)
		for _, spec := range parsed.Imports {
			imported, err := strconv.Unquote(spec.Path.Value)
			require.NoError(t, err)
			assert.Empty(t, refused(dir, imported), "%s imports %s", rel, imported)
		}
		return nil
	})
	require.NoError(t, err)
	assert.True(t, seen["core/unit"] && seen["core/plan"], "the packages were looked at")
	for dir := range seen {
		if dir == "core" || dir == "wasm" || strings.HasPrefix(dir, "core/internal") {
			continue
		}
		_, named := may[dir]
		assert.True(t, named, "%s has no row in the table of imports", dir)
	}
}

// refused says why a package may not be imported from a directory; "" if it may.
func refused(dir, imported string) string {
	first, _, _ := strings.Cut(imported, "/")
	switch {
	case strings.HasPrefix(imported, module):
		to := strings.TrimPrefix(imported, module)
		if slices.Contains(standsIn[to], dir) {
			break
		}
		if strings.HasPrefix(to, "core/internal") && !strings.HasPrefix(dir, "core/internal") {
			return "only tests and the programs behind make use internal packages"
		}
		switch {
		case dir == "wasm":
			if to != "core" {
				return "the boundary knows the core by its one door"
			}
		case dir == "core" || strings.HasPrefix(dir, "core/internal"):
			if !strings.HasPrefix(to, "core/") && dir == "core" {
				return "the core knows nothing above it"
			}
		case !slices.Contains(may[dir], strings.TrimPrefix(to, "core/")):
			return "not in the table of imports"
		}
	case strings.Contains(first, "."):
		if !slices.Contains(outside[dir], imported) && !strings.HasPrefix(dir, "core/internal") {
			return "not of this module and not agreed"
		}
	case dir != "wasm" && !strings.HasPrefix(dir, "core/internal") && slices.Contains(never, imported):
		return "no clock, no input or output, no randomness in the core"
	}
	return ""
}

// The test itself must be able to fail.
func TestImportsRefuses(t *testing.T) {
	assert.NotEmpty(t, refused("core/unit", "twoleaf/core/band"))
	assert.NotEmpty(t, refused("core/load", "twoleaf/core/plan"))
	assert.NotEmpty(t, refused("core/link", "twoleaf/core/unit"))
	assert.NotEmpty(t, refused("wasm", "twoleaf/core/plan"))
	assert.NotEmpty(t, refused("core/plan", "time"))
	assert.NotEmpty(t, refused("core/plan", "github.com/stretchr/testify/assert"))
	assert.NotEmpty(t, refused("core/plan", "twoleaf/core/internal/refdata"))
	assert.NotEmpty(t, refused("core/load", "twoleaf/core/internal/wire"))
	assert.Empty(t, refused("core/plan", "twoleaf/core/internal/wire"))
	assert.Empty(t, refused("core", "twoleaf/core/plan"))
	assert.Empty(t, refused("core/plan", "twoleaf/core/assembly"))
	assert.Empty(t, refused("core/internal/accuracy", "os"))
}
