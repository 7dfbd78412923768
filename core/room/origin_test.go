package room

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core/internal/refdata"
)

// Every figure of a table says where it is from, by a key of SOURCES.md or in plain words.
func TestOriginsAreNamed(t *testing.T) {
	text, err := os.ReadFile(refdata.Path(t, "SOURCES.md"))
	require.NoError(t, err)
	plain := map[string]bool{"common practice": true, "from memory": true, "derived": true, "computed": true}
	named := func(id, origin string) {
		assert.True(t, plain[origin] || strings.Contains(string(text), "**"+origin+"**"), "%s: %q", id, origin)
	}
	for _, k := range kinds {
		named(k.ID, k.Origin)
	}
	for _, l := range leaves {
		named(l.kind, l.origin)
	}
	for _, f := range flanks {
		named(f.ID, f.Origin)
	}
	for _, s := range append(Sources(), Noises()...) {
		named(s.ID, s.Origin)
	}
	for _, l := range listeners {
		named(l.ID, l.Source)
	}
}
