package test

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The page's core carries what was read of the published tables, not the tables
// and their reader: those are for fits, figures of accuracy and tests.
func TestCoreCarriesNoReader(t *testing.T) {
	found, err := filepath.Glob(dist + "/core-*.wasm")
	require.NoError(t, err)
	if len(found) == 0 {
		lacking(t, "there is no built site: run `make dist`")
	}
	require.Len(t, found, 1)
	core, err := os.ReadFile(found[0])
	require.NoError(t, err)
	for table, carried := range map[string]bool{
		"preread.csv": true, "ratings.csv": false, "spectra.csv": false, "spectra_octave.csv": false,
		"leftout.csv": false, "leftout_bands.csv": false, "boards.csv": false,
	} {
		text, err := os.ReadFile("../../core/evidence/" + table)
		require.NoError(t, err)
		head, _, _ := bytes.Cut(text, []byte("\n"))
		require.Greater(t, len(head), 20, table)
		assert.Equal(t, carried, bytes.Contains(core, head), table)
	}
}
