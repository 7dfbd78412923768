package evidence

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestResidual(t *testing.T) {
	r := residual([]float64{2, -2, 3, 1})
	assert.Equal(t, 4, r.N)
	assert.InDelta(t, 1, r.Bias, 1e-12)
	assert.InDelta(t, math.Sqrt(18.0/4), r.RMS, 1e-12)
	assert.InDelta(t, math.Sqrt(18.0/4-1), r.SD, 1e-12)
	assert.Zero(t, residual(nil).N)
}

// What was left out is of rows that are there, each once.
func TestLeftOutIsOfRows(t *testing.T) {
	known, seen := map[string]bool{}, map[string]bool{}
	for _, r := range Ratings() {
		known[r.ID] = r.Read()
	}
	for _, x := range LeftOutRatings() {
		assert.True(t, known[x.ID], x.ID)
		assert.False(t, seen[x.ID], x.ID)
		seen[x.ID] = true
		assert.InDelta(t, x.Fine, float64(x.STC), 1.6, x.ID)
	}
	bands := map[string]bool{}
	for _, s := range ThirdSpectra() {
		bands[s.ID] = s.Read()
	}
	for _, s := range OctaveSpectra() {
		assert.False(t, bands[s.ID], "an id in both tables of spectra: %s", s.ID)
		bands[s.ID] = s.Read()
	}
	for _, x := range LeftOutSpectra() {
		assert.True(t, bands[x.ID], x.ID)
	}
}
