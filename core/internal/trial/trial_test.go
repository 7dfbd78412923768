package trial

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core/band"
	"twoleaf/core/evidence"
	"twoleaf/core/rating"
	"twoleaf/core/transmission"
)

// The class is the fine one rounded down, within the rounding of single bands.
func TestLawFineIsNextToClass(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 2000 {
		var s band.Spectrum
		for i := range s {
			s[i] = 10 + 3*float64(i)*r.Float64() + 10*r.Float64()
		}
		fine, class := Fine(s), float64(rating.STC(s).Value)
		assert.InDelta(t, fine, class, 1.6)
		// Whole bands leave only the contour's own steps.
		for i := range s {
			s[i] = math.Round(s[i])
		}
		fine, class = Fine(s), float64(rating.STC(s).Value)
		assert.GreaterOrEqual(t, fine, class-1e-9)
		assert.Less(t, fine, class+1)
	}
}

func TestSum(t *testing.T) {
	f := Sum([]float64{1, -1, 4, 0})
	assert.Equal(t, 4, f.N)
	assert.InDelta(t, 1, f.Bias, 1e-12)
	assert.InDelta(t, math.Sqrt(18.0/4), f.RMS, 1e-12)
	assert.InDelta(t, math.Sqrt(18.0/4-1), f.SD, 1e-12)
	assert.InDelta(t, 75, f.Within3, 1e-12)
}

// Pairs in the evidence, counted by hand in the tables.
func TestStepsFindPairs(t *testing.T) {
	var results []Result
	for _, e := range evidence.Ratings() {
		results = append(results, Result{Test: e, STC: e.STC})
	}
	got := map[string]Step{}
	for _, s := range Steps(results) {
		got[s.Name] = s
		assert.InDelta(t, s.Measured, s.Computed, 1e-12, s.Name)
	}
	for name, want := range map[string]Step{
		// W1a-d, W1b-e, W2a-d, W2b-e, W2c-f: 4, 2, 2, 3, 2.
		"fill, wood studs": {N: 5, Measured: 13.0 / 5},
		// W13 and W14, both boards: 12, 12, 10, 10.
		"fill, two rows of studs": {N: 4, Measured: 11},
		// W1-W2 of three boards filled (2, 4, 4) and two empty (4, 3).
		"second layer, 1+1 to 2+2, wood studs": {N: 5, Measured: 17.0 / 5},
		// S10 a against b and d against e.
		"12.7 to 15.9 type X, load-bearing steel studs": {N: 2, Measured: 0.5},
	} {
		assert.Equal(t, want.N, got[name].N, name)
		assert.InDelta(t, want.Measured, got[name].Measured, 1e-9, name)
	}
}

func TestCompareOwnRows(t *testing.T) {
	rows, err := evidence.ReadRatings(strings.Join([]string{
		"id,leaf1,framing,spacing_mm,cavity_mm,fill,leaf2,STC,kind",
		"a,gypsum 15.9 typeX x1,steel 92 ga25 @600 single,,92,absorptive fibre 89,gypsum 15.9 typeX x1,48,wall steel single",
		"b,soup,none,,,none,none,12,soup",
	}, "\n"))
	require.NoError(t, err)
	r := Compare(Method{Constants: transmission.Defaults()}, Evidence{Ratings: rows})
	require.Len(t, r.Families, 1)
	assert.Equal(t, 1, r.Families[0].N)
	assert.Equal(t, "wall steel single", r.Families[0].Name)
	assert.Nil(t, r.Families[0].CV)
	require.Len(t, r.Unread, 1)
	assert.Equal(t, "b", r.Unread[0].ID)
	assert.NotNil(t, r.Steps)
	assert.NotNil(t, r.Spectra)
}
