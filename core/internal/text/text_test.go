package text

import (
	"encoding/csv"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// library reads a table as the standard library does.
func library(table string) ([][]string, error) {
	r := csv.NewReader(strings.NewReader(table))
	r.Comment = '#'
	r.FieldsPerRecord = -1
	return r.ReadAll()
}

func TestRecordsOfEveryTableAreTheLibrarys(t *testing.T) {
	files, err := filepath.Glob("../../*/*.csv")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, name := range files {
		table, err := os.ReadFile(name)
		require.NoError(t, err)
		want, err := library(string(table))
		require.NoError(t, err, name)
		got, err := Records(string(table))
		require.NoError(t, err, name)
		assert.Equal(t, want, got, name)
	}
}

func TestRecordsOfAnyTextAreTheLibrarys(t *testing.T) {
	pieces := []string{"a", " ", ",", ",", "\n", "\r\n", `"`, `""`, `"b, c"`, "#", "é", "1.5"}
	r := rand.New(rand.NewPCG(5, 6))
	refused := 0
	for range 20000 {
		table := ""
		for range r.IntN(8) {
			table += pieces[r.IntN(len(pieces))]
		}
		want, wrong := library(table)
		got, err := Records(table)
		if err != nil {
			// The library also takes a quoted field over several lines.
			if wrong == nil {
				require.Contains(t, table, "\n", "%q: %v", table, err)
			}
			refused++
			continue
		}
		require.NoError(t, wrong, "%q", table)
		require.Equal(t, want, got, "%q", table)
	}
	assert.Greater(t, refused, 1000)
}

func TestReplaceIsTheLibrarys(t *testing.T) {
	pairs := []string{"½", " 1/2", "''", `"`, "^2", "2", "×", "x", "a", "b", "b", "a", "ab", "never"}
	pieces := []string{"a", "b", "'", "''", "^", "2", "½", "×", "\xc2", " ", "é"}
	want := strings.NewReplacer(pairs...)
	r := rand.New(rand.NewPCG(7, 8))
	for range 2000 {
		s := ""
		for range r.IntN(9) {
			s += pieces[r.IntN(len(pieces))]
		}
		require.Equal(t, want.Replace(s), Replace(s, pairs), "%q", s)
	}
}
