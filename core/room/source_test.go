package room

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The A-weighted levels that go with the estimates, whole dB (common practice).
func TestSourcesHaveTheirLevel(t *testing.T) {
	for id, dba := range map[string]float64{
		"drums": 103, "drumsLight": 93, "bass": 93, "guitar": 105, "band": 108,
		"singing": 95, "piano": 86, "monitors": 87, "speech": 72,
	} {
		s, ok := SourceByID(id)
		require.True(t, ok, id)
		assert.InDelta(t, dba, DBA(s.Levels), 1, id) // the estimates are printed to 1 dB
		assert.InDelta(t, 100, DBA(s.At(100)), 1e-9, id)
	}
}

func TestLawAllowedHasItsLevel(t *testing.T) {
	for _, dba := range []float64{20, 25, 27, 30, 35, 50, 80} {
		a := Allowed(dba)
		var all [9]float64
		all[0], all[8] = silent, silent
		copy(all[1:], a[:])
		assert.InDelta(t, dba, DBA(all), 1e-6)
	}
}

// Louder, or quieter beyond, needs more in every octave.
func TestLawNeededGrows(t *testing.T) {
	s, _ := SourceByID("band")
	a := Needed(s.At(100), Allowed(30))
	b := Needed(s.At(105), Allowed(30))
	c := Needed(s.At(100), Allowed(25))
	for i := range a {
		assert.Greater(t, b[i], a[i])
		assert.Greater(t, c[i], a[i])
	}
	quiet, _ := SourceByID("speech")
	for _, v := range Needed(quiet.At(20), Allowed(35)) {
		assert.GreaterOrEqual(t, v, 0.0)
	}
}
