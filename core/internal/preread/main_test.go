package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"twoleaf/core/internal/trial"
)

// The table of core/evidence is what would be written now.
func TestTableIsFresh(t *testing.T) {
	root, err := trial.Root()
	require.NoError(t, err)
	want, err := write()
	require.NoError(t, err)
	got, err := os.ReadFile(filepath.Join(root, filepath.FromSlash(place)))
	require.NoError(t, err)
	require.True(t, string(want) == string(got), "%s is stale: go run ./core/internal/preread", place)
}
